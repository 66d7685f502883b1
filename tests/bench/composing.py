"""A plan of sixty blocks while it is written: from a key to its picture, and how long the page stands still.

The echo is the shortest call the page can make to the same server. For the second figure Chromium slows the
page's own thread.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

from tests.bench.measuring import Row, at_most
from tests.bench.page_tasks import task_times_ms
from tests.bench.servers import running
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.engines import Options
from tests.browser.targets import QUERY, Target, button, field
from tests.browser.writing import BOX

AIM_MS = 50.0
SLOWER = 4
ROUNDS = 9
PAUSE_MS = 300
"""What the page waits for after a key, as state/composer.ts has it."""
SIXTY = "title: Sixty\nmain\n" + "".join(
    f"{2 + number % 4}' r{18 + number % 9} {('light', 'half', 'three-quarter')[number % 3]}\n"
    f"  focus: The {number}th thing\n  call at 5: Long and easy\n"
    for number in range(60)
)
PUT = f"""(text) => {{
  const area = {QUERY}.find({{ css: "textarea" }})[0];
  area.value = text;
  area.dispatchEvent(new InputEvent("input", {{ bubbles: true, composed: true }}));
}}"""
PICTURE = f"""{QUERY}.find({{ role: "img" }})[0]?.getAttribute("aria-label") ?? \"\""""
# Milliseconds from a key to the frame in which its picture stands.
TO_PICTURE = f"""(text) => new Promise((done) => {{
  const before = {PICTURE};
  const started = performance.now();
  ({PUT})(text);
  const seen = () => ({PICTURE}) === before ? look() : done(performance.now() - started);
  const look = () => requestAnimationFrame(seen);
  look();
}})"""
ECHO = """async () => {
  const started = performance.now();
  await (await fetch("/healthz", { cache: "no-store" })).text();
  return performance.now() - started;
}"""


def rows() -> Iterator[Row]:
    """The ratio, and the longest task while keys are typed and while blocks are changed."""
    with TemporaryDirectory() as folder, running(Server(Path(folder) / "data")) as server:
        browser = Chromium(Path(folder) / "profile", Options())
        try:
            browser.open(server.url + "/write")
            browser.see(BOX)
            yield _ratio(browser)
            session = browser.context.new_cdp_session(browser.page)
            session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
            yield _longest("typing", [_busiest(browser, lambda: _type(browser)) for _ in range(ROUNDS)])
            browser.click(Target(role="radio", name="Blocks"))
            browser.click(button(f"2' r{18 + 8} three-quarter 52 strokes · The 44th thing · 1 call"))
            edits = [_busiest(browser, partial(_change, browser, turn)) for turn in range(ROUNDS)]
            yield _longest("block edits", edits)
        finally:
            browser.close()


def _ratio(browser: Chromium) -> Row:
    browser.evaluate(TO_PICTURE, SIXTY)
    pictures = [
        float(browser.evaluate(TO_PICTURE, SIXTY + f"{turn + 3}' r20\n")) - PAUSE_MS for turn in range(ROUNDS)
    ]
    echo = median(float(browser.evaluate(ECHO)) for _ in range(ROUNDS))
    told = f"{median(pictures):.0f} ms after the pause, an echo {echo:.1f} ms"
    return Row("keystroke to picture, 60 blocks", f"{median(pictures) / echo:.1f}x  ({told})")


def _longest(what: str, tasks: list[float]) -> Row:
    told = f"median of {ROUNDS} rounds at {SLOWER}x slower; longest of all {max(tasks):.0f} ms"
    return at_most(f"longest task, 60 blocks, {what}", median(tasks), AIM_MS, " ms", told)


def _type(browser: Chromium) -> None:
    """Ten keys, one after the other, and what they come to."""
    browser.evaluate(f"() => {QUERY}.find({{ css: 'textarea' }})[0].focus()")
    for key in ("Enter", *"5' r20 h", "Backspace"):
        browser.press("Space" if key == " " else key)
    browser.page.wait_for_timeout(1500)


def _change(browser: Chromium, turn: int) -> None:
    """The rate of one block."""
    browser.type(field("Rate"), f"{20 + turn}")
    browser.press("Enter")
    browser.page.wait_for_timeout(1500)


def _busiest(browser: Chromium, act: Callable[[], None]) -> float:
    """Processor time of the longest task meanwhile, in ms."""
    return max(task_times_ms(browser, act))
