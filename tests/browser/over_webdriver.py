"""What Firefox and WebKitGTK have in common: both are driven by WebDriver."""

from __future__ import annotations

import base64
import contextlib
import re
from abc import abstractmethod
from collections.abc import Iterator
from typing import Any

from selenium.common.exceptions import (
    ElementClickInterceptedException,
    ElementNotInteractableException,
    InvalidElementStateException,
    JavascriptException,
    NoSuchElementException,
    NoSuchShadowRootException,
    StaleElementReferenceException,
    TimeoutException,
    WebDriverException,
)
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.common.service import Service
from selenium.webdriver.remote.command import Command
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.remote.webelement import WebElement
from urllib3.exceptions import HTTPError

from tests.browser.engines import Browser, NotYetError, PageLeftError
from tests.browser.processes import end_started_with
from tests.browser.targets import QUERY, Target

NOT_READY = (
    ElementClickInterceptedException,
    ElementNotInteractableException,
    InvalidElementStateException,
    NoSuchElementException,
    NoSuchShadowRootException,
    StaleElementReferenceException,
)
# WebDriver has no awaiting call that also tells what was thrown.
AWAITED = """
  const done = arguments[arguments.length - 1];
  const given = [...arguments].slice(0, -1);
  Promise.resolve().then(() => (%s)(...given)).then(
    (value) => done({ value: value === undefined ? null : value }),
    (error) => done({ thrown: String(error) + "\\n" + (error?.stack ?? "") }));
"""


# Drivers click what is in the window where it is; a person would bring it out from under a bar.
UNCOVER = """(element) => {
  const { left, top, right, bottom } = element.getBoundingClientRect();
  const x = (Math.max(0, left) + Math.min(innerWidth, right)) / 2;
  const y = (Math.max(0, top) + Math.min(innerHeight, bottom)) / 2;
  let hit = document.elementFromPoint(x, y);
  for (let inner; (inner = hit?.shadowRoot?.elementFromPoint(x, y)) && inner !== hit; hit = inner);
  for (let at = hit; at; at = at.assignedSlot ?? at.parentElement ?? at.getRootNode().host) {
    if (at === element) return;
  }
  element.scrollIntoView({ block: "center" });
}"""


class OverWebDriver(Browser):
    """A browser behind a WebDriver server that we start with it."""

    driver: WebDriver
    _service: Service
    _tabs: list[str]

    def _start(self) -> None:
        self._start_driver()
        self._tabs = [self.driver.current_window_handle]

    @abstractmethod
    def _start_driver(self) -> None:
        """Start `_service` and `driver`, with the page in the size wanted."""

    def _forget(self) -> None:
        self._service.process.kill()
        self._service.process.wait()

    def _quit(self) -> None:
        # Not driver.quit(): before it quits it may wait 10 s for its own socket.
        with contextlib.suppress(WebDriverException, HTTPError):
            self.driver.execute(Command.QUIT)
        end_started_with(self.profile)
        self._forget()

    def open(self, url: str) -> None:
        try:
            self.driver.get(url)
        except WebDriverException as error:
            raise AssertionError(f"{self.name} cannot open {url}: {error.msg}") from None

    def reload(self) -> None:
        # Not driver.refresh(): in Firefox that goes past the service worker.
        self.driver.execute_script("window.isAboutToReload = true; location.reload()")
        self.wait_for("() => !window.isAboutToReload && document.readyState === 'complete'")

    def evaluate(self, function: str, *arguments: Any) -> Any:
        with self._telling():
            answer = self.driver.execute_async_script(AWAITED % function, *arguments)
        if answer is None:
            raise PageLeftError(f"{self.name}: the page was left before it answered")
        if "thrown" in answer:
            raise AssertionError(f"{self.name}: {answer['thrown']}")
        return answer["value"]

    def press(self, key: str) -> None:
        # Selenium calls "ArrowDown" ARROW_DOWN.
        stroke = key if len(key) == 1 else getattr(Keys, re.sub(r"(?<=[a-z])(?=[A-Z])", "_", key).upper())
        ActionChains(self.driver).send_keys(stroke).perform()

    def new_tab(self) -> int:
        self.driver.switch_to.new_window("tab")
        self._tabs.append(self.driver.current_window_handle)
        return len(self._tabs) - 1

    def turn_to_tab(self, number: int) -> None:
        self.driver.switch_to.window(self._tabs[number])

    def _picture(self) -> bytes:
        return base64.b64decode(self.driver.get_screenshot_as_base64())

    def _elements(self, target: Target) -> list[WebElement]:
        with self._telling():
            found = self.driver.execute_script(
                f"return ((target) => {QUERY}.find(target))(...arguments)", target.as_json()
            )
        return list(found or [])

    @contextlib.contextmanager
    def _telling(self) -> Iterator[None]:
        try:
            yield
        except (JavascriptException, TimeoutException, StaleElementReferenceException) as error:
            is_left = isinstance(error, StaleElementReferenceException) or "unload" in str(error.msg)
            raise (PageLeftError if is_left else AssertionError)(f"{self.name}: {error.msg}") from None

    def _click(self, element: WebElement) -> None:
        try:
            self.driver.execute_script(f"return ({UNCOVER})(...arguments)", element)
            element.click()
        except NOT_READY as error:
            raise NotYetError(error.msg) from None

    def _fill(self, element: WebElement, text: str) -> None:
        try:
            element.clear()
            # WebKit's driver drops a plain line break.
            element.send_keys(text.replace("\n", Keys.ENTER))
        except NOT_READY as error:
            raise NotYetError(error.msg) from None
