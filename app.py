"""Makes the app and serves it: what `make run` starts."""

from __future__ import annotations

import logging
import os
import sys

from web.factory import create_app
from web.serving import serve
from web.settings import HELP, CannotStart, missing_from, settings_from


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
        if missing := missing_from(settings):
            print(f"Something is missing: {missing}.", file=sys.stderr)
        serve(create_app(settings), settings)
    except CannotStart as error:
        print(f"Slipway cannot start: {error}.", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
