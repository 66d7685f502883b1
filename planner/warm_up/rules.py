"""The choices of a warm-up as data: which rise, which sharpening, how much of it, which drill, and why.

All of it is judgement of coaching practice [C] within what is published: moderate work of 40 to 60 % VO2max
for 10 to 15 min before short efforts, 60 to 70 % for 5 to 10 min before longer ones (Bishop 2003, part II,
Sports Med 33:483-498 [M], limits of each band unsure); muscle warms within 3 to 5 min and levels off after 10
to 20 (Bishop 2003, part I [M]); 30 min of easy rowing beat 60 min with bursts before a maximal 10 min (Mujika
2012, IJSPP 7:186-188 [S]); a truly heavy bout less than 9 min before a piece can cost more than it gives
(Bailey 2009, J Appl Physiol 107:1743-1756; Sousa 2014, PLoS ONE 9:e84208 [S]).
"""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from planner.athlete import Level, Room
from planner.limits import Bounds
from planner.pieces import Character
from planner.plan import Pressure, TwoKPower
from planner.warm_up.circumstances import Rule

MINUTES = Bounds("length of the warm-up", 5, 30, "minutes")


class Rise(StrEnum):
    """How the work grows from the first stroke to the first sharp one."""

    STEADY_BUILD = "steady build"
    RATE_STEPS = "steps of rate"
    PRESSURE_STEPS = "steps of pressure"
    EASY_BUILD = "easy build"


class Sharpening(StrEnum):
    """What wakes the body up for quick or hard strokes, once it is warm."""

    BURSTS = "bursts"
    STARTS = "practice starts"
    NONE = "none"


ALL_HARD = (Character.EXPLOSIVE, Character.MIDDLE, Character.LONG)

RISES: tuple[Rule[Rise], ...] = (
    Rule(
        Rise.EASY_BUILD,
        "Nothing hard follows, so the way up is one slow build and stays where you can talk.",
        characters=(Character.EASY,),
    ),
    Rule(
        Rise.PRESSURE_STEPS,
        "The rate of the piece is capped, so the push grows step by step and the rate hardly moves.",
        only_capped=True,
    ),
    Rule(
        Rise.STEADY_BUILD,
        "With so few minutes, rate and push grow together in one even build.",
        minutes_to=7,
    ),
    Rule(
        Rise.STEADY_BUILD,
        "In a cold room rate and push grow together and slowly, so that no step meets a cold muscle.",
        rooms=(Room.COLD,),
        characters=(Character.EXPLOSIVE, Character.MIDDLE),
    ),
    Rule(
        Rise.RATE_STEPS,
        "A long piece is rowed on one beat: the rate climbs to it in steps and the stroke stays the same.",
        characters=(Character.LONG,),
    ),
    Rule(
        Rise.STEADY_BUILD,
        "Rate and push grow together in small amounts, so that only one thing at a time asks for attention.",
        levels=(Level.NOVICE,),
    ),
    Rule(
        Rise.PRESSURE_STEPS,
        "A short piece is strength before it is speed: the strokes grow firmer at a low rate first.",
        characters=(Character.EXPLOSIVE,),
    ),
    Rule(
        Rise.RATE_STEPS,
        "The rate climbs in steps towards that of the piece while the stroke keeps its length.",
        levels=(Level.TRAINED,),
    ),
    Rule(Rise.STEADY_BUILD, "Rate and push grow together until firm strokes feel easy."),
)


class Step(NamedTuple):
    """A step of a rise: its rate in strokes a minute, its pressure, and its weight in the time there is."""

    rate: int
    pressure: Pressure
    weight: int


L, H, T = Pressure.LIGHT, Pressure.HALF, Pressure.THREE_QUARTER

STEPS: dict[Rise, tuple[Step, ...]] = {
    Rise.STEADY_BUILD: (Step(18, L, 3), Step(20, H, 5), Step(22, T, 6), Step(24, T, 4)),
    Rise.RATE_STEPS: (Step(18, L, 3), Step(20, H, 4), Step(22, T, 7), Step(24, T, 4), Step(26, T, 2)),
    Rise.PRESSURE_STEPS: (Step(18, L, 3), Step(20, H, 5), Step(20, T, 6), Step(24, T, 3)),
    Rise.EASY_BUILD: (Step(18, L, 4), Step(20, H, 5)),
}
LONG_STEP_WEIGHT = 2
"""The weight of each step that follows on the way to the rate of a long piece."""

SHARPENINGS: tuple[Rule[Sharpening], ...] = (
    Rule(
        Sharpening.NONE,
        "Nothing hard follows, so nothing hard comes before it.",
        characters=(Character.EASY,),
    ),
    Rule(
        Sharpening.NONE,
        "A piece this long starts well below your limit: a hard burst before it would only spend.",
        characters=(Character.LONG,),
        piece_longer_than=2100,
    ),
    Rule(
        Sharpening.NONE,
        "With so few minutes before a long piece, warmth comes first and bursts are left out.",
        characters=(Character.LONG,),
        minutes_to=7,
    ),
    Rule(
        Sharpening.BURSTS,
        "Half a minute at the beat of the piece shows what it will feel like and costs next to nothing.",
        characters=(Character.LONG,),
    ),
    Rule(
        Sharpening.BURSTS,
        "A few quick strokes at a time, no more: quickness is tried out, not trained.",
        levels=(Level.NOVICE,),
    ),
    Rule(
        Sharpening.BURSTS,
        "Strokes from a standstill are heavy for a young or an older back: here quick strokes grow out of "
        "easy ones.",
        characters=(Character.EXPLOSIVE,),
        only_spared=True,
    ),
    Rule(
        Sharpening.STARTS,
        "A short piece is decided by its first strokes, so they are practised from a standstill.",
        characters=(Character.EXPLOSIVE,),
        minutes_from=8,
    ),
    Rule(
        Sharpening.BURSTS,
        "Short bursts counted in strokes bring the rate of the piece without its tiredness.",
    ),
)

