"""A bare Flask app that answers every POST with the same bytes, under the app's own waitress settings.

Run as `python -m tests.bench.echo_server`; HOST and PORT say where it listens, ANSWER which file it sends.
"""

from __future__ import annotations

import os
from pathlib import Path

from flask import Flask, Response, request
from waitress import serve

from web.serving import LIMITS


def create_echo(answer: bytes) -> Flask:
    """An app that reads what it is sent and answers these bytes."""
    echo = Flask(__name__)

    @echo.post("/api/timeline")
    def same_bytes() -> Response:
        request.get_data(cache=False)
        return Response(answer, content_type="application/json")

    @echo.get("/healthz")
    def health() -> Response:
        return Response("ok")

    return echo


if __name__ == "__main__":
    serve(
        create_echo(Path(os.environ["ANSWER"]).read_bytes()),
        host=os.environ["HOST"],
        port=int(os.environ["PORT"]),
        **LIMITS,
    )
