"""Long sitting: more than half an hour on the machine without standing up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import ceil

from planner.checks.building import inserted, whole_stroke_seconds
from planner.checks.ease import EASY_TOP
from planner.checks.maximal import maximal_bouts
from planner.checks.scene import Row, Scene, list_of, share_of, top_of
from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.limits import BLOCK_METRES, BLOCKS_IN_LIST
from planner.plan import Block, Call, ForMetres, ForSeconds, ForStrokes, Length, PartKind, Pressure, Rest
from planner.units import told_time

LONGEST_SITTING = 1800
"""Seconds: single machine sessions longer than 30 min have been linked to back pain (Teitz 2002, Am J Sports
Med 30:674-679 [M], unsure of strength)."""
STANDING = 45
"""Seconds of rest in which one can stand up and sit down again: judgement [C]."""
WAY_DOWN = 180
"""Seconds of easy rowing straight after harder work that may come before one stands up: whoever stops dead
may faint [C]."""
REST = Rest(60)
_WORTH_A_REST = 600
_REASON = (
    "Sessions of more than half an hour without a break have been linked to back pain: stand up for a minute."
)
_REASON_IN_ONE_PIECE = (
    "Sessions of more than half an hour without a break have been linked to back pain: this piece is rowed "
    "in one go, so stand up well before it and straight after."
)
NEARLY_FULL = 0.95
"""Of a full stroke: judgement [C]."""


def sitting_too_long(scene: Scene) -> Iterator[Finding]:
    """Where half an hour without standing up is passed: the first place of each such sitting."""
    sitting, told = 0.0, False
    seen: set[str] = set()
    for row in scene.rows:
        if not row.is_rowed and row.seconds >= STANDING:
            sitting, told = 0.0, False
            continue
        place = row.segment.place
        if row.is_rowed and not told and sitting + row.seconds > _longest(scene, row):
            told = True
            if place not in seen:
                seen.add(place)
                yield _finding(scene, row, sitting)
        sitting += row.seconds


def _longest(scene: Scene, row: Row) -> int:
    """The longest sitting that may end with a row."""
    return LONGEST_SITTING + (WAY_DOWN if _eases_off(scene, row) else 0)


def _eases_off(scene: Scene, row: Row) -> bool:
    """Whether it is easy rowing straight after rowing that was not."""
    before = scene.rows[row.segment.index - 1] if row.segment.index else None
    return before is not None and before.is_rowed and not _is_easy(before) and _is_easy(row)


def _is_easy(row: Row) -> bool:
    return row.share is not None and row.share <= EASY_TOP


def _finding(scene: Scene, row: Row, sitting: float) -> Finding:
    whole = _goes_on_in_one_piece(scene, row)
    return Finding(
        "sitting-too-long",
        Severity.ADVICE,
        row.segment.place,
        "This piece goes on past half an hour without standing up."
        if whole
        else f"By the end of {scene.named(row)} one has sat for {told_time(round(sitting + row.seconds))} "
        "without standing up.",
        _REASON_IN_ONE_PIECE if whole else _REASON,
        None if whole else _mend(scene, row, sitting),
    )


def _goes_on_in_one_piece(scene: Scene, row: Row) -> bool:
    """Whether a rest here would break a piece that is rowed flat out, or with full strokes all the way."""
    stretch = row.segment.stretch
    if row.segment.part != PartKind.MAIN or row.share is None:
        return False
    if stretch.rate and row.share >= NEARLY_FULL * share_of(Pressure.FULL, stretch.rate, scene.level):
        return True
    return any(row is other for bout in maximal_bouts(scene) if bout.is_unbroken for other in bout.rows)


def _mend(scene: Scene, row: Row, sitting: float) -> Mend | None:
    """A minute's rest: between repetitions, before the block, in it, or several of these."""
    place = row.segment.place
    top = top_of(place)
    if top != place:
        return _around_repetitions(scene, top)
    rest_before = sitting >= _WORTH_A_REST and not _eases_off(scene, row)
    if rest_before and row.seconds <= LONGEST_SITTING:
        return Mend("Stand up for a minute before it", inserted([REST], place))
    left = LONGEST_SITTING if rest_before else _longest(scene, row) - sitting
    pieces = _split(scene.block(place), row.seconds, left)
    if not pieces:
        return None
    edits = [Edit(Op.REPLACE, place, pieces[0])]
    holder, index = list_of(place)
    edits.extend(inserted([step for p in pieces[1:] for step in (REST, p)], f"{holder}/{index + 1}"))
    edits.extend(inserted([REST], place) if rest_before else ())
    return Mend(f"Stand up for a minute {'halfway' if len(pieces) == 2 else 'in between'}", tuple(edits))


