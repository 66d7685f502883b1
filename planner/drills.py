"""The coach's drills: what each mends, how it is done, for whom, at what rate, and what to beware of.

Names are those that coaches use, words are our own. All of it is common practice [C], without a source.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from planner.athlete import Level


class Phase(StrEnum):
    """The part of the stroke that something belongs to; `whole` is all of it."""

    CATCH = "catch"
    DRIVE = "drive"
    FINISH = "finish"
    RECOVERY = "recovery"
    WHOLE = "whole"


@dataclass(frozen=True, slots=True)
class Sides:
    """A drill done on one side after the other: how many sides, and seconds on each, least and most."""

    count: int
    least_seconds: int
    most_seconds: int


LEFT_AND_RIGHT = Sides(2, 15, 20)
"""Fifteen to twenty seconds a side [C]."""


LOW_RATE, USUAL_RATE = 18, 20
LOW_UP_TO = 22
"""A drill that is not to go above this rate has a stop, a balance or a slow slide in it [C]."""


@dataclass(frozen=True, slots=True)
class KnownDrill:
    """A drill of the library; `rates` are least and most strokes a minute, `level` the first it suits.

    `strokes` is how many make it up, where its words count them. With `straps` a foot leaves them, which
    takes time before and after.
    """

    name: str
    phase: Phase
    mends: str
    how: str
    caution: str
    rates: tuple[int, int]
    level: Level = Level.NOVICE
    sides: Sides | None = None
    other_names: tuple[str, ...] = ()
    strokes: int | None = None
    straps: bool = False

    @property
    def first_rate(self) -> int:
        """The rate to begin at: a low one where it has to stay low [C]."""
        return LOW_RATE if self.rates[1] <= LOW_UP_TO else USUAL_RATE


DRILLS = (
    KnownDrill(
        "arms only",
        Phase.FINISH,
        "A handle that wanders up and down, hands that rest at the body.",
        "Sit at the finish, legs flat, back still. Draw the handle to the lower ribs and send it out again.",
        "Keep the knees soft instead of locking them.",
        (16, 26),
        other_names=("arms", "arms only, legs straight"),
    ),
    KnownDrill(
        "arms and swing",
        Phase.RECOVERY,
        "Reaching with a round back, a body that stays behind the hands.",
        "Legs stay flat. Hands go out, the body follows from the hips; it opens again before the arms draw.",
        "Where the hamstrings pull, swing less far: do not round the back for it.",
        (16, 26),
        other_names=("arms and body", "arms and back"),
    ),
    KnownDrill(
        "quarter slide",
        Phase.DRIVE,
        "Legs and swing that come apart near the finish.",
        "Hands, swing, then let the seat roll a quarter of the way, and press it back with the legs.",
        "Stay light: so short a push tempts you to tug with the back.",
        (18, 28),
        other_names=("1/4 slide",),
    ),
    KnownDrill(
        "half slide",
        Phase.RECOVERY,
        "Knees that rise before the hands are past them.",
        "Roll only until the shins are half way up, hands well past the knees, and push from there.",
        "Do not make up for the missing length with a harder pull.",
        (18, 28),
        other_names=("1/2 slide",),
    ),
    KnownDrill(
        "pick drill",
        Phase.WHOLE,
        "A muddled order of legs, swing and arms.",
        "Ten strokes each of arms only, arms and swing, half slide, full slide, without a stop between.",
        "Light all through: short strokes done hard end in the lower back.",
        (16, 24),
        other_names=("arms, swing, half, full", "arms, swing, half slide, full slide"),
        strokes=40,
    ),
    KnownDrill(
        "legs only",
        Phase.DRIVE,
        "Opening the back or bending the arms before the legs have pushed.",
        "From the catch press the legs flat, arms long, body still tipped forward; roll in again like that.",
        "Light only: tipped forward, a hard push falls on the lower back.",
        (16, 24),
        other_names=("legs", "legs only, arms long"),
    ),
    KnownDrill(
        "legs and swing",
        Phase.DRIVE,
        "Arms that pull while the legs and back still have work to do.",
        "Push the legs flat, then swing the back open, arms long as ropes; go forward again without drawing.",
        "Stop the swing a little behind upright: there are no arms to catch you.",
        (16, 24),
        other_names=("legs and back", "legs and swing, arms long"),
    ),
    KnownDrill(
        "reverse pick drill",
        Phase.DRIVE,
        "A drive that begins with the shoulders.",
        "Ten strokes each of legs only, legs and swing, and the whole drive, each growing out of the last.",
        "Light in the first two parts, where the back holds what the arms do not.",
        (16, 24),
        Level.CLUB,
        other_names=("legs, swing, arms",),
        strokes=30,
    ),
    KnownDrill(
        "pause at the finish",
        Phase.FINISH,
        "Slumping or falling back at the end of the stroke.",
        "Stop for a breath with the handle at the ribs, tall on the hips, then let the hands go first.",
        "Hold yourself up from the middle, not by clinging to the straps; keep breathing.",
        (14, 20),
        other_names=("finish pause",),
    ),
    KnownDrill(
        "pause at hands away",
        Phase.RECOVERY,
        "Hands, body and knees leaving the finish all at once.",
        "Stop when the arms are long and the body has not yet moved. Then tip forward, and only then roll.",
        "Keep breathing in the stop, and keep the knees soft.",
        (14, 20),
        other_names=("pause with arms away", "pause with hands away", "hands away pause"),
    ),
    KnownDrill(
        "pause at body over",
        Phase.RECOVERY,
        "Reaching for length at the last moment, in front of the catch.",
        "Stop with arms long, body tipped from the hips and legs flat. From there only the knees move.",
        "Tip only as far as a flat back allows.",
        (14, 20),
        other_names=("pause with the body over", "pause at bodies over", "body over pause"),
    ),
    KnownDrill(
        "pause at half slide",
        Phase.RECOVERY,
        "Rushing up the slide, a seat that cannot be stopped.",
        "Stop the seat half way, hands past the knees, shoulders still. Then roll on at the same speed.",
        "Hold the seat with the feet, not by leaning back.",
        (14, 20),
        other_names=("half slide pause", "pause at 1/2 slide"),
    ),
    KnownDrill(
        "pause at the catch",
        Phase.CATCH,
        "Diving at the catch, shoulders that lift before the push.",
        "Stop at full reach, shins upright, weight on the balls of the feet; then push, and nothing else.",
        "Not with sore knees or hips: stop a hand's width earlier.",
        (14, 18),
        Level.CLUB,
        other_names=("catch pause", "pause at full reach"),
    ),
    KnownDrill(
        "front quarter",
        Phase.CATCH,
        "A slow take-up at the catch, and a seat that shoots off before the handle.",
        "From full reach push only the first quarter of the slide, arms long, body still; roll in again.",
        "Small and light. Deep knee bends in a row tire the knees: a minute at most.",
        (20, 30),
        Level.CLUB,
        other_names=("first quarter of the drive", "short strokes at the front", "top quarter"),
    ),
    KnownDrill(
        "feet out",
        Phase.FINISH,
        "Leaning too far back, and pulling oneself up again by the straps.",
        "Row without straps. Finish the swing before the toes lift, and send the hands away at once.",
        "Light pressure, low rate: swing back too far and you tip off the seat.",
        (16, 22),
        other_names=("feet out of the straps", "straps off", "no straps"),
        straps=True,
    ),
    KnownDrill(
        "single foot",
        Phase.DRIVE,
        "Pushing askew, one leg doing more than the other.",
        "One foot strapped, the other on the floor beside the rail. Short, light strokes; then change feet.",
        "Light and short. Leave it out with a sore knee, hip or back.",
        (16, 20),
        Level.CLUB,
        LEFT_AND_RIGHT,
        ("one foot", "one foot strapped, the other on the floor", "one leg", "single leg"),
        straps=True,
    ),
    KnownDrill(
        "single arm",
        Phase.FINISH,
        "Shrugging, and drawing with the neck instead of the back of the shoulder.",
        "One hand on the middle of the handle, the other on the thigh. Draw to the ribs, shoulder low.",
        "Very light: one arm twists the trunk. Leave it out with a sore shoulder or back.",
        (16, 20),
        Level.CLUB,
        LEFT_AND_RIGHT,
        ("one arm", "one hand", "single hand"),
    ),
    KnownDrill(
        "cut the cake",
        Phase.RECOVERY,
        "A finish that sticks, and a body that will not follow the hands.",
        "From the finish go out to body over, back to the finish without weight, out again, then row on.",
        "No load on the extra swing: the chain only just stays tight.",
        (14, 20),
        other_names=("swing out twice",),
    ),
    KnownDrill(
        "slow slide",
        Phase.RECOVERY,
        "Hurrying back to the catch and arriving breathless.",
        "Drive as ever, then take three times as long to roll forward, slowest at the end.",
        "Light or half pressure: hard strokes far apart load the back.",
        (14, 18),
        other_names=("ratio strokes", "three to one"),
    ),
)

_FILLING = re.compile(r"\b(?:the|a|drill)\b|[^\w/]+", re.ASCII)


def drill_named(name: str) -> KnownDrill | None:
    """The drill of a name as coaches write it, in any case and punctuation, or None for one not known here.

    "Single-foot drill" and "Arms only, hands level" are found; of a longer text the part before its first
    comma counts.
    """
    known = _by_name()
    return known.get(plain(name)) or known.get(plain(name.partition(",")[0]))


def plain(name: str) -> str:
    """A name without case, punctuation and the words that add nothing to it."""
    return " ".join(_FILLING.sub(" ", name.lower()).split())


def drills_for(level: Level, phase: Phase | None = None) -> tuple[KnownDrill, ...]:
    """The drills that suit a level, all or those of one phase, in the order of the library."""
    order = list(Level)
    return tuple(
        drill
        for drill in DRILLS
        if order.index(drill.level) <= order.index(level) and phase in (None, drill.phase)
    )


@lru_cache(maxsize=1)
def _by_name() -> dict[str, KnownDrill]:
    return {plain(name): drill for drill in DRILLS for name in (drill.name, *drill.other_names)}
