"""POST /api/timeline on the real server, beside a bare Flask app that answers the same bytes."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from dataclasses import replace
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

from planner.schemas.plan_schema import dump_plan
from tests.bench.compiling import twenty_minutes
from tests.bench.measuring import Row, at_least, median_seconds
from tests.bench.servers import running
from tests.bench.wire import Connection, Crowd, post
from tests.browser.app_server import Server

PATH = "/api/timeline"
AIM = 0.6
ROUNDS = 15
REQUESTS = 120
"""In each round and for each way: 15 x 3 x 120 requests in all."""
ECHO = (sys.executable, "-m", "tests.bench.echo_server")


def rows() -> Iterator[Row]:
    """The share of the echo's throughput that the app reaches, asked before and never asked before."""
    request = post(PATH, _body(0))
    with TemporaryDirectory() as folder, running(Server(Path(folder) / "app")) as app:
        connection = Connection(app.port)
        answer = connection.ask(request)
        connection.close()
        kept = Path(folder) / "answer.json"
        kept.write_bytes(answer)
        with running(Server(Path(folder) / "echo", ECHO, {"ANSWER": str(kept)})) as echo:
            seconds = _measure(app.port, echo.port, request)
    each = {name: taken / REQUESTS * 1000 for name, taken in seconds.items()}
    size = f"{len(answer) / 1000:.1f} kB answered in"
    warm, cold = (seconds["echo"] / seconds[name] for name in ("warm", "cold"))
    echo_told = f"against {each['echo']:.2f} ms"
    yield at_least("timeline call, asked before", warm, AIM, "x", f"{size} {each['warm']:.2f} ms {echo_told}")
    yield Row("timeline call, never asked before", f"{cold:.2f}x  ({size} {each['cold']:.2f} ms {echo_told})")


def _measure(app: int, echo: int, request: bytes) -> dict[str, float]:
    numbers = count(1)

    def never_asked() -> list[bytes]:
        return [post(PATH, _body(next(numbers))) for _ in range(REQUESTS)]

    fresh = [never_asked() for _ in range(ROUNDS + 1)]
    with Crowd(app) as to_app, Crowd(echo) as to_echo:
        return median_seconds(
            {
                "echo": lambda: to_echo.ask_all([request] * REQUESTS),
                "warm": lambda: to_app.ask_all([request] * REQUESTS),
                "cold": lambda: to_app.ask_all(fresh.pop()),
            },
            ROUNDS,
        )


def _body(number: int) -> bytes:
    """A request for the same session under a title of its own."""
    plan = dump_plan(replace(twenty_minutes(), title=f"Session {number}"))
    return json.dumps({"plan": plan}).encode()
