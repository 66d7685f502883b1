"""A plan of one's own, written as a person does it."""

from __future__ import annotations

from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.targets import button, field

BOX = field("Write or paste your own")
KEEP = button("Keep this plan")


def write_plan(browser: Browser, server: Server, text: str) -> None:
    """Write a plan in place of what stands in the box, and keep it; its page comes next."""
    browser.open(server.url + "/write")
    browser.type(BOX, text)
    browser.click(KEEP)
