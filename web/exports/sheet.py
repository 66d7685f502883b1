"""A plan laid out as a coach writes it, with an athlete's splits: for the print sheet and the calendar."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from planner.athlete import Athlete
from planner.plan import Block, Drill, Gap, Part, Pressure, Repeat, Rest, SplitOffset, Step, TwoKPower
from planner.prediction import TWO_K, tenths_of
from planner.stretches import Ends, Stretch
from planner.timeline import Timeline
from planner.totals import Totals
from planner.units import clock, round_half_up, split_clock
from web.exports.words import (
    PART_NAMES,
    effort_words,
    length_words,
    power_words,
    rest_words,
    setting_words,
    strokes_words,
)

OFF_THE_MACHINE = "Off the machine: stand, drink, set the machine"


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a part; `depth` is how many repeats it stands in.

    `split` is per 500 m. A `heading` says that what follows is repeated, and has nothing else. `notes` are
    drill, focus, machine.
    """

    depth: int
    length: str = ""
    rate: str = ""
    effort: str = ""
    split: str = ""
    strokes: str = ""
    heading: str = ""
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SheetPart:
    """A part with its sums in words."""

    name: str
    sums: str
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """The whole plan; `about` holds summary, set-up, setting and whose splits these are, where there are."""

    title: str
    sums: str
    about: tuple[tuple[str, str], ...]
    parts: tuple[SheetPart, ...]


def sheet_of(timeline: Timeline, athlete: Athlete | None = None) -> Sheet:
    """The sheet of a timeline, which was made for this athlete or for anybody."""
    plan = timeline.plan
    first: dict[str, Stretch] = {}
    for segment in timeline.segments:
        first.setdefault(segment.place, segment.stretch)
    about = (
        ("About", plan.summary),
        ("Set-up", plan.setup),
        ("Machine", setting_words(plan.setting)),
        ("Splits", _result_words(timeline, athlete) if athlete else ""),
    )
    parts = zip(plan.parts, timeline.parts, strict=True)
    return Sheet(
        title=plan.title,
        sums=sums_words(timeline.totals),
        about=tuple((name, text) for name, text in about if text),
        parts=tuple(_part(part, index, sums.totals, first) for index, (part, sums) in enumerate(parts)),
    )


def _result_words(timeline: Timeline, athlete: Athlete) -> str:
    """Where splits come from: "from 2000 m in 7:42.0", or "in about" where other results say so."""
    two_k = timeline.two_k
    if two_k is None or not any(
        _by_result(part.blocks) for part in timeline.plan.parts if isinstance(part, Part)
    ):
        return ""
    rowed = (result for result in athlete.results if result.metres == TWO_K.metres)
    for result in rowed:
        if tenths_of(float(result.split)) == two_k.split:
            return f"from 2000 m in {split_clock(result.seconds)}"
    return f"from 2000 m in about {split_clock(two_k.split * 4)}"


def _by_result(steps: tuple[Step, ...]) -> bool:
    """Whether some of it has a split that follows from a result."""
    return any(
        _by_result((*step.blocks, *step.between))
        if isinstance(step, Repeat)
        else isinstance(step, Block) and isinstance(step.effort, Pressure | SplitOffset | TwoKPower)
        for step in steps
    )


def sums_words(totals: Totals) -> str:
    """Time, strokes, distance: "about 42:10 · 910 strokes · 9.6 km"."""
    time = f"{'about ' if totals.estimated else ''}{clock(round_half_up(totals.seconds))}"
    strokes = strokes_words(totals.strokes) if totals.strokes else ""
    metres = f"{float(totals.metres) / 1000:.1f} km" if totals.metres is not None else ""
    return " · ".join(filter(None, (time, strokes, metres)))


