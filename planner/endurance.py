"""How quick a rower can be over any length by what results say, and which one piece a broken one is like.

The shares are of the rower's own 2 km power. Without a result the level's usual 2 km stands in for one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from planner.athlete import Athlete, Level, Result
from planner.critical_power import Examined
from planner.demand import holdable_share
from planner.pace import SPLIT_METRES
from planner.prediction import (
    ASSUMED_TWO_K_SPLIT,
    TWO_K_METRES,
    Piece,
    Prediction,
    examined_of,
    predict,
    two_k_by,
)
from planner.trials import Doubt

REPEATED_SLOWER = Fraction(2, 100)
"""Nobody repeats a piece at what it takes flat out: the split of each repetition is slower by this share at
least, however long the rests. Common practice [C]."""
MAXIMAL_SHARE = 0.95
"""From this share of what can be held for so long on, never more than 2 km power, work is all but maximal:
judgement [C]."""


@dataclass(frozen=True, slots=True)
class Endurance:
    """The results that count, their examination, and the 2 km split that shares are worked out from.

    `known` says that they are the rower's own.
    """

    results: Sequence[Result]
    examined: Examined
    two_k_split: Fraction
    known: bool

    def over(self, metres: int | None = None, seconds: int | None = None) -> Prediction:
        """What is said of one piece over metres, or on the clock."""
        return predict(Piece("", metres, seconds), self.results, self.examined)

    def likely(self, seconds: float, metres: int | None = None) -> float:
        """The share of 2 km power that is predicted for so long, or for metres where they are given."""
        return self.share_at(self.piece(seconds, metres).split)

    def kindest(self, seconds: float, metres: int | None = None) -> float:
        """The same by the quick end of the prediction."""
        quickest = self.piece(seconds, metres).quickest
        return self.share_at(quickest.seconds * SPLIT_METRES / quickest.metres)

    def maximal(self, seconds: float, metres: int | None = None) -> float:
        """The share from which so long a piece is all but maximal: by the law of times and distances, or by
        longer results that were rowed hard where they come to less."""
        if not seconds:
            return MAXIMAL_SHARE
        held = holdable_share(seconds, TWO_K_METRES / SPLIT_METRES * float(self.two_k_split))
        return MAXIMAL_SHARE * min(held, self.without_easy().likely(seconds, metres))

    def piece(self, seconds: float, metres: int | None = None) -> Prediction:
        """What is said of so long, or of metres where they are given."""
        return self.over(metres) if metres is not None else self.over(seconds=max(1, round(seconds)))

    def without_easy(self) -> Endurance:
        """The same without results that look rowed easily, in shares of the same 2 km power."""
        easy = {each.index for each in self.examined.left_out if each.doubt is Doubt.EASY}
        hard = tuple(result for index, result in enumerate(self.results) if index not in easy)
        return replace(self, results=hard, examined=examined_of(hard)) if easy else self

    def share_at(self, split: Fraction | float) -> float:
        """The share of 2 km power that a split takes: the cubic of air machines."""
        return (float(self.two_k_split) / float(split)) ** 3


def endurance_of(athlete: Athlete | None, level: Level) -> Endurance:
    """The endurance of a rower: by results where there are any, else by the level's usual 2 km."""
    known = athlete is not None and bool(athlete.results)
    assumed = Result(TWO_K_METRES, TWO_K_METRES * ASSUMED_TWO_K_SPLIT[level] / SPLIT_METRES)
    results = athlete.results if athlete and known else (assumed,)
    examined = examined_of(results)
    return Endurance(results, examined, two_k_by(results, examined).split, known)


def repetitions_alike(times: int, seconds: float, rest_seconds: float) -> float:
    """How many repetitions in one go a set is like, each of so many seconds, with rests between them.

    All of them without a rest, half with rests as long as the repetitions, fewer with longer ones, and always
    one at least. Common practice [C]: rests count by how long they are beside the work.
    """
    return max(1.0, times / (1 + rest_seconds / seconds))
