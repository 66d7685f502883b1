"""Strict fields: each takes one kind of JSON value and says, in a sentence, what it got and what would do."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping
from enum import StrEnum
from fractions import Fraction
from math import isfinite
from typing import Any, Generic, TypeVar

from marshmallow import RAISE, Schema, ValidationError, fields, validates_schema
from marshmallow.types import ErrorMessages

from planner.errors import InputError, Problem, pointer
from planner.limits import Bounds
from planner.text import clean

T = TypeVar("T")
Word = TypeVar("Word", bound=StrEnum)

PROBLEMS = 20
"""The most mistakes told at once: nobody mends more before asking again."""
_OUTSIZED = 10**12
_SHOWN = 24


def received(value: object) -> str:
    """A short, printable name for any JSON value, to stand in a sentence."""
    match value:
        case dict():
            return "an object"
        case list():
            return "a list"
        case str():
            short = value if len(value) <= _SHOWN else value[:_SHOWN] + "…"
            return json.dumps(short, ensure_ascii=not short.isprintable())
        case int() if not isinstance(value, bool) and abs(value) >= _OUTSIZED:
            return "an outsized number"
        case None | bool() | int() | float():
            return json.dumps(value)
        case _:
            return f"a value of type {type(value).__name__}"


class Strict(Schema):
    """An object whose every field is known and of the right kind."""

    class Meta:
        unknown = RAISE

    def __init__(self, **options: Any) -> None:
        super().__init__(**options)
        known = ", ".join(f.data_key or name for name, f in self.load_fields.items())
        unknown = f"there is no such field here; those that may stand here are {known}"
        self.error_messages = {**self.error_messages, "unknown": unknown}


class OneKey(Strict):
    """An object of which exactly one field is given: a choice between kinds of value."""

    @validates_schema
    def _exactly_one(self, data: Mapping[str, object], **_: object) -> None:
        if len(data) != 1:
            known = ", ".join(f.data_key or name for name, f in self.load_fields.items())
            given = ", ".join(data) or "none"
            raise ValidationError(f"exactly one of {known} is needed here, not {given}")


class StrictField(fields.Field[T], Generic[T]):
    """A field with a name for people; `wire` is what the API's description says of its values."""

    def __init__(self, name: str, wire: dict[str, object], **options: Any) -> None:
        super().__init__(error_messages=_absence(name, "is", "it"), metadata=wire, **options)
        self.wanted_name = name

    def refuse(self, value: object, remedy: str) -> ValidationError:
        """The complaint about a value of the wrong kind."""
        return ValidationError(f"{self.wanted_name} is {received(value)}: {remedy}")


def _absence(name: str, verb: str, it: str) -> ErrorMessages:
    return {"required": f"{name} {verb} missing", "null": f"{name} {verb} null: leave {it} out instead"}


class Whole(StrictField[int]):
    """A whole number within bounds; no text, no 1.0, no true."""

    def __init__(self, bounds: Bounds, **options: Any) -> None:
        wire: dict[str, object] = {"type": "integer", "minimum": int(bounds.low), "maximum": int(bounds.high)}
        if bounds.step != 1:
            wire["multipleOf"] = int(bounds.step)
        super().__init__(bounds.name, wire, **options)
        self.bounds = bounds

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> int:
        if type(value) is not int or abs(value) >= _OUTSIZED:
            raise self.refuse(value, f"write a whole number {_range(self.bounds)}")
        if complaint := self.bounds.complaint(value):
            raise ValidationError(complaint)
        return value


class Stepped(StrictField[Fraction]):
    """A number in steps such as tenths, within bounds, kept exactly; no text, no true, no infinity."""

    def __init__(self, bounds: Bounds, **options: Any) -> None:
        wire: dict[str, object] = {
            "type": "number",
            "minimum": number(bounds.low),
            "maximum": number(bounds.high),
            "description": f"{bounds.name}, in steps of {number(bounds.step)}",
        }
        super().__init__(bounds.name, wire, **options)
        self.bounds = bounds

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> Fraction:
        if type(value) not in (int, float) or not _is_modest(value):
            raise self.refuse(value, f"write a number {_range(self.bounds)}")
        exact = Fraction(repr(value))
        if complaint := self.bounds.complaint(exact):
            raise ValidationError(complaint)
        return exact


def _is_modest(value: Any) -> bool:
    return abs(value) < _OUTSIZED and (isinstance(value, int) or isfinite(value))


def _range(bounds: Bounds) -> str:
    return f"from {number(bounds.low)} to {number(bounds.high)} {bounds.unit}".rstrip()


def number(value: Fraction | int) -> int | float:
    """The plainest JSON number for an exact value: 115, 115.5."""
    exact = Fraction(value)
    return exact.numerator if exact.denominator == 1 else float(exact)


def about(text: str, **wire: object) -> dict[str, Any]:
    """The options of a field with a sentence for the API's users."""
    return {"metadata": {"description": text, **wire}}


def word(words: Iterable[StrEnum | str], text: str) -> fields.String:
    """A field of an answer that always holds one of these words."""
    return fields.String(required=True, **about(text, enum=[str(word) for word in words]))


