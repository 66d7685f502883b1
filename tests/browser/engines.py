"""What a test can do with a browser, whichever of the three it is.

    browser.open(server.url + "/")
    browser.click(button("Row it"))
    browser.type(field("Title"), "easy")
    browser.see(words("Saved on this device"))
    browser.press("Escape")
    assert browser.evaluate("() => innerWidth") == 390
    browser.kill()
    browser.reopen()

Each waits for the state it needs, so that no test sleeps. Open shadow roots are seen through everywhere.
"""

from __future__ import annotations

import time
from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, TypeVar

from tests.browser.processes import kill_started_with
from tests.browser.targets import QUERY, Target

WITNESS = (Path(__file__).parent / "witness.js").read_text()
PATIENCE_SECONDS = 60.0

Answer = TypeVar("Answer")


class NotYetError(Exception):
    """The page is not ready for this; it is tried again until patience ends."""


class PageLeftError(NotYetError, AssertionError):
    """The page was left while it was asked; what waits asks the next one."""


@dataclass(frozen=True, slots=True)
class Options:
    """How a browser starts: its page in CSS pixels, the person's wishes, JavaScript that runs before any.

    `throttled` (Chromium only) leaves on what people have: slow timers in hidden pages, pages kept for Back.
    `arguments` (Chromium only) are added to its command line; `home` (Chromium only) is the person's home
    folder, in which stands whom they trust.
    """

    width: int = 390
    height: int = 844
    dark: bool = False
    reduced_motion: bool = False
    preload: str = ""
    throttled: bool = False
    arguments: tuple[str, ...] = ()
    home: Path | None = None

    @property
    def all_preload(self) -> str:
        """The script every page starts with: our witness of what goes wrong, then the test's own."""
        return WITNESS + self.preload


