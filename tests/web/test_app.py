"""The app as a process of its own: it says where it is, answers, and ends when it is told to."""

from __future__ import annotations

import json
import os
import signal
import socket
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from tempfile import TemporaryDirectory

import pytest

from tests.web.asking import PLAN
from web.api.links import NEW_PLANS_AN_HOUR
from web.settings import ROOT

SECONDS = 60


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


@contextmanager
def running(**settings: str) -> Iterator[subprocess.Popen[str]]:
    with TemporaryDirectory() as data:
        process = subprocess.Popen(
            [sys.executable, "app.py"],
            cwd=ROOT,
            env={**os.environ, "DATA_DIR": data, **settings},
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        try:
            yield process
        finally:
            process.kill()
            process.communicate()


@pytest.mark.parametrize("stop", [signal.SIGTERM, signal.SIGINT])
def test_it_says_where_it_is_answers_there_and_stops_cleanly(stop: signal.Signals) -> None:
    port = free_port()
    with running(PORT=str(port)) as process:
        assert process.stdout
        assert process.stdout.readline() == f"Slipway is at http://127.0.0.1:{port}\n"
        with urllib.request.urlopen(f"http://127.0.0.1:{port}/healthz", timeout=SECONDS) as answer:
            assert answer.status == 200
            assert "Server" not in answer.headers
        process.send_signal(stop)
        said, complained = process.communicate(timeout=SECONDS)
        assert (process.returncode, said, complained) == (0, "Slipway has stopped.\n", "")


def test_a_port_that_is_taken_is_said_in_one_line() -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with running(PORT=str(port)) as process:
            _, complained = process.communicate(timeout=SECONDS)
    assert process.returncode == 1
    assert complained.startswith(f"Slipway cannot start: nothing can listen at 127.0.0.1:{port} (")
    assert complained.count("\n") == 1


def test_a_bad_setting_is_said_in_one_line() -> None:
    with running(PORT="eighty") as process:
        _, complained = process.communicate(timeout=SECONDS)
    assert process.returncode == 1
    assert complained == 'Slipway cannot start: PORT is "eighty": write a number from 1 to 65535.\n'


def _last_of_many_new_plans(port: int) -> int:
    """The status for the last of one plan more than an address may publish, each from elsewhere."""
    for number in range(NEW_PLANS_AN_HOUR + 1):
        asked = urllib.request.Request(
            f"http://127.0.0.1:{port}/api/links",
            json.dumps({"plan": {**PLAN, "title": f"Plan {number}"}}).encode(),
            {"Content-Type": "application/json", "X-Forwarded-For": f"192.0.2.{number}"},
        )
        try:
            with urllib.request.urlopen(asked, timeout=SECONDS) as answer:
                status = answer.status
        except urllib.error.HTTPError as error:
            status = error.code
    return int(status)


@pytest.mark.parametrize(("proxy", "status"), [("127.0.0.1", 201), ("", 429)])
def test_who_asks_is_taken_from_a_proxy_only_where_there_is_one(proxy: str, status: int) -> None:
    port = free_port()
    with running(PORT=str(port), PROXY=proxy, PUBLISH="open") as process:
        assert process.stdout
        assert process.stdout.readline() == f"Slipway is at http://127.0.0.1:{port}\n"
        assert _last_of_many_new_plans(port) == status
