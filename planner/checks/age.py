"""Who is too young for grown-ups' work, or old enough for a word before it: findings by age."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.bouts import Bout, together
from planner.checks.building import easy, inserted
from planner.checks.maximal import eased_all, long_bursts, maximal_bouts
from planner.checks.scene import Row, Scene, top_of
from planner.findings import Finding, Mend, Severity
from planner.plan import PartKind
from planner.units import told_time

CHILD_SECONDS = 600
"""Rowing in one go, warm-up left out, from which it is long for a child: judgement [C] on short pieces,
technique first (facts 9.3 [M])."""
OLDER_WARM_UP = 600
"""Seconds of rowing before hard work: older adults need the longer warm-up (facts 9.3 [M]); 10 min [C]."""

_BESIDE = (
    "a coach at their side, who knows them and has the last word, and a doctor's word where there is doubt"
)
_OF_CHILDREN = f"Children row short pieces, technique first, with {_BESIDE}."
_OF_OLDER = (
    "Go by effort, 7 to 8 of 10 where it is to be hard, rather than by a formula of heart rate. Ask a doctor "
    "before all-out work with any known illness, symptom or doubt; a coach on the spot knows better."
)


def child_maximal(scene: Scene) -> Iterator[Finding]:
    """All-out work asked of a child; said once, mended everywhere."""
    if scene.is_child and (bouts := [*long_bursts(scene), *maximal_bouts(scene)]):
        yield _maximal(scene, bouts, "child-maximal", Severity.WARNING, _OF_CHILDREN)


def older_maximal(scene: Scene) -> Iterator[Finding]:
    """All-out work asked of an older adult; said once, mended everywhere."""
    if scene.is_older and (bouts := list(maximal_bouts(scene))):
        yield _maximal(scene, bouts, "older-maximal", Severity.ADVICE, _OF_OLDER)


def _maximal(scene: Scene, bouts: list[Bout], code: str, severity: Severity, reason: str) -> Finding:
    first = min(bouts, key=lambda bout: bout.rows[0].segment.index)
    return Finding(
        code,
        severity,
        first.places[0],
        f"{together(scene, first)} is all but maximal, and this is for somebody of {scene.age}.",
        reason,
        eased_all(scene, bouts),
    )


def child_long(scene: Scene) -> Iterator[Finding]:
    """The longest block that a child is to row in one go, where that is long."""
    rows = [row for row in scene.rows if row.is_rowed and row.segment.part != PartKind.WARM_UP]
    longest = max(rows, key=lambda row: row.seconds, default=None)
    if not scene.is_child or longest is None or longest.seconds <= CHILD_SECONDS:
        return
    yield Finding(
        "child-long",
        Severity.ADVICE,
        longest.segment.place,
        f"{scene.named(longest)} is {told_time(round(longest.seconds))} in one go, and this is for somebody "
        f"of {scene.age}: break it up, with time off the seat.",
        _OF_CHILDREN,
    )


def child_target(scene: Scene) -> Iterator[Finding]:
    """Targets that follow from a 2 km, or from a pulse, as they hold for grown-ups."""
    first = next((row for row in scene.rows if _is_of_grown_ups(row)), None)
    if not scene.is_child or first is None:
        return
    yield Finding(
        "child-target",
        Severity.NOTE,
        first.segment.place,
        "Splits from a 2 km and heart rates are reckoned as for grown-ups, and this is for somebody of "
        f"{scene.age}: row by feel, so that one can still talk.",
        "No such prediction was ever tested on children. " + _OF_CHILDREN,
    )


def _is_of_grown_ups(row: Row) -> bool:
    target = row.segment.stretch.target
    return target is not None and (target.split is not None or target.heart_rate is not None)


def older_warm_up(scene: Scene) -> Iterator[Finding]:
    """A hard piece that an older adult comes to after a short warm-up."""
    piece = scene.piece
    before = scene.before(piece) if piece else ()
    rowed = sum(row.seconds for row in before)
    if piece is None or not scene.is_older or not before or rowed >= OLDER_WARM_UP:
        return
    yield Finding(
        "older-warm-up",
        Severity.ADVICE,
        piece.segment.place,
        f"{scene.named(piece)} comes after {told_time(round(rowed))} of rowing, and this is for somebody of "
        f"{scene.age}: ten minutes and more are better.",
        "The older the body, the longer it takes to get warm, and the more a longer warm-up spares it.",
        Mend(
            "Begin with more easy rowing",
            inserted([easy(OLDER_WARM_UP - rowed)], top_of(before[0].segment.place)),
        ),
    )
