"""A plan in a file of YAML: header fields, and each part's blocks as shorthand, read as one text.

The YAML library is handed in by the two places that know it, so that the planner runs without one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from planner.athlete import Level
from planner.errors import InputError, Problem
from planner.notation.mistake import ShorthandError
from planner.notation.reader import read
from planner.plan import Plan

HEADERS = ("title", "summary", "set-up", "setting")
FIELDS = ("title", "kind", "level", "summary", "set-up", "setting", "parts")
NEEDED = ("title", "kind", "summary", "parts")
PARTS = ("warm-up", "main", "cool-down", "gap")
LONGEST_FILE = 64 * 1024
LONGEST_KIND = 24


@dataclass(frozen=True, slots=True)
class PlanFile:
    """What a file says: a plan, its kind for the library, and the least level of those it is for."""

    kind: str
    level: Level
    plan: Plan


class PlanFileError(InputError):
    """A plan file that cannot be used, and the line at fault."""

    def __init__(self, line: int, reason: str) -> None:
        self.line, self.reason = line, reason
        super().__init__([Problem("", f"line {line}: {reason}")])


@dataclass(frozen=True, slots=True)
class _Line:
    """A line of shorthand, and the line of the file that it comes from."""

    text: str
    number: int


def read_plan_file(text: str, yaml: Any) -> PlanFile:
    """The plan in a file's text, by the YAML library `yaml`. Raises PlanFileError."""
    if len(text.encode()) > LONGEST_FILE:
        raise PlanFileError(1, f"the file is longer than {LONGEST_FILE} bytes")
    fields = _fields_in(text, yaml)
    kind = _scalar(fields["kind"])
    if not 0 < len(kind) <= LONGEST_KIND:
        raise PlanFileError(_line_of(fields["kind"]), f"kind: has to have 1 to {LONGEST_KIND} characters")
    return PlanFile(kind, _level_in(fields), _read([*_header_lines(fields), *_part_lines(fields["parts"])]))


def _level_in(fields: dict[str, Any]) -> Level:
    """A file that names none is for regular rowers."""
    if "level" not in fields:
        return Level.CLUB
    level = _scalar(fields["level"])
    if level not in list(Level):
        known = ", ".join(Level)
        raise PlanFileError(_line_of(fields["level"]), f'level: "{level}" is none; it may be {known}')
    return Level(level)


def _fields_in(text: str, yaml: Any) -> dict[str, Any]:
    """The file's fields as YAML nodes, which know their lines; nothing is built from tags in the file."""
    try:
        root = yaml.compose(text, Loader=yaml.SafeLoader)
    except yaml.MarkedYAMLError as error:
        line = error.problem_mark.line + 1 if error.problem_mark else 1
        raise PlanFileError(line, error.problem or "this is not YAML") from None
    except yaml.YAMLError as error:
        raise PlanFileError(1, str(error)) from None
    except RecursionError:
        raise PlanFileError(1, "its lists or fields stand too deep in each other") from None
    if not isinstance(root, yaml.MappingNode):
        raise PlanFileError(1, "the file holds no fields such as title: and parts:")
    fields: dict[str, Any] = {}
    for key, value in root.value:
        name = _scalar(key)
        if name not in FIELDS or name in fields:
            known = ", ".join(FIELDS)
            raise PlanFileError(_line_of(key), f'"{name}" cannot stand here; once each may {known}')
        fields[name] = value
    for name in NEEDED:
        if name not in fields:
            raise PlanFileError(1, f"the field {name}: is missing")
    return fields


def _header_lines(fields: dict[str, Any]) -> list[_Line]:
    present = [(name, fields[name]) for name in HEADERS if name in fields]
    return [_Line(f"{name}: {' '.join(_scalar(node).split())}", _line_of(node)) for name, node in present]


def _part_lines(parts: Any) -> list[_Line]:
    if not _is(parts, "sequence"):
        raise PlanFileError(_line_of(parts), "parts: is not a list")
    return [line for part in parts.value for line in _lines_of_part(part)]


def _lines_of_part(part: Any) -> list[_Line]:
    pairs = part.value if _is(part, "mapping") else []
    if len(pairs) != 1 or _scalar(pairs[0][0]) not in PARTS:
        raise PlanFileError(_line_of(part), f"a part has to be one of {', '.join(PARTS)}, with a colon")
    ((key, value),) = pairs
    if _scalar(key) == "gap":
        return [_Line(f"gap {_scalar(value)}", _line_of(value))]
    first = _line_of(value) + (1 if value.style == "|" else 0)
    texts = _scalar(value).split("\n")
    return [_Line(_scalar(key), _line_of(key)), *(_Line(text, first + i) for i, text in enumerate(texts))]


def _read(lines: list[_Line]) -> Plan:
    """The whole file as a coach would write it, so that one reader reads everything."""
    try:
        return read("\n".join(line.text for line in lines))
    except ShorthandError as error:
        first = error.problems[0]
        reason = first.sentence.removeprefix(f"line {first.line}, column {first.column}: ")
        raise PlanFileError(lines[first.line - 1].number, reason) from None


def _is(node: Any, kind: str) -> bool:
    """Whether a node is a scalar, a sequence or a mapping, as it says itself; an empty file has no node."""
    return node is not None and node.id == kind


def _scalar(node: Any) -> str:
    if _is(node, "scalar"):
        return str(node.value)
    raise PlanFileError(_line_of(node), "text has to stand here")


def _line_of(node: Any) -> int:
    return int(node.start_mark.line) + 1
