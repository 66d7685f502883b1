"""Makes the app and hands it to waitress; says where it is, and stops when it is told to."""

from __future__ import annotations

import logging
import os
import signal
import sys
from typing import Any

from waitress.server import create_server

from web.factory import create_app
from web.settings import HELP, CannotStart, Settings, settings_from

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


def main(arguments: list[str]) -> int:
    """Serve until SIGTERM or Ctrl-C; 1 when that cannot even begin."""
    if arguments:
        print("Slipway takes no arguments, only these settings from the environment:")
        print("\n".join(f"  {name:15} {help_}" for name, help_ in HELP.items()))
        return 0 if arguments == ["--help"] else 2
    logging.basicConfig(format="%(levelname)s %(name)s: %(message)s")
    # It speaks of every request that waits a moment for a thread.
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    try:
        settings = settings_from(os.environ)
        serve(settings)
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


def serve(settings: Settings) -> None:
    """Answer at the address of the settings until told to stop. Raises CannotStart."""
    app = create_app(settings)
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


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
