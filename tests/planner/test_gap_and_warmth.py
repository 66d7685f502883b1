"""The gap comes from readiness: shorter where waiting would cool a body that is not warm through."""

from __future__ import annotations

import pytest

from planner.advised_gap import FAIRLY_WARM, WARMTH_WANTED
from planner.appraisal import Appraisal, appraise
from planner.athlete import Athlete, Level, Room
from planner.notation.reader import read
from planner.pieces import TestPiece
from planner.plan import Gap, Part, PartKind, Plan
from planner.session import Session, SessionRequest, session_of
from planner.timeline import compile_timeline
from tests.mending import apply

PIECES = (TestPiece(seconds=30), TestPiece(metres=100), TestPiece(metres=2000), TestPiece(metres=5000))


def session(piece: TestPiece, minutes: int, room: Room, gap: int | None = None) -> Session:
    return session_of(SessionRequest(piece, minutes, None, Level.TRAINED, room, gap_seconds=gap))


def appraised(plan: Plan, room: Room) -> Appraisal:
    rower = Athlete(level=Level.TRAINED)
    return appraise(compile_timeline(plan, rower), rower, Level.TRAINED, room)


def gap_of(plan: Plan) -> int:
    return sum(part.seconds for part in plan.parts if isinstance(part, Gap))


@pytest.mark.parametrize("piece", PIECES, ids=str)
@pytest.mark.parametrize(("minutes", "room"), [(5, Room.COLD), (7, Room.COLD), (5, Room.NORMAL)])
def test_who_would_come_cool_waits_less_but_at_least_two_minutes(
    piece: TestPiece, minutes: int, room: Room
) -> None:
    """At least 2 and ideally about 5 minutes before a maximal piece: common practice, without a source."""
    made = session(piece, minutes, room)
    assert 120 <= gap_of(made.plan) < 300
    ready = appraised(made.plan, room).readiness
    assert ready is not None
    assert ready.gap_is_cut_short
    assert "not warm through" in ready.sentence
    assert any("not warm through" in reason for reason in made.reasons)
    assert "while the warmth stays" not in " ".join(made.reasons)


@pytest.mark.parametrize("piece", PIECES, ids=str)
@pytest.mark.parametrize(("minutes", "room"), [(12, Room.NORMAL), (20, Room.COLD), (8, Room.HOT)])
def test_who_is_warm_through_waits_five_minutes(piece: TestPiece, minutes: int, room: Room) -> None:
    made = session(piece, minutes, room)
    assert gap_of(made.plan) == 300
    ready = appraised(made.plan, room).readiness
    assert ready is not None
    assert ready.at_start.warmth.middle >= WARMTH_WANTED
    assert any("while the warmth stays" in reason for reason in made.reasons)


def test_the_gap_ends_where_the_warmth_that_is_wanted_does() -> None:
    made = session(TestPiece(metres=2000), 10, Room.COLD)
    ready = appraised(made.plan, Room.COLD).readiness
    assert ready is not None
    assert 120 < gap_of(made.plan) < 300
    assert ready.at_start.warmth.middle >= WARMTH_WANTED
    later = appraised(session(TestPiece(metres=2000), 10, Room.COLD, gap_of(made.plan) + 30).plan, Room.COLD)
    assert later.readiness is not None
    assert later.readiness.at_start.warmth.middle < WARMTH_WANTED
    assert "would cool you less" in later.readiness.sentence


def test_hard_strokes_are_three_minutes_past_though_one_is_not_warm() -> None:
    """A hard bout 3 min before cost 16 %: Bailey 2009, J Appl Physiol 107:1743-1756."""
    plan = read("warm-up\n4' r18 light\n6 strokes r24 half\n15 strokes r30 race\nmain\n1' r34 race")
    ready = appraised(plan, Room.COLD).readiness
    assert ready is not None
    assert ready.advised_gap[:2] == (120, 180)


def test_no_maximal_piece_is_rowed_cool_without_a_word() -> None:
    made = session(TestPiece(seconds=30), 5, Room.COLD)
    found = appraised(made.plan, Room.COLD)
    assert found.readiness is not None
    assert found.readiness.sentence.startswith("You come to the start cool")
    assert found.readiness.at_start.warmth.middle < FAIRLY_WARM
    (finding,) = (f for f in found.findings if f.code == "cool-at-start")
    assert finding.mend is not None
    mended = appraised(apply(made.plan, finding.mend.edits), Room.COLD)
    assert "cool-at-start" not in {f.code for f in mended.findings}
    assert mended.readiness is not None
    assert mended.readiness.at_start.warmth.middle >= FAIRLY_WARM


@pytest.mark.parametrize(
    ("text", "room"),
    [
        ("warm-up\n8' r18 light\n10 strokes r24 half\ngap 2'\nmain\n1' r34 race", Room.NORMAL),
        ("warm-up\n5' r18 light\ngap 2'\nmain\n30' r18 light", Room.COLD),
        ("warm-up\n2' r18 light\ngap 2'\nmain\n1' r34 race", Room.COLD),  # of this hard-too-early speaks
        ("warm-up\n6' r18 light\ngap 25'\nmain\n1' r34 race", Room.COLD),  # and of this gap-too-long
    ],
)
def test_of_other_starts_nothing_is_said_of_the_cold(text: str, room: Room) -> None:
    assert "cool-at-start" not in {f.code for f in appraised(read(text), room).findings}


def test_the_last_block_does_not_say_that_one_arrives_warm() -> None:
    made = session(TestPiece(seconds=30), 5, Room.COLD)
    part = made.plan.parts[0]
    assert isinstance(part, Part)
    assert part.kind is PartKind.WARM_UP
    assert "Arrive warm" not in str(part.blocks[-1])