TOUCHES: tuple[Rule[bool], ...] = (
    Rule(
        True,
        "So few minutes do not get muscles warm in the cold: the burst touches the rate of the piece and is "
        "not rowed hard.",
        rooms=(Room.COLD,),
        characters=ALL_HARD,
        minutes_to=6,
    ),
    Rule(False, ""),
)
TOUCH = TwoKPower(Fraction(80, 100))
"""As much as a warm-up has to rise to, and not yet hard (`checks`): judgement [C]."""

# How many bursts or starts for the minutes there are: the last row that is not above them counts.
DOSES: dict[Character, tuple[tuple[int, int], ...]] = {
    Character.EXPLOSIVE: ((5, 1), (7, 2), (11, 3), (22, 4)),
    Character.MIDDLE: ((5, 1), (8, 2), (14, 3)),
    Character.LONG: ((8, 1), (14, 2)),
}
LESS: tuple[Rule[int], ...] = (
    Rule(1, "one fewer, because the room is hot", rooms=(Room.HOT,), characters=ALL_HARD),
    Rule(
        1,
        "one fewer, because a cold body needs the minutes to rise",
        rooms=(Room.COLD,),
        characters=ALL_HARD,
        minutes_to=10,
    ),
    Rule(
        1,
        "one fewer, to be kind to a young or an older body",
        characters=ALL_HARD,
        only_spared=True,
    ),
    Rule(1, "one fewer, because rowing is still new", levels=(Level.NOVICE,), characters=ALL_HARD),
    Rule(0, ""),
)

# Seconds from one burst to the next, by minutes: never under a minute, after which phosphocreatine is about
# half back (Bogdanis 1995, J Physiol 482:467-480 [S], after 30 s all-out; these bursts are far shorter).
SLOTS = ((5, 60), (8, 90), (22, 120))
LONGER_SLOT = 90
"""In the shortest warm-up too, for a novice, and for a rate whose whole strokes take half a minute."""
RESETS = ((5, 30), (13, 60))
TAILS = ((5, 30), (8, 60), (21, 90), (26, 120))

LEAST_EASY = ((60, 30), (90, 40), (120, 60))
"""Seconds of easy rowing that a slot of so many seconds leaves at least."""

STROKES: dict[Character, int] = {Character.EXPLOSIVE: 9, Character.MIDDLE: 10, Character.LONG: 13}
"""Strokes at the rate of a burst: none lasts much more than half a minute."""
START_STROKES = 7
STILL_SECONDS = 10
"""Sitting ready before a practice start."""

LIFT = {Level.NOVICE: 0, Level.CLUB: 2, Level.TRAINED: 2}
"""How far the last burst goes above the rate of a middle or long piece, in strokes a minute."""
SHARP_RATES = (24, 28, 30, 32, 36, 40)
"""Rates whose strokes a clock's hand can check: two at r24 last 5 s, seven at r28 15 s, three at r36 5 s."""
RUNGS = (24, 28, 30, 32, 36)
"""The rates on the way up to a burst."""
EASY_RATES = {Level.NOVICE: (20,), Level.CLUB: (20, 18), Level.TRAINED: (20, 18)}
"""At r20 a stroke lasts 3 s, at r18 three of them 10 s. A novice's rate rises from r20 only."""
RATE_STEP = {Level.NOVICE: 4, Level.CLUB: 6, Level.TRAINED: 6}
"""The most by which the rate may rise from one block to the next."""

HARD_SHARE = {**dict.fromkeys(ALL_HARD, Fraction(1, 10)), Character.EASY: Fraction(0)}
"""The most of a warm-up that may be rowed at full or race pressure."""


class Exercise(NamedTuple):
    """A drill of the library with the rate at which it is done."""

    name: str
    rate: int


EXERCISES: tuple[Rule[tuple[Exercise, ...]], ...] = (
    Rule((), "", characters=(Character.EASY,)),
    Rule((), "", minutes_to=11),
    Rule(
        (Exercise("arms and swing", 20),),
        "A drill early on teaches the order of the stroke while it is still easy.",
        levels=(Level.NOVICE,),
        minutes_to=17,
    ),
    Rule(
        (Exercise("arms and swing", 20), Exercise("half slide", 20)),
        "Two drills early on teach the order of the stroke while it is still easy.",
        levels=(Level.NOVICE,),
    ),
    Rule((), "", rooms=(Room.COLD,), minutes_to=14),
    Rule(
        (Exercise("pause at body over", 18),),
        "A minute with a pause sets the body over before the slide moves.",
        minutes_to=21,
    ),
    Rule(
        (Exercise("pause at body over", 18), Exercise("pause at half slide", 18)),
        "Two minutes with pauses set the body over and calm the slide.",
    ),
)
DRILL_SECONDS = 60
