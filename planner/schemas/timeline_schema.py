"""The timeline as JSON: exact times as pairs of whole numbers, beside plain numbers for people.

Its fields are described in `timeline_shape`; a test holds the two together. Watts, metres and kilojoules are
rounded to the tenth, a tie going up; splits of targets are in tenths already.
"""

from __future__ import annotations

from fractions import Fraction

from planner.calls import WORDS_A_MINUTE, PlacedCall
from planner.intensity import Target
from planner.pace import power_of_split
from planner.prediction import TwoK
from planner.schemas.block_schema import dump_setting, given
from planner.schemas.fields import number
from planner.schemas.finding_schema import dump_finding
from planner.schemas.plan_schema import dump_plan
from planner.stretches import Stretch
from planner.timeline import Segment, Timeline
from planner.totals import PartTotals, Totals
from planner.units import to_tenths


def dump_timeline(timeline: Timeline) -> dict[str, object]:
    """A timeline as JSON."""
    known: dict[int, dict[str, object]] = {}
    return given(
        plan=dump_plan(timeline.plan),
        fit=timeline.fit.value,
        words_a_minute=timeline.words_a_minute if timeline.words_a_minute != WORDS_A_MINUTE else None,
        athlete=_dump_two_k(timeline.two_k) if timeline.two_k else None,
        segments=[_dump_segment(segment, known) for segment in timeline.segments],
        totals={**_dump_totals(timeline.totals), "parts": [_dump_part(part) for part in timeline.parts]},
        findings=[dump_finding(finding) for finding in timeline.findings],
    )


def _dump_two_k(two_k: TwoK) -> dict[str, object]:
    return {
        "two_k_split_s": number(two_k.split),
        "two_k_split_low_s": number(two_k.low),
        "two_k_split_high_s": number(two_k.high),
        "two_k_watts": tenth(power_of_split(two_k.split)),
    }


def _dump_segment(segment: Segment, known: dict[int, dict[str, object]]) -> dict[str, object]:
    """A stretch that is rowed several times is written out once, for every segment of it."""
    stretch = segment.stretch
    if id(stretch) not in known:
        known[id(stretch)] = _dump_stretch(stretch)
    fields: dict[str, object] = {
        "index": segment.index,
        "part": segment.part,
        "part_index": segment.part_index,
        "place": segment.place,
        "start": pair(segment.start),
        "start_s": float(segment.start),
        **known[id(stretch)],
        "waits": segment.waits,
        "estimated": segment.estimated,
    }
    if segment.repetition:
        fields["repetition"] = {"number": segment.repetition.number, "times": segment.repetition.times}
    if segment.setting:
        fields["setting"] = dump_setting(segment.setting)
    return fields


def _dump_stretch(stretch: Stretch) -> dict[str, object]:
    strokes, mark, turn = stretch.strokes, stretch.clock_mark, stretch.drill
    return given(
        kind=stretch.kind.value,
        duration=pair(stretch.duration),
        duration_s=float(stretch.duration),
        rate=stretch.rate,
        paced_rate=float(strokes.rate) if strokes else None,
        strokes=strokes.count if strokes else None,
        stroke=pair(strokes.stroke) if strokes else None,
        stroke_s=float(strokes.stroke) if strokes else None,
        drive_s=float(stretch.drive) if stretch.drive is not None else None,
        clock_mark={"strokes": mark.strokes, "seconds": mark.seconds} if mark else None,
        target=_dump_target(stretch.target) if stretch.target else None,
        metres=tenth(stretch.metres),
        metres_asked=stretch.metres_asked,
        focus=stretch.focus,
        drill=given(name=turn.name, side=turn.side, sides=turn.sides, swap=turn.swap or None)
        if turn
        else None,
        calls=[_dump_call(call) for call in stretch.calls],
        ends=stretch.ends.value,
        basis=stretch.basis.value,
    )


def _dump_target(target: Target) -> dict[str, object]:
    rate = target.heart_rate
    return given(
        pressure=target.pressure.value if target.pressure else None,
        split_s=_plain(target.split),
        watts=tenth(target.watts),
        two_k_power_fraction=_plain(target.two_k_power_fraction),
        split_offset_s=_plain(target.split_offset),
        change_s=_plain(target.change),
        cr10=_plain(target.cr10),
        talk=target.talk,
        heart_rate=given(bpm=rate.bpm, percent_max=rate.percent_max, percent_reserve=rate.percent_reserve)
        if rate
        else None,
    )


def _dump_call(call: PlacedCall) -> dict[str, object]:
    return given(
        stroke=call.stroke,
        at_s=float(call.at),
        text=call.text,
        seconds=float(call.seconds),
        rank=call.rank,
    )


def _dump_totals(totals: Totals) -> dict[str, object]:
    return given(
        seconds=pair(totals.seconds),
        seconds_s=float(totals.seconds),
        strokes=totals.strokes,
        metres=tenth(totals.metres),
        work_kj=tenth(totals.work_joules / 1000) if totals.work_joules is not None else None,
        split_s=tenth(totals.split),
        watts=tenth(totals.watts),
        estimated=totals.estimated,
    )


def _dump_part(part: PartTotals) -> dict[str, object]:
    return {"part": part.part, "part_index": part.part_index, **_dump_totals(part.totals)}


def pair(seconds: Fraction) -> list[int]:
    """An exact time as its numerator and denominator, in lowest terms."""
    return [seconds.numerator, seconds.denominator]


def tenth(value: Fraction | None) -> int | float | None:
    """A value for people, to the tenth."""
    return None if value is None else number(to_tenths(value))


def _plain(value: Fraction | None) -> int | float | None:
    return None if value is None else number(value)
