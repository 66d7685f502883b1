"""What a warm-up is chosen for, and the conditions under which a rule of choice holds."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Generic, TypeVar

from planner.athlete import Level, Room
from planner.pieces import Character

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Circumstances:
    """The piece ahead, who rows it where, and the minutes there are.

    `rate` is that of the piece in strokes a minute, `piece_seconds` how long it is expected to take. `spared`
    says that a child or an older adult rows it.
    """

    character: Character
    rate: int
    piece_seconds: float
    capped: bool
    level: Level
    room: Room
    minutes: int
    spared: bool = False


@dataclass(frozen=True, slots=True)
class Rule(Generic[T]):
    """What a coach would take and why, when every condition that is given holds."""

    gives: T
    reason: str
    characters: tuple[Character, ...] = tuple(Character)
    levels: tuple[Level, ...] = tuple(Level)
    rooms: tuple[Room, ...] = tuple(Room)
    minutes_from: int = 0
    minutes_to: int = 60
    piece_longer_than: int = 0
    only_capped: bool = False
    only_spared: bool = False

    def holds(self, at: Circumstances) -> bool:
        """Whether every condition holds."""
        return (
            at.character in self.characters
            and at.level in self.levels
            and at.room in self.rooms
            and self.minutes_from <= at.minutes <= self.minutes_to
            and at.piece_seconds > self.piece_longer_than
            and (at.capped or not self.only_capped)
            and (at.spared or not self.only_spared)
        )


def first_that_holds(rules: Iterable[Rule[T]], at: Circumstances) -> Rule[T]:
    """The first rule that holds; the last of a table holds always."""
    return next(rule for rule in rules if rule.holds(at))
