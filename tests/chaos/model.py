"""A reference model of the player: from the blocks of a timeline and what happened when, the place in it.

Written in exact fractions from the words of the design and of each kind of fact, not from the app's code.
Moments are seconds of the session, which begins at 0 and runs on through holds, sleep and closed pages.
Metre blocks in a row, whose ends are partly estimated, are not modelled.
"""

from __future__ import annotations

import copy
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby
from math import floor

from planner.timeline import Timeline

START_COUNT = Fraction(10)
"""Seconds to sit down and take the handle, where nobody has chosen otherwise; after a hold, half as long."""
HOLD_COUNT = Fraction(5)
BACK_AGAIN = 3
"""Back goes to the block before when pressed so many seconds into one."""
UNTAP = 10
"""Back takes a tap back when pressed so many seconds after it."""
MINUTE = Fraction(60)
MOST_ADDED = 600


@dataclass(frozen=True, slots=True)
class Block:
    """One segment of a timeline, as far as its place matters; `number` of `count` in its part or set."""

    part: str
    number: int
    count: int
    in_set: bool
    kind: str
    seconds: Fraction
    stroke: Fraction | None
    strokes: int | None
    ends: str
    known: bool
    waits: bool
    metres: int | None

    @property
    def rowed(self) -> bool:
        return self.kind in ("row", "drill")

    @property
    def by_tap(self) -> bool:
        """A tap can end it."""
        return self.kind == "gap" or self.ends in ("metres", "tap")


def blocks_of(timeline: Timeline) -> list[Block]:
    """The blocks of a timeline that the planner has compiled."""
    blocks = []
    for _, segments in groupby(timeline.segments, key=lambda segment: segment.part_index):
        part = list(segments)
        for number, segment in enumerate(part, 1):
            stretch = segment.stretch
            beat, turn = stretch.strokes, segment.repetition
            in_set = turn is not None and turn.times > 1
            blocks.append(
                Block(
                    part=segment.part,
                    number=turn.number if turn and in_set else number,
                    count=turn.times if turn and in_set else len(part),
                    in_set=in_set,
                    kind=str(stretch.kind),
                    seconds=stretch.duration,
                    stroke=beat.stroke if beat else None,
                    strokes=beat.count if beat else None,
                    ends=str(stretch.ends),
                    known=str(stretch.basis) != "assumed",
                    waits=segment.waits,
                    metres=stretch.metres_asked,
                )
            )
    return blocks


@dataclass(slots=True)
class Going:
    """A block is under way: its second 0 is at `zero`, and until `begins` it is counted in."""

    index: int
    zero: Fraction
    begins: Fraction

    def elapsed(self, now: Fraction) -> Fraction:
        """Seconds into the block; while it is counted in, where it will go on."""
        return max(Fraction(0), max(now, self.begins) - self.zero)


@dataclass(slots=True)
class Held:
    """Held so many seconds into a block."""

    index: int
    elapsed: Fraction


@dataclass(slots=True)
class Over:
    """The session is over, by itself or by a tap at its last block (`by_plan`), or by a command."""

    index: int
    by_plan: bool


@dataclass(slots=True)
class Tap:
    """The last thing that happened was a tap, and Back may take it back to this."""

    at: Fraction
    going: Going
    gone_through: Fraction
    ended: frozenset[int]
    through: int | None


