"""The way down, by what was done."""

from __future__ import annotations

from collections.abc import Iterator

from planner.athlete import Room
from planner.coaching import Purpose, Stage
from planner.pieces import Character
from planner.plan import Block, ForSeconds, Pressure, Rest

# Minutes of easy rowing after a piece: common practice [C]. After hard work one keeps moving, because blood
# that pools in the legs makes faint; after long sitting one stands up first, for the back.
_MINUTES: dict[Character, tuple[int, ...]] = {
    Character.EXPLOSIVE: (3, 3),
    Character.MIDDLE: (4, 4),
    Character.LONG: (3, 3),
    Character.EASY: (3,),
}
STAND_SECONDS = 60
_LONG_SITTING_SECONDS = 1500
_REASONS: dict[Character, str] = {
    Character.EXPLOSIVE: "Six easy minutes afterwards keep the blood moving until the breath is quiet.",
    Character.MIDDLE: "Eight easy minutes afterwards keep the blood moving until the breath is quiet.",
    Character.LONG: "Six easy minutes afterwards loosen what has worked for long.",
    Character.EASY: "Three easy minutes are enough after easy rowing.",
}


def cool_down_stages(character: Character, piece_seconds: float, room: Room) -> Iterator[Stage]:
    """Easy rowing, light all through; after long sitting or in the heat one stands up and drinks first."""
    if stands_first(character, piece_seconds, room):
        yield Stage(Rest(STAND_SECONDS), Purpose.DOWN)
    for index, minutes in enumerate(_MINUTES[character]):
        yield Stage(Block(ForSeconds(minutes * 60), 18 if index else 20, Pressure.LIGHT), Purpose.DOWN)


def stands_first(character: Character, piece_seconds: float, room: Room) -> bool:
    """Whether a minute off the seat comes before the easy rowing."""
    long_sitting = piece_seconds > _LONG_SITTING_SECONDS
    return long_sitting or (room is Room.HOT and character in (Character.LONG, Character.EASY))


def cool_down_reason(character: Character) -> str:
    """Why the way down is as it is."""
    return _REASONS[character]
