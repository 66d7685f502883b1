"""What a browser showed when a schedule went wrong is told as for the tests of `tests/browser`."""

from tests.browser.conftest import pytest_runtest_makereport

__all__ = ["pytest_runtest_makereport"]