def legend_of(sheet: Sheet) -> tuple[str, ...]:
    """What the sheet shows and does not say by itself, each in a sentence."""
    rows = [row for part in sheet.parts for row in part.rows]
    sums = [sheet.sums, *(part.sums for part in sheet.parts)]
    rate = next((row.rate for row in rows if row.rate), "")
    split = next((row.split for row in rows if row.split), "")
    guessed = [
        *(["splits"] if split else []),
        *(["distances"] if any(each.endswith(" km") for each in sums) else []),
        *(["times marked “about”"] if any(each.startswith("about ") for each in sums) else []),
    ]
    estimates = " and ".join(filter(None, (", ".join(guessed[:-1]), *guessed[-1:])))
    return tuple(
        filter(
            None,
            (
                f"{rate}: {rate[1:]} strokes a minute." if rate else "",
                f"{split}: the split, per 500 m." if split else "",
                f"{estimates.capitalize()} are estimates." if guessed else "",
            ),
        )
    )


def sheet_text(sheet: Sheet) -> str:
    """The sheet as plain text, one line a row, what stands below a row indented."""
    return "\n".join(_lines(sheet))


def _lines(sheet: Sheet) -> Iterator[str]:
    yield sheet.sums
    yield from (f"{name}: {text}" for name, text in sheet.about)
    for part in sheet.parts:
        yield ""
        yield f"{part.name}, {part.sums}"
        for row in part.rows:
            indent = "  " * row.depth
            split = f"{row.split} /500 m" if row.split else ""
            told = " ".join(filter(None, (row.length, row.rate, row.effort, split)))
            yield indent + (row.heading or told)
            yield from (f"{indent}  {note}" for note in row.notes)


def _part(part: Part | Gap, index: int, totals: Totals, first: dict[str, Stretch]) -> SheetPart:
    if isinstance(part, Gap):
        row = Row(0, effort=OFF_THE_MACHINE)
        return SheetPart(PART_NAMES["gap"], clock(part.seconds), (row,))
    rows = tuple(_rows(part.blocks, f"/parts/{index}/blocks", 0, first))
    return SheetPart(PART_NAMES[part.kind.value], sums_words(totals), rows)


def _rows(steps: tuple[Step, ...], place: str, depth: int, first: dict[str, Stretch]) -> Iterator[Row]:
    for index, step in enumerate(steps):
        here = f"{place}/{index}"
        match step:
            case Repeat(times, blocks, between):
                yield Row(depth, heading=f"{times} times")
                yield from _rows(blocks, f"{here}/blocks", depth + 1, first)
                if between and times > 1:
                    yield Row(depth, heading="and between them")
                    yield from _rows(between, f"{here}/between", depth + 1, first)
            case Rest(seconds):
                yield Row(depth, clock(seconds), effort=rest_words(seconds))
            case Block():
                yield _block(step, depth, first[here])


def _block(block: Block, depth: int, stretch: Stretch) -> Row:
    sides_last = block.drill.total_seconds if block.drill else None
    split = split_clock(stretch.target.split) if stretch.target and stretch.target.split else ""
    effort = _effort(block, stretch)
    return Row(
        depth=depth,
        length=length_words(stretch) if sides_last is None else clock(sides_last),
        rate=f"r{stretch.rate}" if stretch.rate else "",
        effort="" if effort == f"at {split}" else effort,
        split=split,
        strokes="" if sides_last is not None else _strokes(stretch),
        notes=tuple(_notes(block)),
    )


def _strokes(stretch: Stretch) -> str:
    """How many there are, where the length does not say it."""
    if stretch.strokes is None or stretch.ends is Ends.STROKES:
        return ""
    return strokes_words(stretch.strokes.count)


def _effort(block: Block, stretch: Stretch) -> str:
    """As it was written: a share of power stays one where its split is known."""
    if isinstance(block.effort, TwoKPower):
        return power_words(block.effort.fraction)
    return effort_words(stretch.target)


def _notes(block: Block) -> Iterator[str]:
    if block.drill:
        yield _drill(block.drill)
    if block.focus:
        yield block.focus
    if block.setting:
        yield f"Set {setting_words(block.setting)}"


def _drill(drill: Drill) -> str:
    if drill.sides is None:
        return drill.name
    swap = f", {drill.swap_seconds} s to swap" if drill.swap_seconds else ""
    return f"{drill.name}: {drill.sides} sides, {drill.side_seconds} s each{swap}"
