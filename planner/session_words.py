"""What a session says around its blocks: title, summary, set-up, setting, and cautions."""

from __future__ import annotations

from fractions import Fraction

from planner.athlete import Level, Room
from planner.main_piece import Goal
from planner.pieces import (
    Character,
    Expectation,
    IntervalSet,
    Piece,
    SteadyRow,
    Technique,
    TestPiece,
    name_of,
)
from planner.plan import Setting
from planner.units import told_metres, told_time

_HARD = (
    "It is maximal: not for a first week, and not on a day you feel ill or with pain in the back or chest."
)
_SET = "Hard work: not for a first week, and not on a day you feel ill."
_EASY = "Nothing in it is hard: you can talk all the way."
_NOVICE = "New to rowing? Let a coach watch, and stop at any sharp pain, faintness or tightness in the chest."
_HOT = "In the heat drink early, keep a fan on you, and stop at chills or a headache."

_SET_UP = {
    Character.EXPLOSIVE: "Straps snug over the widest part of the foot; rail and seat clean, floor clear.",
    Character.MIDDLE: "Straps over the widest part of the foot, snug; water in reach, fan on.",
    Character.LONG: "Straps comfortable, towel and water in reach, fan on.",
    Character.EASY: "Heels free to lift a little, water in reach, fan on; straps you can open quickly.",
}
# A mid lever setting is where one starts [C]; lower for long, slow or light work, which spares the back.
_LEVERS = {Character.EXPLOSIVE: 5, Character.MIDDLE: 4, Character.LONG: 4, Character.EASY: 3}
_LOW_RATE = 22


def title_of(piece: Piece, minutes: int, *, only_warm_up: bool) -> str:
    """What stands above the plan."""
    name = name_of(piece)
    return (
        f"{minutes} minutes before {name}"
        if only_warm_up
        else f"{name[0].upper()}{name[1:]}, from warm-up to way down"
    )


def summary_of(
    piece: Piece, expected: Expectation, goal: Goal | None, level: Level, room: Room, *, only_warm_up: bool
) -> str:
    """For whom it is, what it takes, and what to beware of."""
    match piece:
        case TestPiece():
            lines = [_aim(piece, expected, goal), _HARD if expected.flat_out else _SET]
        case IntervalSet():
            lines = [_target(piece, expected), _SET]
        case SteadyRow() | Technique():
            lines = [_EASY]
    if only_warm_up:
        lines[0] = f"A warm-up alone, for {name_of(piece)}{_rate(piece, expected)}."
    elif expected.known and not expected.within_range:
        lines.insert(1, "What is predicted here is a guess.")
    if level is Level.NOVICE:
        lines.append(_NOVICE)
    if room is Room.HOT:
        lines.append(_HOT)
    return " ".join(lines)


def _target(piece: IntervalSet, expected: Expectation) -> str:
    basis = "your results" if expected.known else "what is usual for the level"
    return f"{_capital(name_of(piece))}, each at about r{expected.rate}, at a target from {basis}."


def _aim(piece: TestPiece, expected: Expectation, goal: Goal | None) -> str:
    """What the piece is to come to, and how a goal that was asked for stands to what is expected."""
    name = _capital(name_of(piece))
    rate = _rate(piece, expected)
    basis = "your results point to" if expected.known else "is usual for the level"
    what = told_time(expected.seconds) if piece.metres is not None else told_metres(round(expected.metres))
    if goal is None or not goal.asked:
        return f"{name}{rate}: {basis} {what}." if expected.known else f"{name}{rate}: {what} {basis}."
    if piece.metres is not None:
        wanted, apart = told_time(goal.seconds), _time_apart(goal.seconds - expected.seconds)
    else:
        wanted, apart = told_metres(goal.metres), _metres_apart(goal.metres - round(expected.metres))
    stands = f"{apart} than {basis} ({what})" if apart else f"just what {basis}"
    return f"{name}{rate}: your goal is {wanted}, {stands}."


def _rate(piece: Piece, expected: Expectation) -> str:
    """The rate, where the piece's name does not hold one."""
    capped = isinstance(piece, TestPiece) and piece.rate_cap
    return "" if capped else f" at about r{expected.rate}"


def _time_apart(more: Fraction) -> str:
    """By how much a time is longer or shorter, or nothing where it is neither."""
    return f"{told_time(abs(more))} {'slower' if more > 0 else 'quicker'}" if more else ""


def _metres_apart(more: int) -> str:
    return f"{told_metres(abs(more))} {'further' if more > 0 else 'less far'}" if more else ""


def guess_told(expected: Expectation) -> tuple[str, ...]:
    """A word on a prediction that no custom reaches, where it is one."""
    if not expected.known or expected.within_range:
        return ()
    return (
        "No result is near enough to this piece: predictions hold from about 500 m or three and a half "
        "minutes up, so what is predicted of it is a guess. Row it once and enter the result.",
    )


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def set_up_of(expected: Expectation) -> str:
    """Feet, water, floor."""
    return _SET_UP[expected.character]


def setting_of(expected: Expectation, level: Level) -> Setting:
    """Where to set the lever when one's own drag factor is not known."""
    lever = _LEVERS[expected.character]
    low = expected.rate <= _LOW_RATE or level is Level.NOVICE
    return Setting(lever=max(3, lever - 1) if low else lever)