class Line(StrictField[str]):
    """One line of text for people, cleaned, of at most so many characters."""

    def __init__(self, name: str, longest: int, **options: Any) -> None:
        super().__init__(name, {"type": "string", "minLength": 1, "maxLength": longest}, **options)
        self.longest = longest

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> str:
        if not isinstance(value, str):
            raise self.refuse(value, "write a line of text")
        try:
            return clean(value, self.longest)
        except ValueError as error:
            raise ValidationError(f"{self.wanted_name}: {error}") from None


class Text(StrictField[str]):
    """Text of several lines, to be read by a reader of its own; only its length is looked at here."""

    def __init__(self, name: str, longest: int, **options: Any) -> None:
        super().__init__(name, {"type": "string", "maxLength": longest}, **options)
        self.longest = longest

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> str:
        if not isinstance(value, str):
            raise self.refuse(value, "write text")
        if len(value) > self.longest:
            raise ValidationError(
                f"{self.wanted_name} of {len(value)} characters is longer than {self.longest}"
            )
        return value


class OneOf(StrictField[Word], Generic[Word]):
    """One word out of a list."""

    def __init__(self, name: str, words: type[Word], **options: Any) -> None:
        self.words = words
        super().__init__(name, {"type": "string", "enum": [word.value for word in words]}, **options)

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> Word:
        if isinstance(value, str) and value in set(self.words):
            return self.words(value)
        raise self.refuse(value, f"write one of {', '.join(self.words)}")


class Exactly(StrictField[Any]):
    """One value and no other, such as the number of the format, or true."""

    def __init__(self, name: str, value: int | bool | str, **options: Any) -> None:
        kind = {bool: "boolean", int: "integer", str: "string"}[type(value)]
        super().__init__(name, {"type": kind, "enum": [value]}, **options)
        self.value = value

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> Any:
        if type(value) is not type(self.value) or value != self.value:
            raise self.refuse(value, f"only {json.dumps(self.value)} will do")
        return value


class YesNo(StrictField[bool]):
    """True or false; no text, no 1."""

    def __init__(self, name: str, **options: Any) -> None:
        super().__init__(name, {"type": "boolean"}, **options)

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> bool:
        if not isinstance(value, bool):
            raise self.refuse(value, "write true or false")
        return value


class Inside(StrictField[Any]):
    """An object of one kind inside another."""

    def __init__(self, name: str, kind: type[Strict], **options: Any) -> None:
        super().__init__(name, {}, **options)
        self.kind = kind

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> Any:
        if not isinstance(value, dict):
            raise self.refuse(value, "write an object, {...}")
        return schema_of(self.kind).load(value)


class Choice(StrictField[Any]):
    """An object of one of several kinds; `choose` says which one a value is meant to be.

    `component` names the choice in the API's description. `kinds` is a function, so that a kind may hold
    itself.
    """

    def __init__(
        self,
        name: str,
        component: str,
        kinds: Callable[[], tuple[type[Strict], ...]],
        choose: Callable[[Mapping[str, object]], type[Strict]],
        **options: Any,
    ) -> None:
        super().__init__(name, {}, **options)
        self.component, self.kinds, self.choose = component, kinds, choose

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> Any:
        if not isinstance(value, dict):
            raise self.refuse(value, "write an object, {...}")
        return schema_of(self.choose(value)).load(value)


class Several(fields.List[T], Generic[T]):
    """A list of at most so many; its length is looked at before anything in it is."""

    def __init__(self, name: str, inner: fields.Field[T], most: int, **options: Any) -> None:
        super().__init__(
            inner, error_messages=_absence(name, "are", "them"), metadata={"maxItems": most}, **options
        )
        self.wanted_name, self.most = name, most

    def _deserialize(self, value: Any, attr: str | None, data: Any, **options: Any) -> list[T | None]:
        if not isinstance(value, list):
            raise ValidationError(f"{self.wanted_name} are {received(value)}: write a list, [...]")
        if len(value) > self.most:
            raise ValidationError(f"{len(value)} {self.wanted_name} are more than {self.most}")
        return super()._deserialize(value, attr, data, **options)


_schemas: dict[type[Strict], Strict] = {}


def schema_of(kind: type[Strict]) -> Strict:
    """The one instance of a schema: making one is slow, and loading leaves no trace in it."""
    if kind not in _schemas:
        _schemas[kind] = kind()
    return _schemas[kind]


def load(kind: type[Strict], document: object) -> Any:
    """What a document says, by its schema. Raises InputError with a JSON pointer to each mistake."""
    if not isinstance(document, dict):
        raise InputError([Problem("", f"the document is {received(document)}: write an object, {{...}}")])
    try:
        return schema_of(kind).load(document)
    except ValidationError as error:
        raise InputError(_problems(error.messages)) from None


def _problems(messages: object) -> list[Problem]:
    found: list[Problem] = []
    _collect(messages, (), found)
    if len(found) > PROBLEMS:
        more = len(found) - PROBLEMS
        found[PROBLEMS:] = [Problem("", f"{more} more mistakes are not listed: mend these first")]
    return found


def _collect(messages: object, place: tuple[str | int, ...], found: list[Problem]) -> None:
    if isinstance(messages, dict):
        for step, inner in messages.items():
            _collect(inner, place if step == "_schema" else (*place, step), found)
    elif isinstance(messages, list):
        found.extend(Problem(pointer(*place), str(message)) for message in messages)
    else:
        found.append(Problem(pointer(*place), str(messages)))
