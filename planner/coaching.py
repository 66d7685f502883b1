"""Puts words to what is rowed: one focus leads a block, and its calls fall where they can be said."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from planner.athlete import Level
from planner.call_spread import spread
from planner.drills import Phase, drill_named
from planner.focus_points import FOCUSES, Focus, TechnicalCall, suited
from planner.plan import Block, ForSeconds, ForStrokes, Rest
from planner.strokes import Strokes, strokes_at, strokes_in


class Purpose(StrEnum):
    """What a block is for, which decides what is said in it."""

    FIRST = "first strokes"
    RISE = "rise"
    EXERCISE = "exercise"
    RESET = "reset"
    SHARP = "sharp"
    EASY = "easy"
    CALM = "calm"
    PIECE = "piece"
    REPETITION = "repetition"
    STEADY = "steady"
    DOWN = "down"


@dataclass(frozen=True, slots=True)
class Stage:
    """A step that has no words yet, and what it is for.

    `opens` says that it begins a new idea: a stage that does not goes on with the focus of the one before.
    `seconds` is how long a block over metres is expected to take, `times` how often the block is rowed.
    """

    step: Block | Rest
    purpose: Purpose
    opens: bool = True
    seconds: Fraction | None = None
    times: int = 1


def _between(name: str, *calls: tuple[str, str]) -> Focus:
    """What is said between the work: the state to be in rather than a point of technique."""
    return Focus(name, Phase.WHOLE, tuple(TechnicalCall(text, mends, Phase.WHOLE) for text, mends in calls))


# Common practice [C], in our own words.
BETWEEN: dict[Purpose, tuple[Focus, ...]] = {
    Purpose.FIRST: (
        _between(
            "Full strokes, no hurry",
            ("Start slower than you want to", "starting too hard"),
            ("Long and light to begin with", "short first strokes"),
            ("Let the body warm to it", "forcing length while cold"),
            ("Is the grip still loose?", "gripping from the first stroke"),
        ),
    ),
    Purpose.RESET: (
        _between(
            "Ease right off before the quick strokes",
            ("Light hands, quiet breath", "carrying tension into the first burst"),
        ),
    ),
    Purpose.EASY: (
        _between(
            "Straight back to easy",
            ("Breathe out all the way", "panting after a burst"),
            ("Only movement, no push", "rowing on too hard after a burst"),
        ),
        _between(
            "Let the breath come down",
            ("Shoulders low, jaw loose", "tension that stays after a burst"),
            ("Slow strokes, slow breath", "hurrying between bursts"),
        ),
        _between(
            "Nothing to prove in between",
            ("Shake the tension out", "hands that stay clenched"),
            ("Light as you can", "rowing on too hard after a burst"),
        ),
    ),
    Purpose.CALM: (
        _between(
            "Grow calm, keep your warmth",
            ("Soon off the seat, to stand and drink", "sitting through the gap"),
            ("Picture your first ten strokes", "going to the start without a plan"),
        ),
    ),
    Purpose.DOWN: (
        _between(
            "Keep moving while the breath settles",
            ("Take all the push off", "stopping dead after hard work"),
            ("Longer out than in", "panting"),
            ("Loosen hands and jaw", "tension that stays"),
        ),
        _between(
            "Long and loose to the end",
            ("Let the hips lengthen, gently", "getting up stiff"),
            ("Stand up slowly afterwards", "rising too fast with low blood pressure"),
        ),
    ),
}

# Which technical focus leads, in the order in which a session comes to them: judgement [C].
LEADS: dict[Purpose, tuple[str, ...]] = {
    Purpose.RISE: (
        "Legs, then swing, then arms",
        "Body set before the slide",
        "Hang your weight on the handle",
        "Quick, light catch",
        "Draw level to the ribs",
        "Long at every rate",
    ),
    Purpose.SHARP: ("Long at every rate", "Quick, light catch", "Hands away", "Push the feet away"),
    Purpose.PIECE: (
        "Push the feet away",
        "Long at every rate",
        "Loose hands, low shoulders",
        "Breathe with the stroke",
        "Quick, light catch",
        "Hands away",
        "Tall at the finish",
        "Hang your weight on the handle",
    ),
    Purpose.REPETITION: (
        "Push the feet away",
        "Long at every rate",
        "Loose hands, low shoulders",
        "Quick, light catch",
        "Hands away",
        "Tall at the finish",
    ),
    Purpose.STEADY: (
        "Patience on the slide",
        "Loose hands, low shoulders",
        "Breathe with the stroke",
        "Swing from the hips",
        "Handle on one level",
        "Tall at the finish",
        "Arrive ready at the catch",
    ),
}
NOVICE_RISE = ("Legs, then swing, then arms", "Push the feet away", "Swing from the hips", "Hands away")

_BY_NAME = {focus.name: focus for focus in FOCUSES}
_OF_PHASE = {phase: tuple(focus for focus in FOCUSES if focus.phase is phase) for phase in Phase}


def with_words(stages: Iterable[Stage], level: Level) -> tuple[Block | Rest, ...]:
    """The steps of the stages, each block with its focus and calls; rests are left as they are."""
    begun: Counter[Purpose] = Counter()
    said: Counter[str] = Counter()
    focus: Focus | None = None
    steps: list[Block | Rest] = []
    for stage in stages:
        step = stage.step
        if isinstance(step, Block):
            if stage.opens or focus is None:
                focus = _focus(stage.purpose, step, begun[stage.purpose], level)
                begun[stage.purpose] += 1
            step = _spoken(stage, step, (focus, *_others(stage.purpose, focus, level)), said, level)
        steps.append(step)
    return tuple(steps)


def _focus(purpose: Purpose, block: Block, turn: int, level: Level) -> Focus:
    if purpose in BETWEEN:
        return BETWEEN[purpose][turn % len(BETWEEN[purpose])]
    if block.drill:
        known = drill_named(block.drill.name)
        choices = _OF_PHASE[known.phase if known else Phase.WHOLE]
        return choices[turn % len(choices)]
    names = _leads(purpose, level)
    return _BY_NAME[names[turn % len(names)]]


def _others(purpose: Purpose, focus: Focus, level: Level) -> tuple[Focus, ...]:
    """What may be said besides in a block that outlasts its focus: what leads the next ones."""
    names = _leads(purpose, level)
    if focus.name not in names:
        return ()
    here = names.index(focus.name)
    return tuple(_BY_NAME[name] for name in (*names[here + 1 :], *names[:here]))


def _leads(purpose: Purpose, level: Level) -> tuple[str, ...]:
    return NOVICE_RISE if purpose is Purpose.RISE and level is Level.NOVICE else LEADS.get(purpose, ())


def _spoken(stage: Stage, block: Block, focuses: Sequence[Focus], said: Counter[str], level: Level) -> Block:
    """The block under its first focus, whose calls come first; what is said in it is counted by focus."""
    strokes = _strokes(block, stage.seconds)
    if strokes is None:
        return replace(block, focus=focuses[0].name)
    own, *more = (suited(focus, level, strokes.rate, said[focus.name]) for focus in focuses)
    calls = spread(own, strokes, more=[call for calls in more for call in calls], times=stage.times)
    texts = {call.text for call in calls}
    said.update({focus.name: sum(call.text in texts for call in focus.calls) for focus in focuses})
    return replace(block, focus=focuses[0].name, calls=calls)


def _strokes(block: Block, seconds: Fraction | None) -> Strokes | None:
    """The strokes in which something can be said; of a drill with sides, those of the first side."""
    if block.rate is None:
        return None
    if block.drill and block.drill.side_seconds:
        return strokes_in(block.drill.side_seconds, block.rate)
    match block.length:
        case ForSeconds(length):
            return strokes_in(length, block.rate)
        case ForStrokes(count):
            return strokes_at(count, block.rate)
        case _:
            return strokes_in(seconds, block.rate) if seconds is not None else None