def _around_repetitions(scene: Scene, place: str) -> Mend | None:
    """Rests between the repetitions, and before them where one has sat too long by the end of the first."""
    repeat = scene.repeat(place)
    rows = [row for row in scene.rows if row.segment.place.startswith(f"{place}/")]
    between = [row.seconds for row in rows if row.segment.place.startswith(f"{place}/between/")]
    once = (sum(row.seconds for row in rows) - sum(between)) / repeat.times
    round_ = once + (sum(between) / (repeat.times - 1) if between else 0)
    if round_ > LONGEST_SITTING or len(repeat.between) >= BLOCKS_IN_LIST:
        return None
    edits = [Edit(Op.REPLACE, place, replace(repeat, between=(REST, *repeat.between)))]
    if _sat_before(scene, rows[0]) + once > LONGEST_SITTING:
        edits.extend(inserted([REST], place))
    return Mend("Stand up for a minute between repetitions", tuple(edits))


def _sat_before(scene: Scene, first: Row) -> float:
    sat = 0.0
    for row in reversed(scene.rows[: first.segment.index]):
        if not row.is_rowed and row.seconds >= STANDING:
            break
        sat += row.seconds
    return sat


def _split(block: Block, seconds: float, longest: float) -> list[Block] | None:
    """The block in the fewest nearly equal pieces none of which lasts longer."""
    if block.drill and block.drill.sides:
        return None
    times = max(2, ceil(seconds / longest))
    while pieces := _pieces(block, times):
        if max(_size(piece) for piece in pieces) * seconds <= longest * _size(block):
            return pieces
        times += 1
    return None


def _size(block: Block) -> int:
    """How long it is in its own unit; pieces of a block have the same."""
    match block.length:
        case ForSeconds(size) | ForStrokes(size) | ForMetres(size):
            return size
        case _:
            return 1


def _pieces(block: Block, times: int) -> list[Block] | None:
    lengths = _lengths(block, times)
    if lengths is None:
        return None
    if block.rate is None or isinstance(block.length, ForMetres):
        calls = [block.calls, *[()] * (times - 1)]
    else:
        calls = _shared_out(block.calls, [_strokes(length, block.rate) for length in lengths])
    return [replace(block, length=length, calls=said) for length, said in zip(lengths, calls, strict=True)]


def _lengths(block: Block, times: int) -> list[Length] | None:
    match block.length:
        case ForSeconds(seconds) if seconds >= times:
            step = whole_stroke_seconds(block.rate) if block.rate else 1
            return [ForSeconds(part) for part in _parts(seconds, times, step)]
        case ForStrokes(strokes) if strokes >= times:
            return [ForStrokes(part) for part in _parts(strokes, times, 1)]
        case ForMetres(metres) if metres >= times * BLOCK_METRES.low:
            return [ForMetres(part) for part in _parts(metres, times, 1)]
        case _:
            return None


def _parts(whole: int, times: int, step: int) -> list[int]:
    """Nearly equal parts in steps, the last one taking what is over."""
    part = whole // times // step * step or whole // times
    return [*[part] * (times - 1), whole - part * (times - 1)]


def _strokes(length: Length, rate: int) -> int:
    return length.strokes if isinstance(length, ForStrokes) else round(_seconds(length) * rate / 60)


def _seconds(length: Length) -> int:
    return length.seconds if isinstance(length, ForSeconds) else 0


def _shared_out(calls: Sequence[Call], strokes: Sequence[int]) -> list[tuple[Call, ...]]:
    """Each call in the piece that its stroke falls in, counted from there."""
    shares: list[list[Call]] = [[] for _ in strokes]
    for call in calls:
        if call.strokes_left is not None:
            shares[-1].append(call)
            continue
        stroke, piece = call.stroke or 1, 0
        while piece < len(strokes) - 1 and stroke > strokes[piece]:
            stroke -= strokes[piece]
            piece += 1
        shares[piece].append(call if call.stroke is None else replace(call, stroke=stroke))
    return [tuple(share) for share in shares]
