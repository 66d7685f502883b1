"""Allowances: so much over any minute for each address, counted here or in one place for several machines."""

from __future__ import annotations

import shutil
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Request
from limits.storage import Storage
from werkzeug.exceptions import TooManyRequests
from werkzeug.test import EnvironBuilder

from web.api.allowance import Allowance, counts_at
from web.settings import IN_MEMORY, CannotStart


@pytest.fixture(scope="module")
def redis(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of a Redis server of our own, reached by a socket."""
    program = shutil.which("redis-server")
    assert program, "there is no redis-server: .ci/system-packages installs it"
    socket = tmp_path_factory.mktemp("redis") / "socket"
    place = ["--unixsocket", str(socket), "--dir", str(socket.parent)]
    command = [program, "--port", "0", "--save", "", *place]
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL)
    try:
        deadline = time.monotonic() + 20
        while not socket.exists():
            assert time.monotonic() < deadline, "the Redis server did not start"
        yield f"redis+unix://{socket}"
    finally:
        process.kill()
        process.wait()


@pytest.fixture(params=["memory", "redis"])
def counts(request: pytest.FixtureRequest) -> Storage:
    """Where requests are counted."""
    return counts_at(IN_MEMORY if request.param == "memory" else request.getfixturevalue("redis"))


def asking(address: str = "192.0.2.1") -> Request:
    return Request(EnvironBuilder(environ_base={"REMOTE_ADDR": address}).get_environ())


def test_an_allowance_runs_out_for_its_address_alone(counts: Storage) -> None:
    allowance = Allowance("files", 3, counts=counts)
    for _ in range(3):
        allowance.take(asking())
    with pytest.raises(TooManyRequests, match="more than 3 files were asked for in a minute") as told:
        allowance.take(asking())
    assert isinstance(told.value.retry_after, int)
    assert 0 < told.value.retry_after <= 60
    allowance.take(asking("192.0.2.2"))
    Allowance("other things", 3, counts=counts).take(asking())


def test_looking_at_an_allowance_takes_nothing_from_it(counts: Storage) -> None:
    allowance = Allowance("guesses", 1, "hour", counts)
    for _ in range(5):
        allowance.look(asking())
    allowance.take(asking())
    with pytest.raises(TooManyRequests, match="in an hour"):
        allowance.look(asking())


def test_several_machines_share_one_place(redis: str) -> None:
    first, second = (Allowance("shared", 1, counts=counts_at(redis)) for _ in range(2))
    first.take(asking())
    with pytest.raises(TooManyRequests):
        second.take(asking())


def test_a_place_that_cannot_be_reached_keeps_nobody_out(tmp_path: Path) -> None:
    allowance = Allowance("files", 1, counts=counts_at(f"redis+unix://{tmp_path / 'nothing'}"))
    for _ in range(3):
        allowance.look(asking())
        allowance.take(asking())


def test_a_place_that_is_none_is_told_at_the_start() -> None:
    with pytest.raises(CannotStart, match='RATE_LIMITS_URL is "carrier://pigeon"'):
        counts_at("carrier://pigeon")
