"""What the checks look at: a session with its start line where readiness has it."""

from __future__ import annotations

import pytest

from planner.athlete import Level, Room
from planner.checks.scene import Scene, scene_of
from planner.notation.reader import read
from planner.timeline import compile_timeline

WARM_UP = "warm-up\n10' r20 half\n"


def scene(text: str) -> Scene:
    return scene_of(compile_timeline(read(text)), None, Level.CLUB, Room.NORMAL)


@pytest.mark.parametrize(
    "text",
    [
        f"{WARM_UP}gap 5'\nmain\n2' r30 race",
        f"{WARM_UP}main\n2' r30 race\ngap 5'\ncool-down\n5' r18 light",
        f"{WARM_UP}gap 5'",
        f"{WARM_UP}gap 5'\ncool-down\n5' r18 light\ngap 2'",
    ],
)
def test_the_start_line_is_that_of_readiness(text: str) -> None:
    found = scene(text)
    assert found.readiness is not None
    assert found.start == found.readiness.start_seconds


def test_a_warm_up_that_nothing_waits_for_has_no_start_line_to_check() -> None:
    assert scene(f"{WARM_UP}cool-down\n5' r18 light").start is None
