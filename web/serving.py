"""The program around the app: hands it to waitress, says where it is, and stops when it is told to."""

from __future__ import annotations

import logging
import signal
import sys
from collections.abc import Callable, Mapping
from typing import Any

from flask import Flask
from waitress.server import create_server

from web.settings import CannotStart, Settings

# What keeps a machine with slow or broken clients answering the others.
LIMITS: dict[str, Any] = {
    "threads": 8,
    "connection_limit": 1000,
    "asyncore_use_poll": True,
    "channel_timeout": 15,
    "cleanup_interval": 5,
    # Twice what the app takes, so that it is the app that refuses, with a problem document.
    "max_request_body_size": 512 * 1024,
    "max_request_header_size": 16 * 1024,
    "ident": "",
}


def run(arguments: list[str], settings_are: str, help_: Mapping[str, str], start: Callable[[], None]) -> int:
    """A program that takes settings from the environment alone: its exit status, 1 when it cannot start.

    `settings_are` leads the list of them in `help_`; `start` serves until told to stop or raises CannotStart.
    """
    if arguments:
        print(settings_are)
        print("\n".join(f"  {name:15} {about}" for name, about in help_.items()))
        return 0 if arguments == ["--help"] else 2
    logging.basicConfig(format="%(levelname)s %(name)s: %(message)s")
    # It speaks of every request that waits a moment for a thread.
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    try:
        start()
    except CannotStart as error:
        print(f"Slipway cannot start: {error}.", file=sys.stderr)
        return 1
    return 0


def behind(proxy: str) -> dict[str, Any]:
    """What the server takes from a proxy in front of it: who asks, by which name, and whether over https."""
    if not proxy:
        return {}
    headers = {"x-forwarded-for", "x-forwarded-host", "x-forwarded-proto"}
    return {
        "trusted_proxy": proxy,
        "trusted_proxy_headers": headers,
        "clear_untrusted_proxy_headers": True,
    }


def serve(app: Flask, settings: Settings) -> None:
    """Answer at the address of the settings until told to stop. Raises CannotStart."""
    try:
        server = create_server(
            app, host=settings.host, port=settings.port, **LIMITS, **behind(settings.proxy)
        )
    except OSError as error:
        raise CannotStart(
            f"nothing can listen at {settings.host}:{settings.port} ({error.strerror})"
        ) from None
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(0))
    print(f"Slipway is at http://{settings.host}:{settings.port}", flush=True)
    server.run()
    print("Slipway has stopped.", flush=True)
