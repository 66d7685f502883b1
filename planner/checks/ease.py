"""Easy rowing that is not easy: at the very beginning, between hard blocks, on the way down."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.building import softened
from planner.checks.scene import Row, Scene
from planner.findings import Edit, Finding, Mend, Severity
from planner.plan import PartKind, Pressure

EASY_TOP = 0.65
"""Share of 2 km power above which rowing is no longer easy: the top of the easy aerobic zone [C], unsure
(facts 6.5)."""

_OPENING = "The first minutes are there to get warm and loose; what is spent in them is missing later."
_RECOVERY = "Reserve and breath come back the quicker the easier one rows between hard blocks."
_WAY_DOWN = "On the way down rowing only keeps the blood moving while breath and heart settle."


def easy_too_hard(scene: Scene) -> Iterator[Finding]:
    """Rowing that should be easy by where it stands, and is not; each place once."""
    told: set[str] = set()
    first = next((row for row in scene.rows if row.is_rowed), None)
    for row in scene.rows:
        place = row.segment.place
        if row.share is None or row.share <= EASY_TOP or place in told:
            continue
        if reason := _why_easy(scene, row, opens=row is first):
            told.add(place)
            yield Finding(
                "easy-too-hard",
                Severity.ADVICE,
                place,
                f"{scene.named(row)} comes to {round(100 * row.share)} % of 2 km power: not easy any more.",
                reason,
                Mend("Row it light", _lightly(scene, place)),
            )


def _why_easy(scene: Scene, row: Row, *, opens: bool) -> str | None:
    if row.segment.part == PartKind.COOL_DOWN:
        return _WAY_DOWN
    if _is_between_hard(scene, row.segment.place):
        return _RECOVERY
    return _OPENING if opens and row.segment.part == PartKind.WARM_UP and not row.is_hard else None


def _is_between_hard(scene: Scene, place: str) -> bool:
    """Whether it stands between repetitions that hold something hard."""
    repeat, found, _ = place.rpartition("/between/")
    return bool(found) and any(
        r.is_hard and r.segment.place.startswith(f"{repeat}/blocks/") for r in scene.rows
    )


def _lightly(scene: Scene, place: str) -> tuple[Edit, ...]:
    """Light pressure; at a calm rate too where light is not light enough."""
    return softened(scene, place, EASY_TOP, (Pressure.LIGHT,))
