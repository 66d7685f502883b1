"""What every session has to keep to, and which of it one does not."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from planner.advised_gap import RESERVE_WANTED
from planner.appraisal import appraise
from planner.findings import Severity
from planner.notation.reader import read
from planner.notation.writer import write
from planner.pieces import Character, SteadyRow, Technique, TestPiece
from planner.plan import Gap, PartKind, Pressure
from planner.readiness import readiness_of
from planner.schemas.plan_schema import dump_plan, load_plan
from planner.session import Session, session_of
from planner.stretches import ROWED
from planner.timeline import Segment, Timeline, compile_timeline
from planner.warm_up.rules import HARD_SHARE, LIFT, RATE_STEP
from tests.sweep.cases import Case

HIGHEST_EASY_RATE = 20
CRITICISED = {
    "hard-too-early",
    "no-rise",
    "peak-rate-not-reached",
    "jump-too-steep",
    "burst-too-near",
    "call-does-not-fit",
}
"""What is found fault with in anybody's plan, and so is never made here."""
CALM_SECONDS, LEAST_CALM_SECONDS = 6 * 60, 3 * 60
"""From the last hard stroke to the piece, the gap included: common practice of coaches, without a source; the
less where a body that is not warm through waits no longer than it must (3 min: Bailey 2009)."""
LEAST_GAP, IDEAL_GAP = 120, 300
"""At least 2 and ideally about 5 minutes before a maximal piece: common practice, without a source."""
WARM_THROUGH = 0.6
ROUNDING = Fraction(3, 40)
"""Seconds by which a split, asked for to the tenth, can be off over a last leg of up to 750 m."""


@dataclass(frozen=True)
class Outcome:
    """A session of the sweep as it came out."""

    case: Case
    session: Session
    timeline: Timeline
    warm_up: tuple[Segment, ...]
    reserve: float
    warmth_after_ideal_gap: float
    broken: tuple[str, ...]

    @property
    def hard_share(self) -> Fraction:
        """The part of the warm-up at full or race pressure."""
        return _hard_seconds(self.warm_up) / (60 * self.case.minutes)

    @property
    def peak(self) -> int:
        """The highest rate of the warm-up."""
        return max(segment.stretch.rate or 0 for segment in self.warm_up)


def outcome_of(case: Case) -> Outcome:
    """The session of a case, and the promises that it breaks."""
    session = session_of(case.request)
    timeline = compile_timeline(session.plan, case.request.rower)
    warm_up = tuple(segment for segment in timeline.segments if segment.part == PartKind.WARM_UP)
    readiness = readiness_of(timeline, case.request.athlete, case.level, case.room)
    reserve = readiness.at_start.reserve.middle if readiness else 0.0
    by_gap = {row.gap_seconds: row.state for row in readiness.by_gap} if readiness else {}
    warm = by_gap[IDEAL_GAP].warmth.middle if by_gap else 0.0
    outcome = Outcome(case, session, timeline, warm_up, reserve, warm, ())
    return replace(outcome, broken=tuple(_broken(outcome)))


def _broken(out: Outcome) -> Iterator[str]:
    case, session = out.case, out.session
    lasts = sum(segment.stretch.duration for segment in out.warm_up)
    if lasts != 60 * case.minutes:
        yield f"the warm-up lasts {lasts} s"
    if read(write(session.plan)) != session.plan:
        yield "its shorthand reads as another plan"
    if load_plan(dump_plan(session.plan)) != session.plan:
        yield "its document loads as another plan"
    if out.reserve < RESERVE_WANTED:
        yield f"{out.reserve:.3f} of the reserve at the start"
    yield from _strokes(out)
    yield from _findings(out)
    yield from _warm_up_rules(out)
    yield from _sum_of_the_piece(out)


def _strokes(out: Outcome) -> Iterator[str]:
    for segment in out.timeline.segments:
        stretch = segment.stretch
        if stretch.kind in ROWED and stretch.metres_asked is None:
            if stretch.strokes is None or stretch.strokes.rate != stretch.rate:
                yield f"no whole strokes at {segment.place}"
            if not stretch.focus:
                yield f"no focus at {segment.place}"


def _findings(out: Outcome) -> Iterator[str]:
    request = out.case.request
    for finding in appraise(out.timeline, request.athlete, out.case.level, out.case.room).findings:
        if finding.severity is Severity.WARNING or finding.code in CRITICISED:
            yield f"{finding.code} at {finding.place}: {finding.sentence}"


def _warm_up_rules(out: Outcome) -> Iterator[str]:
    level, expected = out.case.level, out.session.expected
    hard = expected.character is not Character.EASY
    if hard and not expected.rate <= out.peak <= expected.rate + max(LIFT[level], 2):
        yield f"its peak is r{out.peak} for a piece at r{expected.rate}"
    if out.hard_share > HARD_SHARE[expected.character]:
        yield f"{float(out.hard_share):.3f} of the warm-up is hard"
    for before, after in pairwise(out.warm_up):
        if before.stretch.rate and after.stretch.rate:
            if after.stretch.rate - before.stretch.rate > RATE_STEP[level]:
                yield f"the rate jumps from {before.stretch.rate} to {after.stretch.rate}"
            eases = _is_hard(before) and not _is_hard(after)
            if eases and (_pressure(after) is not Pressure.LIGHT or after.stretch.rate > HIGHEST_EASY_RATE):
                yield f"what follows the hard strokes is not easy at {after.place}"
    gap = sum(part.seconds for part in out.session.plan.parts if isinstance(part, Gap))
    last_hard = max((s.end for s in out.warm_up if _is_hard(s)), default=Fraction(0))
    if gap < LEAST_GAP and not isinstance(out.case.piece, SteadyRow | Technique):
        yield f"a gap of {gap} s"
    if LEAST_GAP <= gap < IDEAL_GAP and out.warmth_after_ideal_gap >= WARM_THROUGH:
        yield f"a gap of {gap} s, though {IDEAL_GAP} s would leave one warm"
    calm = CALM_SECONDS if gap >= IDEAL_GAP else LEAST_CALM_SECONDS
    if last_hard and 60 * out.case.minutes + gap - last_hard < calm:
        yield f"the last hard strokes end {60 * out.case.minutes + gap - last_hard} s before the piece"


def _sum_of_the_piece(out: Outcome) -> Iterator[str]:
    piece = out.case.piece
    if not isinstance(piece, TestPiece) or not out.case.results:
        return
    main = [segment.stretch for segment in out.timeline.segments if segment.part == PartKind.MAIN]
    seconds = sum((stretch.duration for stretch in main), Fraction(0))
    expected = out.session.expected.seconds
    told = any("together the legs miss it by" in reason for reason in out.session.reasons)
    if abs(seconds - expected) > (ROUNDING if told else 0):
        yield f"the piece lasts {float(seconds)} s, not {float(expected)} s"
    if piece.metres is not None and sum(stretch.metres_asked or 0 for stretch in main) != piece.metres:
        yield "the legs do not sum to the distance"


def _pressure(segment: Segment) -> Pressure | None:
    return segment.stretch.target.pressure if segment.stretch.target else None


def _is_hard(segment: Segment) -> bool:
    return _pressure(segment) in (Pressure.FULL, Pressure.RACE)


def _hard_seconds(segments: tuple[Segment, ...]) -> Fraction:
    return sum((s.stretch.duration for s in segments if _is_hard(s)), Fraction(0))
