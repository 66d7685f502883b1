"""The real server as its own process, which a test can really kill and start again at the same address."""

from __future__ import annotations

import os
import random
import signal
import socket
import subprocess
import sys
import urllib.error
import urllib.request
from collections.abc import Mapping, Sequence
from pathlib import Path

from tests.browser.processes import DIES_WITH_US, wait_until

ROOT = Path(__file__).resolve().parents[2]
APP = (sys.executable, "app.py")
# Below the ports that systems hand out by themselves, so that none is taken while the server is down,
# and clear of those that browsers refuse.
PORTS = range(20_000, 30_000)
START_SECONDS = 60


class Server:
    """A server that reads HOST and PORT and answers /healthz; `url` has no slash at its end."""

    def __init__(
        self, data: Path, command: Sequence[str] = APP, environment: Mapping[str, str] | None = None
    ) -> None:
        self.data = data
        self.port = free_port()
        self.url = f"http://127.0.0.1:{self.port}"
        self._command = self._first_command = command
        self._environment = environment or {}
        self._log = data / "server.log"
        self._process: subprocess.Popen[bytes] | None = None

    def start(self) -> None:
        """Start, or start again at the same address, and wait until /healthz answers."""
        assert self._process is None, "the server runs already"
        self.data.mkdir(parents=True, exist_ok=True)
        place = {"HOST": "127.0.0.1", "PORT": str(self.port), "DATA_DIR": str(self.data / "store")}
        with self._log.open("ab") as log:
            self._process = subprocess.Popen(
                [*DIES_WITH_US, *self._command],
                cwd=ROOT,
                env={**os.environ, **self._environment, **place},
                stdout=log,
                stderr=subprocess.STDOUT,
            )
        try:
            wait_until(self._is_up, f"the server at {self.url}", START_SECONDS)
        except AssertionError as error:
            self.kill()
            raise AssertionError(f"{error}; it said:\n{self.log()}") from None

    @property
    def is_as_started(self) -> bool:
        """Whether it runs, and is the program that it was at first."""
        runs = self._process is not None and self._process.poll() is None
        return runs and self._command == self._first_command

    def kill(self) -> None:
        """SIGKILL: the network is gone, in the middle of whatever it was."""
        if self._process is not None:
            self._process.kill()
            self._process.wait()
            self._process = None

    def deploy(self, command: Sequence[str]) -> None:
        """Put another program in its place, at the same address."""
        self.kill()
        self._command = command
        self.start()

    def stop(self, seconds: float = 10) -> int:
        """SIGTERM, as a system does that shuts down; the exit status."""
        assert self._process is not None, "the server does not run"
        self._process.send_signal(signal.SIGTERM)
        status = self._process.wait(seconds)
        self._process = None
        return status

    def log(self) -> str:
        """What the server has written so far."""
        return self._log.read_text(errors="replace")

    def _is_up(self) -> bool:
        assert self._process is not None
        if (status := self._process.poll()) is not None:
            raise AssertionError(f"the server ended with status {status} before it answered")
        try:
            with _opener.open(f"{self.url}/healthz", timeout=2) as answer:
                return int(answer.status) == 200
        except (urllib.error.URLError, OSError):
            return False


# Not through a proxy, whatever the environment says: the server is on this machine.
_opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))


def free_port() -> int:
    """A port that nobody listens at now."""
    for port in random.sample(PORTS, 100):
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", port)) != 0:
                return port
    raise AssertionError("a hundred ports tried, none is free")
