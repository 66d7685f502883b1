"""What a coach says about technique: focuses, each with its calls.

One focus leads a block; every call says one thing. Words are our own, what they teach is common practice [C].
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.athlete import Level
from planner.drills import Phase

SLOW_RATE = 30
"""A slow recovery is never asked for above this rate: there the drive is the longer part (facts 2.2)."""


@dataclass(frozen=True, slots=True)
class TechnicalCall:
    """One idea in a few words; `highest_rate` is the rate above which it is not said."""

    text: str
    mends: str
    phase: Phase
    level: Level = Level.NOVICE
    caution: str | None = None
    highest_rate: int | None = None


@dataclass(frozen=True, slots=True)
class Focus:
    """The one technical point of a block, and the calls that belong to it, the plainest first."""

    name: str
    phase: Phase
    calls: tuple[TechnicalCall, ...]


@dataclass(frozen=True, slots=True)
class Position:
    """A position of the stroke: where everything is, from the feet up, and the fault seen most."""

    phase: Phase
    looks: str
    beware: str


POSITIONS = (
    Position(
        Phase.CATCH,
        "Shins upright, no further; arms long, body tipped from the hips, shoulders low, weight on the feet.",
        "Heels may lift a little; a back that rounds for more reach may not.",
    ),
    Position(
        Phase.DRIVE,
        "Legs push while the body keeps its tip and the arms stay long; then the back swings open.",
        "The seat never moves without the handle.",
    ),
    Position(
        Phase.FINISH,
        "Legs flat, body just behind upright, handle at the lower ribs, wrists flat, elbows past the body.",
        "Stop the swing while you can still sit tall.",
    ),
    Position(
        Phase.RECOVERY,
        "Hands away, body over, then the knees: arms long and past the knees before these rise.",
        "Whatever is not set by half slide comes too late.",
    ),
)

_CATCH, _DRIVE, _FINISH, _RECOVERY, _WHOLE = Phase
_NOVICE, _CLUB, _TRAINED = Level
_BACK = "Leave more reach out as soon as the lower back rounds."
_STRENGTH = "Only with a firm, quiet back."

FOCUSES = (
    Focus(
        "Legs, then swing, then arms",
        _WHOLE,
        (
            TechnicalCall("Push with the legs first", "pulling with the arms at once", _DRIVE),
            TechnicalCall("Arms wait for the legs", "bending the elbows early", _DRIVE),
            TechnicalCall("Back home in the other order", "rolling before the hands are away", _RECOVERY),
            TechnicalCall("Let the arms finish the stroke", "stopping short of the body", _FINISH),
            TechnicalCall("One movement, three parts", "parts that stand apart", _WHOLE),
        ),
    ),
    Focus(
        "Push the feet away",
        _DRIVE,
        (
            TechnicalCall("Push the footplate away from you", "pulling instead of pushing", _DRIVE),
            TechnicalCall("Heels down early", "pushing from the toes all through", _DRIVE),
            TechnicalCall("Same push with both feet", "pushing askew", _DRIVE),
            TechnicalCall("Press all the way to flat", "leaving out the end of the legs", _DRIVE),
            TechnicalCall("Let the legs set the speed", "hurrying with the arms", _DRIVE, _CLUB),
        ),
    ),
    Focus(
        "Hang your weight on the handle",
        _DRIVE,
        (
            TechnicalCall("Let your weight do the pulling", "arms that work where weight would do", _DRIVE),
            TechnicalCall(
                "Grow light on the seat", "sitting heavily through the drive", _DRIVE, _CLUB, _STRENGTH
            ),
            TechnicalCall("Feel it under the shoulder blades", "shrugging into the load", _DRIVE, _CLUB),
            TechnicalCall("Hook the fingers, do not squeeze", "gripping with the whole fist", _DRIVE),
            TechnicalCall(
                "Hold on, then stand on it", "a soft middle of the drive", _DRIVE, _TRAINED, _STRENGTH
            ),
        ),
    ),
    Focus(
        "Swing from the hips",
        _DRIVE,
        (
            TechnicalCall("Hinge at the hips, back long", "bending in the lower back", _DRIVE),
            TechnicalCall("Keep the tip until the legs push", "opening the back early", _DRIVE),
            TechnicalCall("Swing as the knees go flat", "a gap between legs and back", _DRIVE, _CLUB),
            TechnicalCall("Firm belly, quiet back", "a trunk that gives way", _DRIVE, _CLUB),
            TechnicalCall("Breastbone leads the swing", "throwing the head back", _DRIVE),
        ),
    ),
    Focus(
        "Draw level to the ribs",
        _FINISH,
        (
            TechnicalCall("Handle to the lower ribs", "finishing in the lap or under the chin", _FINISH),
            TechnicalCall("Elbows past the body, not out", "elbows that stick out", _FINISH),
            TechnicalCall(
                "Wrists flat", "bent wrists at the finish", _FINISH, caution="Sore forearms: hold softer."
            ),
            TechnicalCall("Carry the pressure right through", "letting go too soon", _FINISH, _CLUB),
            TechnicalCall("Touch, do not crash", "a jerk at the body", _FINISH),
        ),
    ),
    Focus(
        "Tall at the finish",
        _FINISH,
        (
            TechnicalCall("Finish on top of your hips", "slumping at the end", _FINISH),
            TechnicalCall("Stop the swing before you slump", "lying back", _FINISH),
            TechnicalCall("Chin level, look ahead", "a head that drops", _FINISH),
            TechnicalCall("Do not hang in the straps", "pulling oneself up by the feet", _FINISH, _CLUB),
        ),
    ),
    Focus(
        "Hands away",
        _RECOVERY,
        (
            TechnicalCall("Hands leave as they arrive", "a handle that rests at the body", _RECOVERY),
            TechnicalCall("Out at the speed they came", "snatching the hands away", _RECOVERY, _CLUB),
            TechnicalCall("Arms long before you tip", "body and hands going together", _RECOVERY),
            TechnicalCall("Straight out, on one level", "lifting the handle over the knees", _RECOVERY),
            TechnicalCall("Hands past the knees, then bend", "knees in the way of the hands", _RECOVERY),
        ),
    ),
    Focus(
        "Body set before the slide",
        _RECOVERY,
        (
            TechnicalCall("Tip from the hips, then roll", "reaching at the last moment", _RECOVERY),
            TechnicalCall(
                "Nose over knees, legs still flat", "knees that rise too early", _RECOVERY, caution=_BACK
            ),
            TechnicalCall("Set by half slide", "setting the body too late", _RECOVERY, _CLUB),
            TechnicalCall("Now only the knees move", "a body that still dives forward", _RECOVERY, _CLUB),
            TechnicalCall("Ribs towards the thighs", "a round back on the slide", _RECOVERY, caution=_BACK),
        ),
    ),
    Focus(
        "Patience on the slide",
        _RECOVERY,
        (
            TechnicalCall("Slower forward than back", "rushing the slide", _RECOVERY, highest_rate=SLOW_RATE),
            TechnicalCall(
                "Let the slide come to you", "pulling oneself forward", _RECOVERY, highest_rate=SLOW_RATE
            ),
            TechnicalCall("Same speed up the whole slide", "speeding up in front", _RECOVERY, _CLUB),
            TechnicalCall(
                "Rest while you roll", "staying tense between strokes", _RECOVERY, highest_rate=SLOW_RATE
            ),
            TechnicalCall("Hold the seat with your feet", "bumping into the catch", _RECOVERY, _CLUB),
        ),
    ),
    Focus(
        "Arrive ready at the catch",
        _CATCH,
        (
            TechnicalCall("Shins upright, no further", "rolling in too far", _CATCH, caution=_BACK),
            TechnicalCall("Reach from the hips", "reaching with the shoulders", _CATCH, caution=_BACK),
            TechnicalCall("Weight onto the feet", "sitting back at the catch", _CATCH),
            TechnicalCall("Shoulders low, neck long", "hunching at full reach", _CATCH),
            TechnicalCall("Arrive set, not stretched", "lunging for length", _CATCH, _CLUB),
        ),
    ),
    Focus(
        "Quick, light catch",
        _CATCH,
        (
            TechnicalCall("Turn without a stop", "resting at full reach", _CATCH),
            TechnicalCall("Feet and handle move as one", "a seat that runs off alone", _CATCH),
            TechnicalCall("Take it up, do not hit it", "a jerk at the catch", _CATCH, caution=_STRENGTH),
            TechnicalCall("Legs before you think", "a slow take-up", _CATCH, _CLUB),
            TechnicalCall(
                "Load in the first inch", "missing the front of the stroke", _CATCH, _TRAINED, _STRENGTH
            ),
        ),
    ),
    Focus(
        "Loose hands, low shoulders",
        _WHOLE,
        (
            TechnicalCall("Loosen the grip", "forearms that tire", _WHOLE),
            TechnicalCall("Drop the shoulders", "shoulders that creep up", _WHOLE),
            TechnicalCall("Unclench the jaw", "a tense face and neck", _WHOLE),
            TechnicalCall("Thumbs only rest on the handle", "squeezing with the thumbs", _WHOLE),
            TechnicalCall("Strong legs, soft hands", "tension that spreads", _WHOLE, _CLUB),
        ),
    ),
    Focus(
        "Handle on one level",
        _WHOLE,
        (
            TechnicalCall("Chain level, out and in", "a handle that wanders up and down", _WHOLE),
            TechnicalCall("Both hands at one height", "pulling askew", _WHOLE),
            TechnicalCall("No dip before the catch", "dropping the hands in front", _CATCH, _CLUB),
            TechnicalCall("Draw a straight line", "lifting the handle with the back", _DRIVE),
            TechnicalCall("Knees stay under the hands", "scooping over the knees", _RECOVERY),
        ),
    ),
    Focus(
        "Breathe with the stroke",
        _WHOLE,
        (
            TechnicalCall("Breathe out as you push", "holding the breath on the drive", _DRIVE),
            TechnicalCall("In on the way forward", "short, high breaths", _RECOVERY),
            TechnicalCall("Empty the lungs completely", "panting from the top", _WHOLE),
            TechnicalCall("Low breath, wide ribs", "breathing with the shoulders", _WHOLE),
            TechnicalCall("Find two breaths a stroke", "falling behind with the breath", _WHOLE, _TRAINED),
        ),
    ),
    Focus(
        "Long at every rate",
        _WHOLE,
        (
            TechnicalCall("Keep the reach you had", "a stroke that shortens in front", _CATCH, caution=_BACK),
            TechnicalCall("Legs flat every time", "a stroke that shortens behind", _DRIVE),
            TechnicalCall("Quicker hands, same slide", "rushing to raise the rate", _RECOVERY, _CLUB),
            TechnicalCall("Few strokes, each one whole", "many small strokes", _WHOLE, highest_rate=24),
            TechnicalCall("Rate up, length stays", "short strokes at a high rate", _WHOLE, _CLUB),
        ),
    ),
)


def suited(focus: Focus, level: Level, rate: Fraction | int, turn: int = 0) -> tuple[TechnicalCall, ...]:
    """The calls of a focus for a level at a rate, beginning with the one whose turn it is."""
    order = list(Level)
    kept = [
        call
        for call in focus.calls
        if order.index(call.level) <= order.index(level)
        and (call.highest_rate is None or rate <= call.highest_rate)
    ]
    first = turn % len(kept) if kept else 0
    return (*kept[first:], *kept[:first])
