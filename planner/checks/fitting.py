"""Mends for what the compiler notes itself: strokes that do not fill a length, calls that cannot be said."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from math import gcd

from planner.calls import Misfit, PlacedCall, calls_of, place_calls, spoken_seconds, take_turns
from planner.checks.scene import Scene
from planner.findings import Edit, Finding, Mend, Op
from planner.limits import BLOCK_SECONDS, SIDE_SECONDS
from planner.plan import Block, Call, Drill, ForSeconds
from planner.stretches import Basis, Stretch, misfit_remark
from planner.strokes import MINUTE, Strokes
from planner.timeline import Segment
from planner.units import told_time

PACED_RATE = "paced-rate"
CALL_DOES_NOT_FIT = "call-does-not-fit"


def mended(scene: Scene) -> Iterator[Finding]:
    """The compiler's findings, each with its mend where there is one."""
    for finding in scene.timeline.findings:
        at = scene.at(finding.place)
        if finding.code == PACED_RATE:
            yield replace(finding, mend=_whole_strokes(at[0], scene.block(finding.place)))
        elif finding.code == CALL_DOES_NOT_FIT:
            yield replace(finding, mend=_call_mend(scene, finding, at))
        else:
            yield finding


def _whole_strokes(segment: Segment, block: Block) -> Mend | None:
    """The nearest length that whole strokes fill at exactly the rate; in strokes if not in whole seconds."""
    strokes = segment.stretch.strokes
    if strokes is None or block.rate is None or not isinstance(block.length, ForSeconds):
        return None
    if block.drill and block.drill.sides:
        return _whole_strokes_a_side(segment.place, block.drill, block.rate)
    length = Fraction(strokes.count * MINUTE, block.rate)
    here = f"{segment.place}/for"
    if length.denominator == 1 and BLOCK_SECONDS.complaint(length) is None:
        return Mend(f"Make it {told_time(length)}", (Edit(Op.REPLACE, f"{here}/seconds", int(length)),))
    word = "stroke" if strokes.count == 1 else "strokes"
    edits = (Edit(Op.REMOVE, f"{here}/seconds"), Edit(Op.ADD, f"{here}/strokes", strokes.count))
    return Mend(f"Count {strokes.count} {word} instead", edits)


def _whole_strokes_a_side(place: str, drill: Drill, rate: int) -> Mend | None:
    """Sides are written in seconds only, so the nearest whole seconds that whole strokes fill."""
    step = MINUTE // gcd(MINUTE, rate)
    asked = drill.side_seconds or step
    seconds = max(1, (2 * asked + step) // (2 * step)) * step
    if SIDE_SECONDS.complaint(seconds):
        return None
    total = replace(drill, side_seconds=seconds).total_seconds
    return Mend(
        f"Make each side {seconds} s",
        (
            Edit(Op.REPLACE, f"{place}/drill/side_seconds", seconds),
            Edit(Op.REPLACE, f"{place}/for/seconds", total),
        ),
    )


def _call_mend(scene: Scene, finding: Finding, segments: tuple[Segment, ...]) -> Mend | None:
    """The call put where it can be said whole, on the stroke nearest to its own; else the call left out."""
    block = scene.block(finding.place)
    for segment in segments:
        misfits = _misfits(segment, block, scene.timeline.words_a_minute)
        same = {m.call for m in misfits if misfit_remark(m).sentence == finding.sentence}
        if same:
            places = [index for index, call in enumerate(block.calls) if call in same]
            return _moved_or_dropped(scene, segment, block, places)
    return None


def _misfits(segment: Segment, block: Block, words_a_minute: int) -> tuple[Misfit, ...]:
    stretch = segment.stretch
    known = stretch.basis is not Basis.ASSUMED
    _, misfits = place_calls(
        _calls_on(stretch, calls_of(block.calls, segment.repetition)),
        stretch.strokes,
        stretch.duration,
        length_known=known,
        words_a_minute=words_a_minute,
    )
    return misfits


def _calls_on(stretch: Stretch, calls: tuple[Call, ...]) -> tuple[Call, ...]:
    """Those that belong to this stretch of a block: a sided drill shares them out."""
    turn = stretch.drill
    if turn is None or turn.side is None:
        return calls
    if turn.side == 1:
        return tuple(call for call in calls if call.strokes_left is None)
    return tuple(call for call in calls if call.strokes_left is not None and turn.side == turn.sides)


def _moved_or_dropped(scene: Scene, segment: Segment, block: Block, indexes: Sequence[int]) -> Mend:
    """For the calls at these indexes, of which the same is said: the first moved, any others left out."""
    stretch, calls = segment.stretch, f"{segment.place}/calls"
    call, here = block.calls[indexes[0]], f"{calls}/{indexes[0]}"
    again = tuple(Edit(Op.REMOVE, f"{calls}/{index}") for index in reversed(indexes[1:]))
    in_turn = segment.repetition is not None and take_turns(block.calls)
    stroke = None if in_turn else _nearest_free_stroke(call, stretch, scene.timeline.words_a_minute)
    if stroke is None or stretch.strokes is None:
        return Mend("Leave the call out", (*again, Edit(Op.REMOVE, here)))
    if call.strokes_left is not None:
        left = stretch.strokes.count - stroke + 1
        edit = Edit(Op.REPLACE, f"{here}/strokes_left", left)
        return Mend(f"Say it {left} strokes from the end", (*again, edit))
    edit = Edit(Op.ADD if call.stroke is None else Op.REPLACE, f"{here}/stroke", stroke)
    return Mend(f"Say it at stroke {stroke}", (*again, edit))


def _nearest_free_stroke(call: Call, stretch: Stretch, words_a_minute: int) -> int | None:
    """A stroke at which the call can be said whole, clear of the calls that are in place."""
    strokes = stretch.strokes
    if strokes is None or (call.strokes_left is not None and stretch.basis is Basis.ASSUMED):
        return None
    seconds = spoken_seconds(call.text, words_a_minute)
    wanted = strokes.count - call.strokes_left + 1 if call.strokes_left is not None else call.stroke or 1
    asked = min(max(wanted, 1), strokes.count)
    candidates = {1, asked, _last_before(strokes, stretch.duration - seconds)}
    for placed in stretch.calls:
        candidates.add(_last_before(strokes, placed.at - seconds))
        candidates.add(_first_after(strokes, placed.at + placed.seconds))
    free = [n for n in candidates if _fits(strokes, n, seconds, stretch.calls)]
    return min(free, key=lambda n: (abs(n - asked), n), default=None)


def _last_before(strokes: Strokes, moment: Fraction) -> int:
    return moment // strokes.stroke + 1


def _first_after(strokes: Strokes, moment: Fraction) -> int:
    return -(-moment // strokes.stroke) + 1


def _fits(strokes: Strokes, number: int, seconds: Fraction, placed: tuple[PlacedCall, ...]) -> bool:
    if not 1 <= number <= strokes.count:
        return False
    begin = strokes.catch(number)
    end = begin + seconds
    return end <= strokes.duration and all(
        end <= other.at or begin >= other.at + other.seconds for other in placed
    )
