"""Who rows and where: maximal work for a novice, long or hard work in the heat."""

from __future__ import annotations

from collections.abc import Iterator

from planner.athlete import Level, Room
from planner.checks.scene import Row, Scene, share_of
from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.plan import PartKind, Pressure
from planner.units import clock

MAXIMAL_SHARE = 0.95
"""From this share of 2 km power on, longer than a burst, work is all but maximal: judgement [C]."""
BURST_SECONDS = 30
HOT_HARD_SECONDS = 300
HOT_SECONDS = 1200
"""Hard rowing and rowing in all that are worth a word in a hot room: judgement [C] on the ACSM position that
asks for more rest and less hard work as it gets hotter (Armstrong 2007 [S]; facts 9.5)."""


def novice_maximal(scene: Scene) -> Iterator[Finding]:
    """All-out work asked of somebody new to rowing; said once, mended everywhere."""
    if scene.level is not Level.NOVICE:
        return
    rows = [row for row in scene.rows if _is_maximal(row)]
    if not rows:
        return
    places = list(dict.fromkeys(row.segment.place for row in rows))
    yield Finding(
        "novice-maximal",
        Severity.ADVICE,
        rows[0].segment.place,
        f"{scene.named(rows[0])} is all but maximal, and this is for a novice.",
        "Flat-out work strains heart and back before the stroke is sure: a few weeks of easier rowing first, "
        "a coach close by, and a doctor's word for anyone unsure of their health.",
        Mend("Take the pressure down", tuple(_softer(scene, place) for place in places)),
    )


def _softer(scene: Scene, place: str) -> Edit:
    rate = scene.block(place).rate
    half = rate is None or share_of(Pressure.HALF, rate, scene.level) < MAXIMAL_SHARE
    return Edit(Op.REPLACE, f"{place}/effort", Pressure.HALF if half else Pressure.LIGHT)


def _is_maximal(row: Row) -> bool:
    return row.share is not None and row.share >= MAXIMAL_SHARE and row.seconds > BURST_SECONDS


def heat(scene: Scene) -> Iterator[Finding]:
    """Long or hard rowing in a hot room; no edit of the plan makes the room cooler."""
    if scene.room is not Room.HOT:
        return
    rowed = sum(row.seconds for row in scene.rows if row.is_rowed)
    hard = sum(row.seconds for row in scene.rows if row.is_hard)
    if hard < HOT_HARD_SECONDS and rowed < HOT_SECONDS:
        return
    held = (
        f"{clock(round(hard))} of hard rowing"
        if hard >= HOT_HARD_SECONDS
        else f"{clock(round(rowed))} of rowing"
    )
    first = next(
        (r for r in scene.rows if r.segment.part == PartKind.MAIN and r.is_rowed),
        next(r for r in scene.rows if r.is_rowed),
    )
    yield Finding(
        "heat",
        Severity.ADVICE,
        f"/parts/{first.segment.part_index}",
        f"The room is hot, and this holds {held}.",
        "Without a fan the body stores heat: drink, rest longer, cut it short. Stop at once with chills, "
        "dizziness or a headache, and get cool.",
    )
