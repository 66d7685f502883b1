"""Processes that tests start and really kill: found by argument, ended with their children."""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Callable, Iterator
from pathlib import Path

# A process started behind this dies with the test run, even when that is killed itself.
DIES_WITH_US = ["setpriv", "--pdeathsig", "KILL"]


def wait_until(is_so: Callable[[], bool], what: str, seconds: float = 20) -> None:
    """Return once `is_so()`; AssertionError naming `what` after so many seconds."""
    deadline = time.monotonic() + seconds
    while not is_so():
        if time.monotonic() > deadline:
            raise AssertionError(f"waited {seconds} s in vain for {what}")
        time.sleep(0.02)


def kill_started_with(argument: Path) -> None:
    """SIGKILL all processes started with this argument, and all below them; return when they are gone."""
    doomed = {pid for root in _with_argument(str(argument)) for pid in (root, *_descendants(root))}
    for pid in doomed:
        _kill(pid)
    wait_until(lambda: not any(map(_is_alive, doomed)), f"the end of processes {sorted(doomed)}")


def end_started_with(argument: Path, seconds: float = 5) -> None:
    """Let processes started with this argument and told to quit end by themselves; kill what is left."""
    deadline = time.monotonic() + seconds
    while _with_argument(str(argument)) and time.monotonic() < deadline:
        time.sleep(0.02)
    kill_started_with(argument)


def processor_seconds(argument: Path) -> float:
    """The processor time used so far by all processes started with this argument and all below them."""
    everyone = {pid for root in _with_argument(str(argument)) for pid in (root, *_descendants(root))}
    return sum(map(_ticks_of, everyone)) / os.sysconf("SC_CLK_TCK")


def _ticks_of(pid: int) -> int:
    try:
        user, system = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[11:13]
    except OSError:
        return 0
    return int(user) + int(system)


def _with_argument(argument: str) -> list[int]:
    found = []
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            words = (folder / "cmdline").read_bytes().decode(errors="replace").split("\0")
        except OSError:
            continue
        if any(word == argument or word.endswith("=" + argument) for word in words):
            found.append(int(folder.name))
    return [pid for pid in found if pid != os.getpid()]


def _descendants(pid: int) -> Iterator[int]:
    try:
        children = Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
    except OSError:
        return
    for child in map(int, children):
        yield child
        yield from _descendants(child)


def _kill(pid: int) -> None:
    try:
        os.kill(pid, signal.SIGKILL)
    except ProcessLookupError:
        return


def _is_alive(pid: int) -> bool:
    try:
        state = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0]
    except OSError:
        return False
    return state != "Z"
