"""What happens to pages while somebody rows."""

from __future__ import annotations

import time

from tests.timing.by_hand import ChromiumByHand

FREEZE_AFTER_SECONDS = 35.0
FREEZE_SECONDS = 30.0
SLOWER = 6
BLOCKED_AGAIN_AND_AGAIN = (80, 20, 20)
BLOCKED_NOW_AND_THEN = (400, 1500, 4000)


def slowed(browser: ChromiumByHand) -> None:
    """The page's processor is six times slower."""
    browser.devtools().send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})


def blocked_again_and_again(browser: ChromiumByHand) -> None:
    """The page's thread is busy for 80 ms of every 100."""
    _block(browser, *BLOCKED_AGAIN_AND_AGAIN)


def blocked_now_and_then(browser: ChromiumByHand) -> None:
    """The page's thread is busy for 400 ms every few seconds."""
    _block(browser, *BLOCKED_NOW_AND_THEN)


def both_blocks(browser: ChromiumByHand) -> None:
    """Short and long blocks together."""
    blocked_again_and_again(browser)
    blocked_now_and_then(browser)


def hidden(browser: ChromiumByHand) -> None:
    """Another tab is in front of the page."""
    page = browser.page
    browser.context.new_page().bring_to_front()
    page.wait_for_function("() => document.hidden", polling=100)


def frozen(browser: ChromiumByHand) -> None:
    """The page stands still for half a minute, as phones do with pages that nobody looks at."""
    time.sleep(FREEZE_AFTER_SECONDS)
    tools = browser.devtools()
    tools.send("Page.setWebLifecycleState", {"state": "frozen"})
    time.sleep(FREEZE_SECONDS)
    tools.send("Page.setWebLifecycleState", {"state": "active"})


def _block(browser: ChromiumByHand, busy_ms: int, shortest_ms: int, longest_ms: int) -> None:
    browser.evaluate(
        """(busy, shortest, longest) => {
          const block = () => {
            const until = performance.now() + busy;
            while (performance.now() < until);
            setTimeout(block, shortest + Math.random() * (longest - shortest));
          };
          block();
        }""",
        busy_ms,
        shortest_ms,
        longest_ms,
    )
