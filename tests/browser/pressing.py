"""Pressing a button twice and meaning it: the app takes two presses at once for a slip of the finger."""

from __future__ import annotations

from tests.browser.engines import Browser
from tests.browser.targets import QUERY, Target

_LONGER_THAN_A_SLIP = "() => new Promise((done) => setTimeout(done, 350))"


def let_a_slip_pass(browser: Browser) -> None:
    """Return when another press counts: in the same place, of the same button, or of any after Done."""
    browser.evaluate(_LONGER_THAN_A_SLIP)


_TWO_PRESSES = f"""async (target) => {{
  const [found] = {QUERY}.find(target);
  found.scrollIntoView({{ block: "center" }});
  const {{ x, y, width, height }} = found.getBoundingClientRect();
  const under = () => {{
    let inner = document, element;
    while (inner) {{
      element = inner.elementFromPoint(x + width / 2, y + height / 2);
      inner = element.shadowRoot;
    }}
    return element.closest("button");
  }};
  const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  under().click();
  await drawn();
  under().click();
  await drawn();
  return under().innerText;
}}"""


def press_twice(browser: Browser, target: Target) -> str:
    """Press where a button is, and once more at once; answers what stands there then."""
    browser.see(target)
    return str(browser.evaluate(_TWO_PRESSES, target.as_json()))
