"""What browsers need where there is no desk: a virtual screen and a silent sound card, made at first use."""

from __future__ import annotations

import atexit
import os
import shutil
import subprocess
import tempfile
from functools import cache
from pathlib import Path

from tests.browser.processes import DIES_WITH_US, wait_until


@cache
def virtual_screen() -> str:
    """The DISPLAY of an X server of our own, large enough for every size that is tested."""
    read_end, write_end = os.pipe()
    screen = ["-displayfd", str(write_end), "-screen", "0", "1920x1280x24", "-nolisten", "tcp"]
    process = subprocess.Popen(
        [*DIES_WITH_US, "Xvfb", *screen],
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
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    socket = folder / "socket"
    manners = ["-n", "--daemonize=no", "--exit-idle-time=-1", "--use-pid-file=no"]
    modules = ["module-null-sink", f"module-native-protocol-unix auth-anonymous=1 socket={socket}"]
    process = subprocess.Popen(
        [*DIES_WITH_US, "pulseaudio", *manners, *(f"--load={module}" for module in modules)],
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
