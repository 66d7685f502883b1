"""Makes the app and serves it: what `make run` starts."""

from __future__ import annotations

import os
import sys

from web.factory import create_app
from web.serving import run, serve
from web.settings import HELP, missing_from, settings_from

SETTINGS_ARE = "Slipway takes no arguments, only these settings from the environment:"


def main(arguments: list[str]) -> int:
    """Serve until SIGTERM or Ctrl-C; 1 when that cannot even begin."""
    return run(arguments, SETTINGS_ARE, HELP, _start)


def _start() -> None:
    settings = settings_from(os.environ)
    if missing := missing_from(settings):
        print(f"Something is missing: {missing}.", file=sys.stderr)
    serve(create_app(settings), settings)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
