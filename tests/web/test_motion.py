"""What moves on the screens: the rail and little else, never against a wish, never as quick as a flash."""

from __future__ import annotations

import re
from pathlib import Path

from planner.limits import RATE

CLIENT = Path(__file__).resolve().parents[2] / "static"
MOVES = re.compile(r"@keyframes|\banimation:|\btransition:|\.animate\(")
MOVING = {
    "stroke-rail.ts": "once a stroke",
    "wall-lanes.ts": "when lanes take turns, every ten seconds",
    "wall-keys.ts": "when somebody touches a wall",
}


def moving() -> dict[str, str]:
    files = [*CLIENT.glob("src/**/*.ts"), *CLIENT.glob("styles/*.css")]
    return {file.name: text for file in files if MOVES.search(text := file.read_text())}


def test_nothing_moves_but_what_is_known_to_move_slowly() -> None:
    assert set(moving()) == set(MOVING)


def test_whatever_moves_asks_first_whether_motion_is_wished() -> None:
    for name, text in moving().items():
        assert "prefers-reduced-motion" in text, name


def test_the_quickest_rail_comes_round_less_than_once_a_second() -> None:
    # WCAG 2.2, 2.3.1 allows three flashes a second; we allow one.
    assert 60 / RATE.high > 1