class Browser(ABC):
    """One browser with a profile folder of its own, which outlives `kill` and `close`."""

    name: str

    def __init__(self, profile: Path, options: Options) -> None:
        self.profile = profile
        self.options = options
        self.profile.mkdir(parents=True, exist_ok=True)
        self.is_running = False
        self.reopen()

    # --- What each engine does its own way

    @abstractmethod
    def _start(self) -> None: ...

    @abstractmethod
    def _forget(self) -> None:
        """Let go of the driver after the browser itself was killed."""

    @abstractmethod
    def _quit(self) -> None:
        """End the browser in the orderly way, and the driver."""

    @abstractmethod
    def open(self, url: str) -> None:
        """Go to an address and wait until it is loaded; AssertionError where it cannot be reached."""

    @abstractmethod
    def reload(self) -> None:
        """Load the page again as a person does, through the service worker where there is one."""

    @abstractmethod
    def evaluate(self, function: str, *arguments: Any) -> Any:
        """The JSON result of a JavaScript function, awaited; what it throws is an AssertionError."""

    @abstractmethod
    def press(self, key: str) -> None:
        """Press one key of the keyboard: "Tab", "Enter", "Escape", "ArrowDown", "Space", or a character."""

    @abstractmethod
    def resize(self, width: int, height: int) -> None:
        """Give the page this size in CSS pixels."""

    @abstractmethod
    def new_tab(self) -> int:
        """Open an empty tab and turn to it; its number, the first tab being 0."""

    @abstractmethod
    def turn_to_tab(self, number: int) -> None:
        """Do what follows in this tab, which comes to the front."""

    @abstractmethod
    def _picture(self) -> bytes: ...

    @abstractmethod
    def _elements(self, target: Target) -> list[Any]: ...

    @abstractmethod
    def _click(self, element: Any) -> None:
        """Click once, really; NotYetError when the element moved away or something covers it."""

    @abstractmethod
    def _fill(self, element: Any, text: str) -> None:
        """Replace what is in the field by typing; NotYetError when the element moved away."""

    # --- What they share

    def kill(self) -> None:
        """SIGKILL the browser and all its processes at one blow, as a phone does that runs out of memory."""
        assert self.is_running, f"{self.name} does not run"
        kill_started_with(self.profile)
        self.is_running = False
        self._forget()

    def close(self) -> None:
        """Quit in the orderly way, if it runs; the profile stays."""
        if self.is_running:
            self.is_running = False
            self._quit()

    def reopen(self, **changes: Any) -> None:
        """Start again on the same profile, after `kill` or `close`; changes are to Options."""
        assert not self.is_running, f"{self.name} runs already"
        self.options = replace(self.options, **changes)
        try:
            self._start()
        except BaseException:
            kill_started_with(self.profile)
            raise
        self.is_running = True

    def click(self, target: Target, seconds: float = PATIENCE_SECONDS) -> None:
        """Click the one element meant, really (the browser's own input events), once it can be clicked."""
        self._patiently(lambda: self._click(self._only(target)), f"a click on {target}", seconds)

    def type(self, target: Target, text: str, seconds: float = PATIENCE_SECONDS) -> None:
        """Replace what is in the field meant by typing this."""
        self._patiently(lambda: self._fill(self._only(target), text), f"typing into {target}", seconds)

    def see(self, target: Target, seconds: float = PATIENCE_SECONDS) -> None:
        """Return once at least one such element is visible."""
        self._patiently(lambda: self._seen(target), f"the sight of {target}", seconds)

    def see_gone(self, target: Target, seconds: float = PATIENCE_SECONDS) -> None:
        """Return once no such element is visible."""
        self._patiently(lambda: self._unseen(target), f"the end of {target}", seconds)

    def count(self, target: Target) -> int:
        """How many such elements are visible at this moment."""
        return int(self.evaluate(f"(target) => {QUERY}.find(target).length", target.as_json()))

    def text(self, target: Target | None = None, seconds: float = PATIENCE_SECONDS) -> str:
        """The visible text of the one element meant, or of the page as it is now; one line a block."""
        if target is None:
            return str(self.evaluate(f"() => {QUERY}.pageText()"))
        return self._patiently(lambda: self._text_of(target), f"the text of {target}", seconds)

    def wait_for(self, function: str, *arguments: Any, seconds: float = PATIENCE_SECONDS) -> Any:
        """The first truthy result of a JavaScript function, asked again and again."""

        def ask() -> Any:
            result = self.evaluate(function, *arguments)
            if not result:
                raise NotYetError(f"it answered {result!r}")
            return result

        return self._patiently(ask, function, seconds)

    def screenshot(self, to: Path | None = None) -> bytes:
        """A PNG picture of what is visible, also written to a file if one is named."""
        picture = self._picture()
        if to is not None:
            to.parent.mkdir(parents=True, exist_ok=True)
            to.write_bytes(picture)
        return picture

    def problems(self) -> list[str]:
        """What went wrong since the page was loaded: errors, rejections, breaches of content policy."""
        return list(self.evaluate("() => window.problemsSeenByTests"))

    def focused_name(self) -> str:
        """The accessible name of the element that has the keyboard; empty when none has."""
        return str(
            self.evaluate(
                f"""() => {{
                  let at = document.activeElement;
                  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
                  return at && at !== document.body ? {QUERY}.nameOf(at) : "";
                }}"""
            )
        )

    def _only(self, target: Target) -> Any:
        elements = self._elements(target)
        if len(elements) != 1:
            raise NotYetError(f"{len(elements)} elements are it, one is wanted (nth() picks one)")
        return elements[0]

    def _seen(self, target: Target) -> None:
        if not self.count(target):
            raise NotYetError("nothing visible is it")

    def _unseen(self, target: Target) -> None:
        if count := self.count(target):
            raise NotYetError(f"{count} are still visible")

    def _text_of(self, target: Target) -> str:
        answer = self.evaluate(
            f"""(target) => {{
              const query = {QUERY};
              const found = query.find(target);
              return {{ count: found.length, text: found.length === 1 ? query.visibleText(found[0]) : "" }};
            }}""",
            target.as_json(),
        )
        if answer["count"] != 1:
            raise NotYetError(f"{answer['count']} elements are it, one is wanted (nth() picks one)")
        return str(answer["text"])

    def _patiently(self, act: Callable[[], Answer], what: str, seconds: float) -> Answer:
        deadline = time.monotonic() + seconds
        while True:
            try:
                return act()
            except NotYetError as not_yet:
                if time.monotonic() > deadline:
                    told = f"{self.name}: waited {seconds} s in vain for {what}: {not_yet}"
                    raise AssertionError(f"{told}\nThe page shows:\n{self.text()}") from None
                time.sleep(0.04)
