"""Compiles a plan to the flat segments that are rowed, each with its exact start."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby
from typing import NamedTuple

from planner.athlete import Athlete
from planner.calls import WORDS_A_MINUTE, calls_of, take_turns
from planner.errors import InputError
from planner.expansion import Placed, Repetition, check, expand
from planner.findings import Finding
from planner.intensity import rower_of
from planner.plan import Block, Change, Gap, Plan, Rest, Setting
from planner.prediction import TwoK
from planner.stretches import (
    ROWED,
    SPLIT_OUT_OF_RANGE,
    Basis,
    Before,
    Ends,
    Kind,
    Stretch,
    Terms,
    stretches_of,
)
from planner.strokes import Fit, Rhythm
from planner.totals import PartTotals, Totals, exact_starts, totals_of

GAP = "gap"


@dataclass(frozen=True, slots=True)
class Segment:
    """One stretch of the session at its exact start, in seconds from the session's beginning.

    A segment that `waits` does not go on by itself at its end. `setting` is the change to make to the
    machine before it. `estimated` says that its start or its length is not known exactly.
    """

    index: int
    part: str
    part_index: int
    place: str
    repetition: Repetition | None
    start: Fraction
    stretch: Stretch
    waits: bool
    estimated: bool
    setting: Setting | None

    @property
    def end(self) -> Fraction:
        """When it ends, in seconds from the session's beginning."""
        return self.start + self.stretch.duration


@dataclass(frozen=True, slots=True)
class Timeline:
    """What is rowed: the plan, its segments in order, their sums, and what was noticed on the way."""

    plan: Plan
    fit: Fit
    two_k: TwoK | None
    segments: tuple[Segment, ...]
    totals: Totals
    parts: tuple[PartTotals, ...]
    findings: tuple[Finding, ...]
    words_a_minute: int = WORDS_A_MINUTE


class _Laid(NamedTuple):
    """A stretch with its place in the plan, before its start is known."""

    part: str
    part_index: int
    place: str
    repetition: Repetition | None
    stretch: Stretch


def compile_timeline(
    plan: Plan,
    athlete: Athlete | None = None,
    fit: Fit = Fit.CLOCK,
    rhythm: Rhythm = Rhythm.MACHINE,
    words_a_minute: int = WORDS_A_MINUTE,
) -> Timeline:
    """The timeline of a plan, for one athlete or for anybody; calls are placed for a voice of that speed.

    Raises InputError when the plan would become too large; this is found before it is expanded.
    """
    if problems := check(plan):
        raise InputError(problems)
    rower = rower_of(athlete)
    laid = list(_lay(plan, Terms(rower, fit, rhythm, words_a_minute)))
    segments = tuple(_segments(laid, plan.setting))
    parts = tuple(_part_totals(segments))
    return Timeline(
        plan=plan,
        fit=fit,
        two_k=rower.two_k,
        segments=segments,
        totals=parts[0].totals if len(parts) == 1 else totals_of(s.stretch for s in segments),
        parts=parts,
        findings=_findings(laid),
        words_a_minute=words_a_minute,
    )


def _lay(plan: Plan, terms: Terms) -> Iterator[_Laid]:
    """Every stretch in order. A block that does not depend on what came before is worked out once."""
    before = Before()
    known: dict[tuple[int, int], tuple[Stretch, ...]] = {}
    for index, part in enumerate(plan.parts):
        here = f"/parts/{index}"
        if isinstance(part, Gap):
            yield _Laid(GAP, index, here, None, Stretch(Kind.GAP, Fraction(part.seconds)))
            continue
        for placed in expand(part.blocks, f"{here}/blocks"):
            for stretch in _stretches(placed, before, terms, known):
                yield _Laid(part.kind.value, index, placed.place, placed.repetition, stretch)
                if stretch.kind is Kind.ROW and stretch.target:
                    before = Before(True, stretch.target.split)


def _stretches(
    placed: Placed, before: Before, terms: Terms, known: dict[tuple[int, int], tuple[Stretch, ...]]
) -> tuple[Stretch, ...]:
    step, turn = placed.step, 0
    if isinstance(step, Block) and placed.repetition and take_turns(step.calls):
        step, turn = replace(step, calls=calls_of(step.calls, placed.repetition)), placed.repetition.number
    if isinstance(step, Block) and isinstance(step.effort, Change):
        return stretches_of(step, before, terms)
    here = id(placed.step), turn
    if here not in known:
        known[here] = (
            (Stretch(Kind.REST, Fraction(step.seconds)),)
            if isinstance(step, Rest)
            else stretches_of(step, before, terms)
        )
    return known[here]


def _segments(laid: list[_Laid], setting: Setting | None) -> Iterator[Segment]:
    estimated = False
    current = setting
    starts = exact_starts([item.stretch.duration for item in laid])
    for index, (item, start) in enumerate(zip(laid, starts, strict=True)):
        stretch = item.stretch
        following = laid[index + 1] if index + 1 < len(laid) else None
        estimated = estimated or stretch.basis is not Basis.CLOCK
        wanted = stretch.setting or setting or current if stretch.kind in ROWED else current
        yield Segment(
            index=index,
            part=item.part,
            part_index=item.part_index,
            place=item.place,
            repetition=item.repetition,
            start=start,
            stretch=stretch,
            waits=_waits(item, following),
            estimated=estimated,
            setting=wanted if wanted != current else None,
        )
        current = wanted


def _waits(item: _Laid, following: _Laid | None) -> bool:
    """Metre blocks inside a run of them go on by estimate; the last one waits, and so does a guess."""
    stretch = item.stretch
    if stretch.kind is Kind.GAP:
        return following is not None
    if stretch.ends is Ends.METRES and stretch.basis is Basis.SPLIT:
        return (
            following is None
            or following.part_index != item.part_index
            or following.stretch.ends is not Ends.METRES
        )
    return stretch.basis is Basis.ASSUMED


def _part_totals(segments: tuple[Segment, ...]) -> Iterator[PartTotals]:
    for index, group in groupby(segments, key=lambda segment: segment.part_index):
        members = tuple(group)
        yield PartTotals(members[0].part, index, totals_of(m.stretch for m in members))


def _findings(laid: list[_Laid]) -> tuple[Finding, ...]:
    """Each remark once for each place, however often it is rowed; of splits out of range one in all."""
    found: dict[tuple[str, str, str], Finding] = {}
    for item in laid:
        for r in item.stretch.remarks:
            finding = Finding(r.code, r.severity, item.place, r.sentence, r.reason)
            place = "" if r.code == SPLIT_OUT_OF_RANGE else item.place
            found.setdefault((r.code, place, r.sentence), finding)
    return tuple(found.values())
