"""Blocks that mends put into a plan: easy rowing, steps up to a rate, a burst, a whole warm-up."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, gcd

from planner.athlete import Level
from planner.checks.scene import Scene, list_of, share_of
from planner.demand import ASSUMED_RATE
from planner.findings import Edit, Op
from planner.limits import RATE, TWO_K_POWER
from planner.plan import Block, Effort, ForSeconds, ForStrokes, Gap, Part, PartKind, Pressure, Step, TwoKPower
from planner.start_line import HARD_SHARE
from planner.strokes import MINUTE

EASY_RATE = 18
CALM_RATE = 20
"""Strokes a minute at which light rowing is easy at any level."""
BURST_STROKES = 15
STEP_STROKES = 6
_NEAR_ENOUGH = 0.08
GENTLE = (Pressure.HALF, Pressure.LIGHT)
_PRESSURES = (Pressure.LIGHT, Pressure.HALF, Pressure.THREE_QUARTER, Pressure.FULL)

# The most that one step up may ask in a warm-up: strokes a minute, and share of 2 km power. Common practice
# [C]: beginners lose the stroke's length when the rate leaps; judgement by level.
RATE_STEP = {Level.NOVICE: 6, Level.CLUB: 8, Level.TRAINED: 10}
SHARE_STEP = {Level.NOVICE: 0.50, Level.CLUB: 0.55, Level.TRAINED: 0.60}


def whole_stroke_seconds(rate: int) -> int:
    """The least whole seconds that whole strokes fill at a rate: r24 has 5, r20 has 3, r23 has 60."""
    return MINUTE // gcd(MINUTE, rate)


def easy(seconds: float) -> Block:
    """Light rowing of at least so many seconds, rounded up to half minutes."""
    return Block(ForSeconds(max(1, ceil(seconds / 30)) * 30), EASY_RATE, Pressure.LIGHT)


def burst(rate: int, share: float, level: Level) -> Block:
    """A few strokes at a rate with the lightest pressure that asks for a share of 2 km power."""
    pressure = next((p for p in _PRESSURES if share_of(p, rate, level) >= share), Pressure.RACE)
    return Block(ForStrokes(BURST_STROKES), rate, pressure)


def unforced(block: Block, share: float, level: Level) -> Block:
    """A burst that is not hard itself where it stands in the main part: at the bare share if need be."""
    if asked_of(block, level) < HARD_SHARE:
        return block
    return replace(block, effort=TwoKPower(Fraction(ceil(100 * share), 100)))


def asked_of(block: Block, level: Level) -> float:
    """The share of 2 km power that a burst or a step asks for."""
    if isinstance(block.effort, Pressure):
        return share_of(block.effort, block.rate or EASY_RATE, level)
    return float(block.effort.fraction) if isinstance(block.effort, TwoKPower) else 0.0


def steps_up(start: tuple[int, float], end: tuple[int, float], level: Level) -> tuple[Block, ...]:
    """Blocks between two of (rate, share), so many that no step is too steep for the level; often none."""
    (low_rate, low), (high_rate, high) = start, end
    times = max(
        ceil((high_rate - low_rate) / RATE_STEP[level]), ceil((high - low) / (SHARE_STEP[level] - 0.1))
    )
    return tuple(
        _step(
            round(low_rate + (high_rate - low_rate) * number / times),
            low + (high - low) * number / times,
            level,
        )
        for number in range(1, times)
    )


def _step(rate: int, share: float, level: Level) -> Block:
    return Block(
        ForStrokes(STEP_STROKES), min(max(rate, int(RATE.low)), int(RATE.high)), _near(share, rate, level)
    )


def _near(share: float, rate: int, level: Level) -> Effort:
    """The pressure that comes near a share, else the share itself."""
    pressure = min(_PRESSURES, key=lambda p: abs(share_of(p, rate, level) - share))
    if abs(share_of(pressure, rate, level) - share) <= _NEAR_ENOUGH:
        return pressure
    within = min(max(Fraction(round(share * 100), 100), TWO_K_POWER.low), TWO_K_POWER.high)
    return TwoKPower(Fraction(within))


def short_warm_up(rate: int, share: float, level: Level) -> Part:
    """Ten to eleven minutes that rise to a rate and a share of 2 km power, and come down again."""
    rise = (
        Block(ForSeconds(240), EASY_RATE, Pressure.LIGHT),
        Block(ForSeconds(180), 20, Pressure.HALF),
        Block(ForSeconds(60), 24, Pressure.THREE_QUARTER),
    )
    top = burst(rate, share, level)
    ladder = steps_up((24, share_of(Pressure.THREE_QUARTER, 24, level)), (rate, share), level)
    return Part(PartKind.WARM_UP, (*rise, *ladder, top, easy(120)))


def softened(
    scene: Scene, place: str, most: float, pressures: Sequence[Pressure] = GENTLE
) -> tuple[Edit, ...]:
    """Edits that take a block to the first pressure that asks for no more than a share of 2 km power.

    Where none does, as at high rates, to the last one at a calm rate.
    """
    block = scene.block(place)
    rate = block.rate or ASSUMED_RATE
    pressure = next((p for p in pressures if share_of(p, rate, scene.level) <= most), pressures[-1])
    edits = [Edit(Op.ADD if block.effort is None else Op.REPLACE, f"{place}/effort", pressure)]
    if share_of(pressure, rate, scene.level) > most:
        edits.append(Edit(Op.REPLACE, f"{place}/rate", CALM_RATE))
    return tuple(edits)


def inserted(steps: Sequence[Step], place: str) -> tuple[Edit, ...]:
    """Edits that put steps in front of what stands at a place."""
    holder, index = list_of(place)
    return tuple(Edit(Op.ADD, f"{holder}/{index + k}", step) for k, step in enumerate(steps))


def added_to(part: Part, place: str, steps: Sequence[Step]) -> tuple[Edit, ...]:
    """Edits that put steps at the end of a part, whose place is a JSON pointer."""
    return inserted(steps, f"{place}/blocks/{len(part.blocks)}")


def with_gap(seconds: int, place: str) -> Edit:
    """An edit that puts a gap in front of the part at a place."""
    return Edit(Op.ADD, place, Gap(seconds))
