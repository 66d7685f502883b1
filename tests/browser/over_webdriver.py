"""What Firefox and WebKitGTK have in common: both are driven by WebDriver."""

from __future__ import annotations

import base64
import contextlib
from abc import abstractmethod
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
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.remote.webelement import WebElement

from tests.browser.engines import Browser, NotYet
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


class OverWebDriver(Browser):
    """A browser behind a WebDriver server that we start with it."""

    driver: WebDriver

    @abstractmethod
    def _stop_driver(self) -> None:
        """End the WebDriver server."""

    def _forget(self) -> None:
        self._stop_driver()

    def close(self) -> None:
        with contextlib.suppress(WebDriverException):
            self.driver.quit()
        self._stop_driver()

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
        try:
            answer = self.driver.execute_async_script(AWAITED % function, *arguments)
        except (JavascriptException, TimeoutException) as error:
            raise AssertionError(f"{self.name}: {error.msg}") from None
        if "thrown" in answer:
            raise AssertionError(f"{self.name}: {answer['thrown']}")
        return answer["value"]

    def press(self, key: str) -> None:
        names = {"ArrowDown": "ARROW_DOWN", "ArrowUp": "ARROW_UP", "ArrowLeft": "ARROW_LEFT", "ArrowRight": "ARROW_RIGHT"}
        stroke = key if len(key) == 1 else getattr(Keys, names.get(key, key.upper()))
        ActionChains(self.driver).send_keys(stroke).perform()

    def new_tab(self) -> int:
        self.driver.switch_to.new_window("tab")
        return len(self.driver.window_handles) - 1

    def turn_to_tab(self, number: int) -> None:
        self.driver.switch_to.window(self.driver.window_handles[number])

    def _picture(self) -> bytes:
        return base64.b64decode(self.driver.get_screenshot_as_base64())

    def _elements(self, target: Target) -> list[WebElement]:
        found: list[WebElement] = self.driver.execute_script(
            f"return ((target) => {QUERY}.find(target))(...arguments)", target.as_json()
        )
        return found

    def _click(self, element: WebElement) -> None:
        try:
            element.click()
        except NOT_READY as error:
            raise NotYet(error.msg) from None

    def _fill(self, element: WebElement, text: str) -> None:
        try:
            element.clear()
            element.send_keys(text)
        except NOT_READY as error:
            raise NotYet(error.msg) from None
