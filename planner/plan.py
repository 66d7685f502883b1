"""What a person writes: a plan of parts, made of blocks, some repeated. Structure only.

Every number keeps within `limits`; the borders (`schemas`, `notation`) see to it.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class ForSeconds:
    """A length on the clock."""

    seconds: int


@dataclass(frozen=True, slots=True)
class ForMetres:
    """A length in metres, ended by a tap or by estimate."""

    metres: int


@dataclass(frozen=True, slots=True)
class ForStrokes:
    """A length in strokes; its block has a rate."""

    strokes: int


@dataclass(frozen=True, slots=True)
class Open:
    """A length that only a tap ends."""


Length = ForSeconds | ForMetres | ForStrokes | Open


class Pressure(StrEnum):
    """How much work goes into one stroke, against the stroke of a 2 km race."""

    LIGHT = "light"
    HALF = "half"
    THREE_QUARTER = "three-quarter"
    FULL = "full"
    RACE = "race"


@dataclass(frozen=True, slots=True)
class Split:
    """A split asked for outright, in seconds per 500 m, to the tenth."""

    seconds: Fraction


@dataclass(frozen=True, slots=True)
class SplitOffset:
    """Seconds per 500 m added to the rower's predicted 2 km split, to the tenth; less is quicker."""

    seconds: Fraction


@dataclass(frozen=True, slots=True)
class Change:
    """Seconds per 500 m added to the split of the last rowed segment that has a target, to the tenth."""

    seconds: Fraction


@dataclass(frozen=True, slots=True)
class TwoKPower:
    """A share of the rower's 2 km power, to the hundredth: 0.65 is 65 %."""

    fraction: Fraction


@dataclass(frozen=True, slots=True)
class Cr10:
    """Perceived effort from 0 to 10 in halves, on the session version of the category-ratio scale."""

    value: Fraction


class HeartRateUnit(StrEnum):
    """What the number of a heart-rate effort means."""

    BPM = "bpm"
    PERCENT_MAX = "percent_max"
    PERCENT_RESERVE = "percent_reserve"


@dataclass(frozen=True, slots=True)
class HeartRate:
    """A heart rate in beats a minute, or in percent of the highest, or of the reserve."""

    unit: HeartRateUnit
    value: int


Effort = Pressure | Split | SplitOffset | Change | TwoKPower | Cr10 | HeartRate


@dataclass(frozen=True, slots=True)
class Setting:
    """How the machine is set: the lever's number or the drag factor, exactly one of them."""

    lever: int | None = None
    drag_factor: int | None = None


@dataclass(frozen=True, slots=True)
class Drill:
    """A technical exercise; with `sides` it is done so many times in turn, side after side.

    A sided drill lasts sides x side_seconds + (sides - 1) x swap_seconds; no beat runs while swapping.
    """

    name: str
    sides: int | None = None
    side_seconds: int | None = None
    swap_seconds: int | None = None

    @property
    def total_seconds(self) -> int | None:
        """How long the sides and swaps last together, or None for a drill without sides."""
        if self.sides is None or self.side_seconds is None:
            return None
        return self.sides * self.side_seconds + (self.sides - 1) * (self.swap_seconds or 0)


@dataclass(frozen=True, slots=True)
class Call:
    """What the coach says in a block: at a stroke counted from its start (the first is 1) or its end.

    At most one of `stroke` and `strokes_left` is set; with neither, the call opens the block.
    """

    text: str
    stroke: int | None = None
    strokes_left: int | None = None


@dataclass(frozen=True, slots=True)
class Block:
    """A stretch of rowing with one length, and perhaps a rate, an effort, a drill and a focus."""

    length: Length
    rate: int | None = None
    effort: Effort | None = None
    drill: Drill | None = None
    focus: str | None = None
    calls: tuple[Call, ...] = ()
    setting: Setting | None = None


@dataclass(frozen=True, slots=True)
class Rest:
    """Sitting still for some seconds."""

    seconds: int


@dataclass(frozen=True, slots=True)
class Repeat:
    """Blocks rowed several times; `between` comes between repetitions, not after the last."""

    times: int
    blocks: tuple[Step, ...]
    between: tuple[Step, ...] = ()


Step = Block | Rest | Repeat


class PartKind(StrEnum):
    """The parts of a session that are rowed."""

    WARM_UP = "warm-up"
    MAIN = "main"
    COOL_DOWN = "cool-down"


@dataclass(frozen=True, slots=True)
class Part:
    """A rowed part of a session."""

    kind: PartKind
    blocks: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class Gap:
    """The wait before the piece."""

    seconds: int


@dataclass(frozen=True, slots=True)
class Plan:
    """A whole session as a person writes it."""

    title: str
    parts: tuple[Part | Gap, ...]
    summary: str | None = None
    setup: str | None = None
    setting: Setting | None = None
