"""A server that runs for as long as it is measured."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from tests.browser.app_server import Server


@contextmanager
def running(server: Server) -> Iterator[Server]:
    """The server, started; it is killed on the way out, whatever happens."""
    server.start()
    try:
        yield server
    finally:
        server.kill()
