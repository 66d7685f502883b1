"""Schedules are run in the browsers of `tests/browser`."""

from tests.browser.conftest import launch, server

__all__ = ["launch", "server"]
