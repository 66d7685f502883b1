"""A mistake in the shorthand: the line and column, what was read there, and what would be accepted."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from planner.errors import InputError, Problem

MOST_PROBLEMS = 20
"""Nobody mends more mistakes than these before asking again."""


@dataclass(frozen=True, slots=True)
class ShorthandProblem(Problem):
    """A Problem with its place in the text; lines and columns count from 1."""

    line: int = 1
    column: int = 1
    received: str = ""
    accepted: tuple[str, ...] = ()


class ShorthandError(InputError):
    """Shorthand that cannot be read; its `problems` are ShorthandProblems in the order of the text."""

    problems: tuple[ShorthandProblem, ...]

    def __init__(self, problems: Iterable[ShorthandProblem]) -> None:
        in_order: list[ShorthandProblem] = sorted(problems, key=lambda p: (p.line, p.column))
        super().__init__(in_order[:MOST_PROBLEMS])


class MistakeError(Exception):
    """Raised inside the reader, before the line is known; the column counts from 0."""

    def __init__(
        self, column: int, sentence: str, received: str = "", accepted: tuple[str, ...] = ()
    ) -> None:
        self.column, self.sentence, self.received, self.accepted = column, sentence, received, accepted
        super().__init__(sentence)

    def on(self, line: int) -> ShorthandProblem:
        """The same mistake on its line."""
        place = f"line {line}, column {self.column + 1}"
        return ShorthandProblem(
            "/text", f"{place}: {self.sentence}", line, self.column + 1, self.received, self.accepted
        )
