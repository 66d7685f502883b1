"""Who rows: results, and a few optional facts. Nothing here is needed to row a plan."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from planner.pace import split_of


class Level(StrEnum):
    """How much rowing lies behind a person."""

    NOVICE = "novice"
    CLUB = "club"
    TRAINED = "trained"


class Room(StrEnum):
    """How warm it is where the rowing is done."""

    COLD = "cold"
    NORMAL = "normal"
    HOT = "hot"


@dataclass(frozen=True, slots=True)
class Result:
    """A distance in metres and the time it took in seconds, to the tenth."""

    metres: int
    seconds: Fraction

    @property
    def split(self) -> Fraction:
        """Seconds per 500 m."""
        return split_of(self.metres, self.seconds)


@dataclass(frozen=True, slots=True)
class Athlete:
    """Results and limits of one person; all of it optional."""

    results: tuple[Result, ...] = ()
    age: int | None = None
    mass_kg: Fraction | None = None
    heart_rate_rest: int | None = None
    heart_rate_max: int | None = None
    level: Level = Level.CLUB
