"""The bounds of every number and size in a plan, said once and used at each border."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Bounds:
    """The least and the most that a number may be, both allowed, with its name and unit for people."""

    name: str
    low: Fraction | int
    high: Fraction | int
    unit: str = ""
    step: Fraction | int = 1

    def complaint(self, value: Fraction | int) -> str | None:
        """A sentence that says what is wrong with the value, or None when it will do."""
        if value < self.low:
            return f"{self.name} {_plain(value)} is below {self._with_unit(self.low)}"
        if value > self.high:
            return f"{self.name} {_plain(value)} is above {self._with_unit(self.high)}"
        if Fraction(value) % self.step:
            return f"{self.name} {_plain(value)} is not in steps of {self._with_unit(self.step)}"
        return None

    def _with_unit(self, value: Fraction | int) -> str:
        first, *others = self.unit.split(" ")
        unit = " ".join([first.removesuffix("s") if value == 1 else first, *others])
        return f"{_plain(value)} {unit}".rstrip()


def _plain(value: Fraction | int) -> str:
    text = f"{float(value):.4f}".rstrip("0").rstrip(".")
    return text if len(text) <= 24 else f"{float(value):.3g}"


TENTH = Fraction(1, 10)
HUNDREDTH = Fraction(1, 100)

BLOCK_SECONDS = Bounds("length", 1, 14_400, "seconds")
BLOCK_METRES = Bounds("distance", 50, 100_000, "metres")
BLOCK_STROKES = Bounds("strokes", 1, 2_000, "strokes")
RATE = Bounds("rate", 10, 50, "strokes a minute")
TIMES = Bounds("repetitions", 1, 100, "times")
SPLIT = Bounds("split", 60, 360, "seconds per 500 m", TENTH)
SPLIT_OFFSET = Bounds("offset from the 2 km split", -40, 120, "seconds", TENTH)
CHANGE = Bounds("change of split", -40, 40, "seconds", TENTH)
TWO_K_POWER = Bounds("share of 2 km power", Fraction(1, 10), 3, "", HUNDREDTH)
CR10 = Bounds("effort on the 0 to 10 scale", 0, 10, "", Fraction(1, 2))
HEART_BPM = Bounds("heart rate", 40, 230, "beats a minute")
HEART_PERCENT = Bounds("share of heart rate", 20, 100, "percent")
LEVER = Bounds("lever", 1, 10)
DRAG_FACTOR = Bounds("drag factor", 50, 250)
LEAVE_PERCENT = Bounds("share of the reserve to leave", 0, 90, "percent")
REST_SECONDS = Bounds("rest between repetitions", 0, 3_600, "seconds")
SIDES = Bounds("sides", 2, 8, "sides", 2)
SIDE_SECONDS = Bounds("time on a side", 5, 120, "seconds")
SWAP_SECONDS = Bounds("time to swap", 1, 60, "seconds")
WORDS_A_MINUTE = Bounds("speed of the voice", 80, 240, "words a minute")

TITLE_LENGTH = 80
NOTE_LENGTH = 600
LINE_LENGTH = 120
WORD_LENGTH = 60
CALLS_IN_BLOCK = 20
PARTS = 12
BLOCKS_IN_LIST = 100
DEPTH = 4
"""How deep repeats may stand in repeats."""
SEGMENTS = 500
"""The most segments of an expanded plan, before anything is expanded."""
TOTAL_SECONDS = 43_200
"""The longest expanded plan: twelve hours, metre blocks without a split taken at a slow one."""

RESULTS = 20
RESULT_METRES = Bounds("distance of the result", 100, 42_195, "metres")
RESULT_SECONDS = Bounds("time of the result", 10, 28_800, "seconds", TENTH)
AGE = Bounds("age", 8, 100, "years")
MASS_KG = Bounds("mass", 20, 250, "kg", TENTH)
HEART_RATE_REST = Bounds("resting heart rate", 25, 120, "beats a minute")
HEART_RATE_MAX = Bounds("highest heart rate", 90, 230, "beats a minute")
HEART_RATES_APART = 30
"""Beats a minute from the resting heart rate to the highest, at least: nearer, one of them is a slip [C]."""
SESSION_MINUTES = Bounds("length of the session", 1, 720, "minutes")
SESSIONS_A_DAY = 5
