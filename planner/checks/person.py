"""Who rows and where: maximal work for a novice, long or hard work in the heat."""

from __future__ import annotations

from collections.abc import Iterator

from planner.athlete import Level, Room
from planner.checks.bouts import together
from planner.checks.maximal import eased_all, long_bursts, maximal_bouts
from planner.checks.scene import Scene
from planner.findings import Finding, Severity
from planner.plan import PartKind
from planner.units import told_time

HOT_HARD_SECONDS = 300
HOT_SECONDS = 1200
"""Hard rowing and rowing in all that are worth a word in a hot room: judgement [C] on the ACSM position that
asks for more rest and less hard work as it gets hotter (Armstrong 2007 [S]; facts 9.5)."""


def novice_maximal(scene: Scene) -> Iterator[Finding]:
    """All-out work asked of somebody new to rowing; said once; of children speaks `age`."""
    if scene.level is not Level.NOVICE or scene.is_child:
        return
    bouts = [*long_bursts(scene), *maximal_bouts(scene)]
    if not bouts:
        return
    first = min(bouts, key=lambda bout: bout.rows[0].segment.index)
    yield Finding(
        "novice-maximal",
        Severity.ADVICE,
        first.places[0],
        f"{together(scene, first)} is all but maximal, and this is for a novice.",
        "Flat-out work strains heart and back before the stroke is sure: a few weeks of easier rowing first, "
        "a coach close by, and a doctor's word for anyone unsure of their health.",
        eased_all(scene, bouts),
    )


def heat(scene: Scene) -> Iterator[Finding]:
    """Long or hard rowing in a hot room; no edit of the plan makes the room cooler."""
    if scene.room is not Room.HOT:
        return
    rowed = sum(row.seconds for row in scene.rows if row.is_rowed)
    hard = sum(row.seconds for row in scene.rows if row.is_hard)
    if hard < HOT_HARD_SECONDS and rowed < HOT_SECONDS:
        return
    held = (
        f"{told_time(round(hard))} of hard rowing"
        if hard >= HOT_HARD_SECONDS
        else f"{told_time(round(rowed))} of rowing"
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
