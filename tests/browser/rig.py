"""What browsers without a desk need: a virtual screen and a silent sound card, started at first use, one each a run."""

from __future__ import annotations

import atexit
import os
import subprocess
import tempfile
from functools import cache
from pathlib import Path

from tests.browser.processes import DIES_WITH_US, wait_until


@cache
def virtual_screen() -> str:
    """The DISPLAY of an X server of our own, large enough for every size that is tested."""
    read_end, write_end = os.pipe()
    process = subprocess.Popen(
        [*DIES_WITH_US, "Xvfb", "-displayfd", str(write_end), "-screen", "0", "1920x1280x24", "-nolisten", "tcp"],
        pass_fds=[write_end],
        stderr=subprocess.DEVNULL,
    )
    atexit.register(_end, process)
    os.close(write_end)
    with os.fdopen(read_end) as answer:
        number = answer.readline().strip()
    assert number, "Xvfb ended without saying which screen it made"
    return f":{number}"


@cache
def silent_sound_card() -> str:
    """The PULSE_SERVER of a sound server of our own that swallows what is played, at the right pace."""
    folder = Path(tempfile.mkdtemp(prefix="slipway-sound-"))
    socket = folder / "socket"
    process = subprocess.Popen(
        [
            *[*DIES_WITH_US, "pulseaudio", "-n", "--daemonize=no", "--exit-idle-time=-1", "--use-pid-file=no"],
            "--load=module-null-sink",
            f"--load=module-native-protocol-unix auth-anonymous=1 socket={socket}",
        ],
        env={**os.environ, "HOME": str(folder), "XDG_RUNTIME_DIR": str(folder)},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    atexit.register(_end, process)
    wait_until(socket.exists, "the sound server")
    return f"unix:{socket}"


def _end(process: subprocess.Popen[bytes]) -> None:
    process.terminate()
    process.wait()
