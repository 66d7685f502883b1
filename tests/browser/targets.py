"""How a test names what it clicks or looks for: by what it is and is called, as a screen reader would."""

from __future__ import annotations

import re
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any

Name = str | re.Pattern[str]

QUERY = (Path(__file__).parent / "page_query.js").read_text()


@dataclass(frozen=True, slots=True)
class Target:
    """Visible elements of the page, shadow roots included; every field given must hold.

    `name` is the accessible name and `words` the visible text: a string must be the whole of it (blanks
    joined), a pattern need only be found in it. `index` picks one where several are meant.
    """

    role: str | None = None
    name: Name | None = None
    words: Name | None = None
    css: str | None = None
    index: int | None = None

    def nth(self, index: int) -> Target:
        """The same, but only the one at this place among those found, from 0."""
        return replace(self, index=index)

    def as_json(self) -> dict[str, Any]:
        """What page_query.js is given."""
        return {key: _as_json(value) for key, value in asdict(self).items() if value is not None}

    def __str__(self) -> str:
        given = {key: getattr(value, "pattern", value) for key, value in asdict(self).items()}
        return ", ".join(f"{key} {value!r}" for key, value in given.items() if value is not None)


def _as_json(value: object) -> object:
    return {"pattern": value.pattern} if isinstance(value, re.Pattern) else value


def button(name: Name) -> Target:
    """A button, by its accessible name."""
    return Target(role="button", name=name)


def link(name: Name) -> Target:
    """A link, by its accessible name."""
    return Target(role="link", name=name)


def heading(name: Name) -> Target:
    """A heading of any level, by its accessible name."""
    return Target(role="heading", name=name)


def field(name: Name) -> Target:
    """A text field or text area, by its label."""
    return Target(role="textbox", name=name)


def words(text: Name) -> Target:
    """The innermost element whose whole visible text this is, or in whose text the pattern is found."""
    return Target(words=text)


def css(selector: str) -> Target:
    """Elements by selector, where nothing a person perceives tells them apart."""
    return Target(css=selector)
