"""A sound card of our own whose output is recorded, at real-time priority where that is allowed.

At ordinary priority, busy neighbours on a machine with two cores make the sound stumble by up to 300 ms, and
that would be measured in place of the player.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterable
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from tests.browser.processes import DIES_WITH_US, wait_until

RATE = 48_000
PRIORITY = 20
SETTINGS = f"""\
default-sample-rate = {RATE}
alternate-sample-rate = {RATE}
default-sample-format = float32le
avoid-resampling = yes
realtime-scheduling = no
high-priority = no
"""
SINK = f"module-null-sink sink_name=card format=float32le rate={RATE} channels=2"

Samples = NDArray[np.float32]


class RecordedCard:
    """A null sink, and a recorder at its monitor from `record` to `stop`; to be closed."""

    def __init__(self) -> None:
        self._folder = Path(tempfile.mkdtemp(prefix="slipway-recorded-"))
        self._recorder: subprocess.Popen[bytes] | None = None
        settings = self._folder / ".config" / "pulse"
        settings.mkdir(parents=True)
        (settings / "daemon.conf").write_text(SETTINGS)
        socket = self._folder / "socket"
        self.server = f"unix:{socket}"
        manners = ["-n", "--daemonize=no", "--exit-idle-time=-1", "--use-pid-file=no"]
        modules = [SINK, f"module-native-protocol-unix auth-anonymous=1 socket={socket}"]
        self._sound_server = subprocess.Popen(
            [*DIES_WITH_US, "pulseaudio", *manners, *(f"--load={module}" for module in modules)],
            env={**os.environ, "HOME": str(self._folder), "XDG_RUNTIME_DIR": str(self._folder)},
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        wait_until(socket.exists, "the sound server")
        self.at_once = hurry(self._sound_server.pid)

    def record(self) -> None:
        """Start to record what is played from now on."""
        options = ["--raw", "--format=float32le", f"--rate={RATE}", "--channels=2", "--latency-msec=200"]
        self._recorder = subprocess.Popen(
            [
                *DIES_WITH_US,
                "parec",
                f"--server={self.server}",
                "--device=card.monitor",
                *options,
                str(self._tape),
            ],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        wait_until(lambda: self._tape.exists() and self._tape.stat().st_size > 0, "the recorder")
        hurry(self._recorder.pid)

    def stop(self) -> Samples:
        """The recording, one channel of it, from -1 to 1."""
        assert self._recorder is not None, "nothing is recorded"
        self._recorder.terminate()
        self._recorder.wait()
        self._recorder = None
        both = np.fromfile(self._tape, dtype=np.float32)
        return both[: len(both) // 2 * 2 : 2]

    def close(self) -> None:
        """End recorder and sound server."""
        for process in (self._recorder, self._sound_server):
            if process is not None:
                process.kill()
                process.wait()
        shutil.rmtree(self._folder, ignore_errors=True)

    @property
    def _tape(self) -> Path:
        return self._folder / "tape.raw"


def hurry(process: int) -> bool:
    """Give all threads of a process real-time priority; False where that is not allowed."""
    try:
        threads = [int(name) for name in os.listdir(f"/proc/{process}/task")]
        return _hurry_threads(threads)
    except OSError:
        return False


def _hurry_threads(threads: Iterable[int]) -> bool:
    for thread in threads:
        os.sched_setscheduler(thread, os.SCHED_FIFO, os.sched_param(PRIORITY))
    return True
