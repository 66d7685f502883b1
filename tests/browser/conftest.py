"""Fixtures: `server` (the real app), `browser` (each engine in turn), `chromium`, `launch` (with options).

When a test fails, the report holds what each page showed, and a picture lies in build/browser-failures.
"""

from __future__ import annotations

import signal
from collections.abc import Callable, Generator, Iterator
from pathlib import Path
from typing import Any, cast

import pytest

from tests.browser.app_server import ROOT, Server
from tests.browser.chromium import Chromium
from tests.browser.engines import Browser, Options
from tests.browser.firefox import Firefox
from tests.browser.webkit import WebKit

ENGINES: dict[str, type[Browser]] = {engine.name: engine for engine in (Chromium, Firefox, WebKit)}
PICTURES = ROOT / "build" / "browser-failures"

# launch("firefox", dark=True): the fields of Options; each browser has a profile of its own.
Launch = Callable[..., Browser]
STARTED: pytest.StashKey[list[Browser]] = pytest.StashKey()


@pytest.fixture(scope="session")
def standing(tmp_path_factory: pytest.TempPathFactory) -> Iterator[list[Server]]:
    """The server that the last test left running, if it did: starting one costs seconds."""
    standing: list[Server] = []
    yield standing
    for server in standing:
        server.kill()


@pytest.fixture
def server(standing: list[Server], tmp_path_factory: pytest.TempPathFactory) -> Server:
    """The real app, which earlier tests may have asked; `kill()` takes the net away, `start()` mends it."""
    if not standing or not standing[0].is_as_started:
        for server in standing:
            server.kill()
        standing[:] = [Server(tmp_path_factory.mktemp("data"))]
        standing[0].start()
    return standing[0]


@pytest.fixture
def launch(tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[Launch]:
    """A function that starts a browser by engine name; all it started are closed after the test."""
    started: list[Browser] = request.node.stash.setdefault(STARTED, [])

    def start(engine: str, **options: Any) -> Browser:
        profile = tmp_path / f"profile-{len(started)}-{engine}"
        started.append(ENGINES[engine](profile, Options(**options)))
        return started[-1]

    yield start
    for browser in started:
        browser.close()


@pytest.fixture(params=ENGINES)
def browser(request: pytest.FixtureRequest, launch: Launch) -> Browser:
    """Each of the three engines in turn, 390x844, light."""
    return launch(request.param)


@pytest.fixture
def chromium(launch: Launch) -> Chromium:
    """Chromium alone, for what is asked of one engine only."""
    return cast(Chromium, launch("chromium"))


def pytest_configure() -> None:
    # A run that is told to stop still closes its browsers, as with Ctrl-C.
    signal.signal(signal.SIGTERM, signal.default_int_handler)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    report = yield
    if report.when == "call" and report.failed and STARTED in item.stash:
        started = item.stash[STARTED]
        for number, browser in enumerate(started):
            report.sections.append((f"what {browser.name} showed", _record(browser, f"{item.name}-{number}")))
    return report


def _record(browser: Browser, name: str) -> str:
    """The page's text, and its picture in a file."""
    if not browser.is_running:
        return "Nothing: it was killed or closed."
    try:
        browser.screenshot(PICTURES / f"{name.replace('/', '-')}.png")
        return browser.text()
    except Exception as error:  # noqa: BLE001 - whatever the driver says, the test's own failure comes first
        return f"Nothing: {error}"
