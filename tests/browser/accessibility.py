"""The accessibility checker axe-core, run inside a page, and a look at the page zoomed in."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from tests.browser.app_server import ROOT
from tests.browser.chromium import Chromium
from tests.browser.engines import Browser
from tests.browser.targets import QUERY

CHECKER = ROOT / "node_modules" / "axe-core" / "axe.min.js"
ZOOMED = (Path(__file__).parent / "zoomed.js").read_text()
# A window of 1280 by 1024 pixels at 400 %, and how many frames its pictures may take to be drawn anew.
ZOOMED_SIZE = (320, 256)
MOST_FRAMES = 60
TOLD = {
    *("main", "navigation", "banner", "contentinfo", "dialog", "alertdialog", "heading", "status", "alert"),
    *("button", "link", "textbox", "combobox", "radio", "checkbox", "timer", "image"),
}
ROWED_BY = "row-screen, gap-screen, wall-screen, prompter-screen"
PAST_THE_BAR = 60
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def accessibility_faults(browser: Browser) -> list[str]:
    """What breaks WCAG 2.2 A or AA, or good practice, on the screen as it is: theme, rule, element, reason.

    A screen that is rowed by has to have AAA contrast. It is looked at in both themes and, in Chromium,
    zoomed in to 400 %; and is left as it was.
    """
    return [
        *_found_by_the_checker(browser),
        *(_found_zoomed_in(browser) if isinstance(browser, Chromium) else []),
    ]


def reading_order(browser: Chromium) -> list[str]:
    """What a screen reader goes through: landmarks, headings, controls, pictures, live regions."""
    session = browser.context.new_cdp_session(browser.page)
    nodes = session.send("Accessibility.getFullAXTree")["nodes"]
    session.detach()
    by_id = {node["nodeId"]: node for node in nodes}

    def walk(node: dict[str, Any]) -> Iterator[str]:
        role = node["role"]["value"]
        if not node["ignored"] and role in TOLD:
            yield f"{role} {node.get('name', {}).get('value', '')}".strip()
        for child in node.get("childIds", []):
            if child in by_id:
                yield from walk(by_id[child])

    return list(walk(nodes[0]))


def _found_zoomed_in(browser: Chromium) -> list[str]:
    before = browser.page.viewport_size
    assert before
    browser.resize(*ZOOMED_SIZE)
    browser.wait_for(f"() => innerWidth === {ZOOMED_SIZE[0]}")
    faults = browser.evaluate(
        f"""async () => {{
          for (let frames = 0; ; frames++) {{
            await new Promise(requestAnimationFrame);
            const faults = ({ZOOMED});
            if (!faults.length || frames >= {MOST_FRAMES}) return faults;
          }}
        }}"""
    )
    browser.resize(before["width"], before["height"])
    browser.wait_for(f"() => innerWidth === {before['width']}")
    return [f"at 400 %: {fault}" for fault in faults]


def _found_by_the_checker(browser: Browser) -> list[str]:
    answer = browser.evaluate(
        f"""async (rules) => {{
          if (!window.axe) {{ {CHECKER.read_text()} }}
          const page = document.documentElement;
          const chosen = page.dataset.theme;
          const faults = [];
          for (const theme of ["light", "dark"]) {{
            page.dataset.theme = theme;
            const rowing = {QUERY}.find({{ css: "{ROWED_BY}" }}).length > 0;
            const enhanced = {{ "color-contrast-enhanced": {{ enabled: rowing }} }};
            const asked = {{ runOnly: rules, rules: enhanced, resultTypes: ["violations"] }};
            const found = async () => {{
              const {{ violations }} = await axe.run(document, asked);
              return violations.flatMap(({{ id, nodes }}) => nodes.map((node) =>
                [`${{theme}}: ${{id}}: ${{node.target.flat().join(" >> ")}}`, node.failureSummary]));
            }};
            let told = await found();
            if (told.some(([what]) => what.includes("target-size"))) {{
              // What lies half behind the bar at the foot is too small only until it is scrolled.
              scrollBy(0, {PAST_THE_BAR});
              const still = (await found()).map(([what]) => what);
              scrollBy(0, -{PAST_THE_BAR});
              told = told.filter(([what]) => !what.includes("target-size") || still.includes(what));
            }}
            faults.push(...told.map((each) => each.join(": ")));
          }}
          if (chosen) page.dataset.theme = chosen;
          else delete page.dataset.theme;
          return faults;
        }}""",
        RULES,
    )
    return [str(fault) for fault in answer]