class Session:
    """A session from its start at second 0; a method is one thing that happens, never before the last."""

    def __init__(self, blocks: list[Block]) -> None:
        self.blocks = list(blocks)
        self.planned = tuple(blocks)
        self.log = ["started"]
        self.last = Fraction(0)
        """The moment of the last entry of the log."""
        self.state: Going | Held | Over = self._entered(0, Fraction(0), START_COUNT)
        self.gone_through = Fraction(0)
        """Seconds of all blocks, without holds and count-ins, up to where the block under way was begun."""
        self.ended: frozenset[int] = frozenset()
        """The blocks that were gone through to their end."""
        self.through: int | None = None
        """The block that something was gone through of last."""
        self.tap: Tap | None = None

    # --- What happens

    def hold(self, at: Fraction) -> None:
        self._write("held", at)
        if isinstance(self.state, Going):
            self._leave_to(at)

    def go_on(self, at: Fraction) -> None:
        """From the catch of the stroke that was under way, after a count-in."""
        self._write("went-on", at)
        if isinstance(self.state, Held):
            self._resume(self.state, at, HOLD_COUNT)

    def skip(self, at: Fraction) -> None:
        """To the next block; a hold stays one, but in a gap."""
        self._write("skipped", at)
        self._next(at, by_tap=False)

    def back(self, at: Fraction) -> None:
        """To the start of the block, of the one before near its start, or from where a tap came."""
        self.to(max(at, self.last))
        tap = self.tap
        self._write("stepped-back", at)
        if isinstance(self.state, Over):
            return
        if isinstance(self.state, Going) and tap and at - tap.at <= UNTAP:
            self.state, self.gone_through, self.ended = tap.going, tap.gone_through, tap.ended
            self.through = tap.through
            return
        counting = self._counting(at)
        was_held = isinstance(self.state, Held)
        held = self._leave_to(at)
        index = max(0, held.index - 1) if held.elapsed < BACK_AGAIN else held.index
        if was_held:
            self.state = Held(index, Fraction(0))
        else:
            self.state = self._entered(index, at, counting)

    def done(self, at: Fraction, ago: int = 0) -> None:
        """A tap says that the block was over some seconds ago, or that the gap is."""
        before = self.last
        self._write("tapped", at)
        if isinstance(self.state, Over) or not self.blocks[self.state.index].by_tap:
            return
        if isinstance(self.state, Held):
            self._next(at, by_tap=True)
            return
        came_from = Tap(at, copy.copy(self.state), self.gone_through, self.ended, self.through)
        self._next(max(at - ago, before, self.state.zero), by_tap=True)
        if isinstance(self.state, Going):
            self.tap = came_from

    def extend(self, at: Fraction) -> None:
        """One more minute, in whole strokes where there is a beat, unless that were more than ten in all."""
        self.to(max(at, self.last))
        tap = self.tap
        self._write("extended", at)
        self.tap = tap
        if isinstance(self.state, Over) or not self.can_extend(at):
            return
        index = self.state.index
        block = self.blocks[index]
        length = self._lengthened(block, at)
        strokes = None if block.stroke is None else int(length / block.stroke)
        self.blocks[index] = replace(block, seconds=length, strokes=strokes)

    def can_extend(self, at: Fraction) -> bool:
        """Whether the block under way, or held, can have one more minute."""
        self.to(at)
        if isinstance(self.state, Over):
            return False
        block, planned = self.blocks[self.state.index], self.planned[self.state.index]
        if block.ends in ("metres", "tap"):
            return False
        from_here = self._elapsed(at) if block.kind == "gap" else Fraction(0)
        return self._lengthened(block, at) - max(planned.seconds, from_here) <= MOST_ADDED

    def returned(self, at: Fraction, since: Fraction, by_clock: bool, count_in: bool = True) -> None:
        """The answer after an absence since a moment: the clock has run on, or on from where we were then."""
        at = max(at, self.last)
        if by_clock:
            self._write("returned", at)
            return
        stopped = max(since, self.last)
        self.to(stopped)
        self.log.append("returned")
        self.tap, self.last = None, at
        if isinstance(self.state, Going):
            self._resume(self._leave_to(stopped), at, HOLD_COUNT if count_in else Fraction(0))

    def end(self, at: Fraction) -> None:
        self._write("ended", at)
        if not isinstance(self.state, Over):
            self.state = Over(self._leave_to(at).index, by_plan=False)

    # --- Where it is

    def to(self, now: Fraction) -> None:
        """Let time go by: blocks that do not wait go on by themselves."""
        while isinstance(self.state, Going) and not self.blocks[self.state.index].waits:
            end = self.state.zero + self.blocks[self.state.index].seconds
            if now < end:
                return
            self.tap = None
            index = self.state.index
            self._leave_to(end)
            self.ended |= {index}
            if index + 1 == len(self.blocks):
                self.state = Over(index, by_plan=True)
            else:
                self.state = Going(index + 1, zero=end, begins=end)

    def mark(self, now: Fraction) -> tuple[object, ...]:
        """What decides where a command leads: block, stroke, whether it has only just begun, a tap's age."""
        if isinstance(self.state, Over):
            return (Over, self.state.index)
        elapsed, stroke = self._elapsed(now), self.blocks[self.state.index].stroke
        counting = isinstance(self.state, Going) and now < self.state.begins
        number = None if stroke is None else floor(elapsed / stroke)
        fresh = self.tap is not None and now - self.tap.at <= UNTAP
        return (type(self.state), self.state.index, counting, number, elapsed < BACK_AGAIN, fresh)

    @property
    def whole(self) -> bool:
        """Every block that is rowed was gone through to its end."""
        return all(index in self.ended for index, block in enumerate(self.blocks) if block.rowed)

    def same_either_way(self, then: Fraction, now: Fraction) -> bool:
        """Whether an absence raises no question, since both answers to it lead to one place."""
        before, after = copy.deepcopy(self), copy.deepcopy(self)
        before.to(then)
        after.to(now)
        if not isinstance(before.state, Going):
            return True
        return self.blocks[before.state.index].kind == "gap" and before.state.index == after.state.index

    def _write(self, kind: str, at: Fraction) -> None:
        """At once: what is written counts from now on, and forgets a tap."""
        self.to(max(at, self.last))
        self.log.append(kind)
        self.last = max(at, self.last)
        self.tap = None

    def _entered(self, index: int, at: Fraction, count: Fraction) -> Going:
        count = count if self.blocks[index].rowed else Fraction(0)
        return Going(index, zero=at + count, begins=at + count)

    def _counting(self, at: Fraction) -> Fraction:
        """Seconds still to be counted in: who changes then has not taken up the handle yet."""
        return max(Fraction(0), self.state.begins - at) if isinstance(self.state, Going) else Fraction(0)

    def _elapsed(self, at: Fraction) -> Fraction:
        assert not isinstance(self.state, Over)
        return self.state.elapsed if isinstance(self.state, Held) else self.state.elapsed(at)

    def _leave_to(self, at: Fraction) -> Held:
        """The block under way, broken off; what was gone through of it counts."""
        assert not isinstance(self.state, Over)
        held = Held(self.state.index, self._elapsed(at))
        if isinstance(self.state, Going):
            through = held.elapsed - (self.state.begins - self.state.zero)
            if through > 0:
                self.gone_through += through
                self.through = held.index
            self.state = held
        return held

    def _resume(self, held: Held, at: Fraction, count: Fraction) -> None:
        block = self.blocks[held.index]
        caught = held.elapsed if block.stroke is None else block.stroke * floor(held.elapsed / block.stroke)
        going = self._entered(held.index, at, count)
        self.state = Going(held.index, zero=going.zero - caught, begins=going.begins)

    def _next(self, at: Fraction, by_tap: bool) -> None:
        if isinstance(self.state, Over):
            return
        counting, block = self._counting(at), self.blocks[self.state.index]
        was_held = isinstance(self.state, Held)
        index = self._leave_to(at).index
        if by_tap and (not was_held or self.through == index):
            self.ended |= {index}
        if index + 1 == len(self.blocks):
            self.state = Over(index, by_plan=by_tap)
        elif was_held and block.kind != "gap":
            self.state = Held(index + 1, Fraction(0))
        else:
            count = START_COUNT if block.kind == "gap" else Fraction(0)
            self.state = self._entered(index + 1, at, max(count, counting))

    def _lengthened(self, block: Block, at: Fraction) -> Fraction:
        if block.kind == "gap":
            return max(block.seconds, self._elapsed(at)) + MINUTE
        if block.stroke is None:
            return block.seconds + MINUTE
        return block.seconds + block.stroke * max(1, floor(MINUTE / block.stroke + Fraction(1, 2)))
