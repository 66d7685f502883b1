"""A session on a phone by the model: what absences, moved clocks, reloads and kills do to its time.

What a page had stored when it went is read from storage; here it is judged and gone on with.
"""

from __future__ import annotations

import copy
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from tests.chaos.faces import BLUR, clock, rounded
from tests.chaos.model import Block, Over, Session

ASK_AFTER = 60
TOO_LONG = 12 * 3600
CORRECTION = 2
"""A clock that is set back by less than this has been corrected, and nobody is asked."""
UNRECORDED = Fraction("1.25")
"""The promise is a second; looks are a fifth of a second apart."""


@dataclass(frozen=True, slots=True)
class Asked:
    """The question that stands: since when nobody looked, for how long, and what may be answered."""

    since: Fraction
    away: Fraction
    kind: str

    @property
    def titles(self) -> set[str]:
        """What the question's heading may be."""
        if self.kind == "choose":
            return {f"You were away for {clock(rounded(self.away + blur))}" for blur in (-BLUR, BLUR)}
        return {"You were away" if self.kind == "unsure" else "A session was left open"}


@dataclass(frozen=True, slots=True)
class Happened:
    """One thing that happened to the session: the name of the model's method, and what it was given."""

    name: str
    given: tuple[Any, ...]


class Phone:
    """The session, its time, and the question that stands. All moments are seconds of the session."""

    def __init__(self, blocks: list[Block]) -> None:
        self.blocks = blocks
        self.session = Session(blocks)
        self.happened: list[Happened] = []
        self.now = Fraction(0)
        self.asked: Asked | None = None

    def do(self, name: str, *given: Any) -> None:
        """Something happens now."""
        at = max(self.now, self.session.last)
        self.happened.append(Happened(name, (at, *given)))
        getattr(self.session, name)(at, *given)

    def run(self, seconds: Fraction) -> None:
        """Time goes by under somebody's eyes, or with the page awake behind another."""
        self.now += seconds

    def away(self, seconds: Fraction) -> None:
        """Time goes by and the page does not look, or believes so because the wall clock says it."""
        since = self.now
        self.now += seconds
        self._judge(since, seconds)

    def answer(self, how: str) -> None:
        """The answer to the question that stands: "clock", "stopped" or "end"."""
        assert self.asked
        since, self.asked = self.asked.since, None
        self.do("returned", since, how == "clock", how == "stopped")
        if how == "end":
            self.do("end")

    def over(self) -> Over | None:
        """The end that has been come to, if there is no question before it."""
        ahead = self.at(self.now)
        return ahead.state if isinstance(ahead.state, Over) and not self.asked else None

    def at(self, moment: Fraction) -> Session:
        """The session as it will be at a moment when nothing happens until then."""
        ahead = copy.deepcopy(self.session)
        ahead.to(max(moment, ahead.last))
        return ahead

    def is_clear(self, moment: Fraction | None = None) -> bool:
        """Whether a blink sooner or later is the same stroke of the same block, and the same for Back."""
        moment = self.now if moment is None else moment
        return len({self.at(moment + blur).mark(moment + blur) for blur in (-BLUR, Fraction(0), BLUR)}) == 1

    def expected_log(self) -> list[str]:
        """What has to stand in the session's log by now; the end by plan writes itself."""
        over = self.over()
        return self.session.log + (["ended"] if over and over.by_plan else [])

    def come_back(self, heartbeat: dict[str, Any], kinds: list[str], wall: Fraction, unsaved: int) -> None:
        """Another page goes on with what is stored when the wall clock shows `wall`.

        So many of the last entries of the log may be `unsaved`: written at the last moment, or while storage
        refused. AssertionError where more is lost than may be.
        """
        expected = self.expected_log()
        assert kinds == expected[: len(kinds)], f"the log holds {kinds}, not {expected}"
        assert len(kinds) >= len(expected) - unsaved, f"the log holds {kinds} of {expected}"
        if len(kinds) < len(self.session.log):
            self._forget(len(kinds))
        life = Fraction(str(heartbeat["session_s"]))
        last_wall = Fraction(str(heartbeat["wall_ms"])) / 1000
        zero = Fraction(str(heartbeat["wall_zero_ms"])) / 1000
        since = max(life, self.session.last)
        gone = wall - last_wall
        self.asked = None
        if -CORRECTION <= gone <= TOO_LONG:
            self.now = max(life, wall - zero)
            self._judge(since, self.now - since)
        else:
            self.now = life
            self.asked = Asked(since, abs(gone), "unsure" if gone < 0 else "too-old")

    def _judge(self, since: Fraction, away: Fraction) -> None:
        if self.asked or away <= ASK_AFTER:
            return
        if not self.at(since).same_either_way(since, self.now):
            self.asked = Asked(since, away, "choose")

    def _forget(self, entries: int) -> None:
        """Back to the state after so many entries of the log, the start being the first."""
        kept = self.happened
        self.session, self.happened = Session(self.blocks), []
        for one in kept:
            if len(self.session.log) >= entries:
                break
            self.happened.append(one)
            getattr(self.session, one.name)(*one.given)
