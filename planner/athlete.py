"""Who rows: results, and a few optional facts. Nothing here is needed to row a plan."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from math import log2

from planner.limits import SPLIT
from planner.pace import split_of
from planner.units import split_clock, told_metres, told_time

QUICKEST_TWO_K_SPLIT = 75
QUICKEST_STEP = 5
"""No rower is quicker than this split over 2000 m and 5 s a doubling of the distance beside it, nor than the
quickest split of all: well beyond the best, so that only slips are refused. Judgement [C]."""


CHILD_BELOW, OLDER_FROM = 16, 65
"""Years of age from which nobody counts as a child, and from which as older. No rule of rowing says so:
youngsters race in classes of their own up to about 16, and 65 is where the ACSM begins to speak of older
adults (Nelson 2007, Med Sci Sports Exerc 39:1435-1445 [M])."""


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

    def complaint(self) -> str | None:
        """A sentence that says why nobody can have rowed this and what to check, or None when it will do."""
        quickest = max(float(SPLIT.low), QUICKEST_TWO_K_SPLIT + QUICKEST_STEP * log2(self.metres / 2000))
        if quickest <= self.split <= SPLIT.high:
            return None
        wrong = (
            f"quicker than anybody rows that far (about {split_clock(Fraction(quickest))})"
            if self.split < quickest
            else f"slower than {split_clock(Fraction(SPLIT.high))}, which is no rowing"
        )
        return (
            f"{told_metres(self.metres)} in {told_time(self.seconds)} is a split of "
            f"{split_clock(self.split)}, {wrong}: check the metres and the minutes"
        )


@dataclass(frozen=True, slots=True)
class Athlete:
    """Results and limits of one person; all of it optional."""

    results: tuple[Result, ...] = ()
    age: int | None = None
    mass_kg: Fraction | None = None
    heart_rate_rest: int | None = None
    heart_rate_max: int | None = None
    level: Level = Level.CLUB

    @property
    def is_child(self) -> bool:
        """Whether no target of grown-ups holds."""
        return self.age is not None and self.age < CHILD_BELOW

    @property
    def is_older(self) -> bool:
        """Whether a body asks for more time to get warm, and effort says more than a pulse by formula."""
        return self.age is not None and self.age >= OLDER_FROM
