"""The main part of a session in which nothing is hard: steady rowing, or technique."""

from __future__ import annotations

from collections.abc import Iterator

from planner.athlete import Level, Room
from planner.coaching import Purpose, Stage
from planner.drills import KnownDrill, drills_for
from planner.pieces import SteadyRow, Technique
from planner.plan import Block, Drill, ForSeconds, ForStrokes, Pressure, Rest
from planner.strokes import MINUTE
from planner.warm_up.whole_strokes import shared_out

STAND_SECONDS = 60
SITTING_SECONDS = {Room.COLD: 1200, Room.NORMAL: 1200, Room.HOT: 900}
"""The most of steady rowing before one stands up; sessions over 30 min are linked to back pain (Teitz 2002,
Am J Sports Med 30:674-679 [M, unsure of strength])."""
BLOCK_SECONDS = 600

# Two ways to row easily that take turns, as rate and pressure: judgement [C].
STEADY: dict[Level, tuple[tuple[int, Pressure], ...]] = {
    Level.NOVICE: ((18, Pressure.HALF), (20, Pressure.HALF)),
    Level.CLUB: ((18, Pressure.THREE_QUARTER), (20, Pressure.HALF)),
    Level.TRAINED: ((18, Pressure.THREE_QUARTER), (20, Pressure.THREE_QUARTER)),
}

DRILL_SECONDS = 60
SIDE_SECONDS, SWAP_SECONDS = 20, 20
"""Fifteen to twenty seconds a side [C]; both sides and the swap, in which the other foot is strapped in or
the hand changes, make up the minute of a drill."""
STRAPS_SECONDS = 30
"""To undo the straps before a drill, and to do them up again after it [C]."""
_ROUND_SECONDS = 210
_TECHNIQUE_SITTING_SECONDS = 1200


def steady_stages(row: SteadyRow, level: Level, room: Room) -> Iterator[Stage]:
    """Steady rowing of exactly the seconds asked for, in stretches with a minute to stand up between them.

    Those minutes come on top. No stretch is longer than SITTING_SECONDS for the room.
    """
    stretches = -(-row.seconds // SITTING_SECONDS[room])
    turn = 0
    for number, stretch in enumerate(shared_out(row.seconds, [1] * stretches)):
        if number:
            yield Stage(Rest(STAND_SECONDS), Purpose.STEADY)
        for length in shared_out(stretch, [1] * -(-stretch // BLOCK_SECONDS)):
            rate, pressure = STEADY[level][turn % 2]
            held = Pressure.HALF if room is Room.HOT else pressure
            yield Stage(Block(ForSeconds(length), rate, held), Purpose.STEADY)
            turn += 1


def steady_reason(row: SteadyRow, level: Level, room: Room) -> str:
    """Why the row is as it is."""
    blocks = [stage.step for stage in steady_stages(row, level, room) if isinstance(stage.step, Block)]
    if len({block.effort for block in blocks}) > 1:
        return "Rate and push take turns a little, so that a long easy row stays easy and awake."
    if len({block.rate for block in blocks}) > 1:
        return "The rate goes up and down a little at one push, so that a long easy row stays easy and awake."
    return "One rate and one push, at which you can talk all the way."


def technique_stages(practice: Technique, level: Level) -> Iterator[Stage]:
    """Drills spread over the library, in its order, each put into whole strokes after it.

    Rests to undo straps and, about every twenty minutes, to stand up are part of the seconds asked for.
    """
    drills = _drills(practice, level)
    stands = (practice.seconds - 1) // _TECHNIQUE_SITTING_SECONDS
    drilling = sum(_drill_seconds(drill) for drill in drills)
    rowing = practice.seconds - drilling - STAND_SECONDS * stands
    stand_before = {round(len(drills) * n / (stands + 1)) for n in range(1, stands + 1)}
    for index, (drill, length) in enumerate(zip(drills, shared_out(rowing, [1] * len(drills)), strict=True)):
        if index in stand_before:
            yield Stage(Rest(STAND_SECONDS), Purpose.EXERCISE)
        yield from _drill(drill)
        pressure = Pressure.HALF if index % 2 else Pressure.LIGHT
        yield Stage(Block(ForSeconds(length), 20, pressure), Purpose.EXERCISE, opens=False)


def technique_reason(practice: Technique, level: Level) -> str:
    """Why the practice is as it is."""
    why = "Each drill takes one part out and puts it back into whole strokes straight away."
    straps = any(drill.straps for drill in _drills(practice, level))
    return f"{why} Half a minute before and after those with a foot out is for the straps." if straps else why


def _drills(practice: Technique, level: Level) -> tuple[KnownDrill, ...]:
    return _spread(drills_for(level), max(1, practice.seconds // _ROUND_SECONDS))


def _spread(drills: tuple[KnownDrill, ...], count: int) -> tuple[KnownDrill, ...]:
    """So many of them, spread over the whole list and in its order."""
    kept = min(count, len(drills))
    return tuple(drills[index * len(drills) // kept] for index in range(kept))


def _drill_seconds(drill: KnownDrill) -> int:
    """How long a drill takes with the time at the straps, in whole half minutes: ten strokes at r20 each."""
    rowed = drill.strokes * MINUTE // drill.first_rate if drill.strokes else DRILL_SECONDS
    return rowed + (2 * STRAPS_SECONDS if drill.straps else 0)


def _drill(drill: KnownDrill) -> Iterator[Stage]:
    length = ForStrokes(drill.strokes) if drill.strokes else ForSeconds(DRILL_SECONDS)
    sided = Drill(drill.name, drill.sides.count, SIDE_SECONDS, SWAP_SECONDS) if drill.sides else None
    block = Block(length, drill.first_rate, Pressure.LIGHT, sided or Drill(drill.name))
    rest = [Stage(Rest(STRAPS_SECONDS), Purpose.EXERCISE)] if drill.straps else []
    yield from (*rest, Stage(block, Purpose.EXERCISE), *rest)
