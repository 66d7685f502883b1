"""The way down, by what was done."""

from __future__ import annotations

from collections.abc import Iterator

from planner.athlete import Room
from planner.coaching import Purpose, Stage
from planner.pieces import Character
from planner.plan import Block, ForSeconds, Pressure, Rest

# Minutes of easy rowing after a piece: common practice [C]. It begins at once, because blood that pools in
# the legs when one stops dead makes faint; after long sitting, for the back, one stands up once the first of
# it is over.
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
_STAND_REASON = "Row the first three of them before you stand up and drink, so that nobody stops dead."


def cool_down_stages(character: Character, piece_seconds: float, room: Room) -> Iterator[Stage]:
    """Easy rowing, light all through; after long sitting or in heat one stands up and drinks within it."""
    stands = _stands_within(character, piece_seconds, room)
    for index, minutes in enumerate(_MINUTES[character]):
        if index and stands:
            yield Stage(Rest(STAND_SECONDS), Purpose.DOWN)
        yield Stage(Block(ForSeconds(minutes * 60), 18 if index else 20, Pressure.LIGHT), Purpose.DOWN)


def cool_down_reason(character: Character, piece_seconds: float, room: Room) -> str:
    """Why the way down is as it is."""
    stands = _stands_within(character, piece_seconds, room)
    return f"{_REASONS[character]} {_STAND_REASON}" if stands else _REASONS[character]


def _stands_within(character: Character, piece_seconds: float, room: Room) -> bool:
    """Whether a minute off the seat comes after the first easy rowing; easy pieces have had theirs."""
    return character is Character.LONG and (piece_seconds > _LONG_SITTING_SECONDS or room is Room.HOT)
