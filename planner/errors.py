"""What can be wrong with input: where it stands, what was received, what would do."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One mistake: a JSON pointer to its place, and a sentence that holds the value and the remedy."""

    pointer: str
    sentence: str


class InputError(ValueError):
    """Input that cannot be used; `problems` holds at least one Problem."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__("; ".join(f"{p.pointer or '/'}: {p.sentence}" for p in self.problems))


def pointer(*steps: str | int) -> str:
    """A JSON pointer (RFC 6901) to the place reached by these names and indexes."""
    return "".join("/" + str(step).replace("~", "~0").replace("/", "~1") for step in steps)
