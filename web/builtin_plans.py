"""The plans that come with the app: one small YAML file each, read and compiled once, at the start."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

import yaml

from planner.appraisal import Appraisal, appraise
from planner.notation.mistake import ShorthandError
from planner.notation.reader import read
from planner.plan import Plan
from planner.timeline import Timeline, compile_timeline

NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
HEADERS = ("title", "summary", "set-up", "setting")
FIELDS = ("title", "kind", "summary", "set-up", "setting", "parts")
NEEDED = ("title", "kind", "summary", "parts")
PARTS = ("warm-up", "main", "cool-down", "gap")
LONGEST_FILE = 64 * 1024
LONGEST_KIND = 24


@dataclass(frozen=True, slots=True)
class BuiltinPlan:
    """A plan of ours, its kind for the library, its timeline for anybody, and its appraisal."""

    slug: str
    kind: str
    plan: Plan
    timeline: Timeline
    appraisal: Appraisal


@dataclass(frozen=True, slots=True)
class Damaged:
    """A plan file that cannot be used: which, on what line (from 1), and why."""

    file: str
    line: int
    reason: str


@dataclass(frozen=True, slots=True)
class Library:
    """The plans that can be used, by slug, and the files that cannot."""

    plans: dict[str, BuiltinPlan]
    damaged: tuple[Damaged, ...]


class PlanFileError(ValueError):
    """A plan file that cannot be used, and the line at fault."""

    def __init__(self, line: int, reason: str) -> None:
        self.line, self.reason = line, reason
        super().__init__(f"line {line}: {reason}")


@dataclass(frozen=True, slots=True)
class _Line:
    """A line of shorthand, and the line of the file that it comes from."""

    text: str
    number: int


def load_library(folder: Path) -> Library:
    """Every plan file of a folder; a damaged one never keeps the others from being served."""
    plans: dict[str, BuiltinPlan] = {}
    damaged: list[Damaged] = []
    for path in sorted(folder.glob("*.yaml")):
        try:
            plans[path.stem] = load_plan_file(path)
        except PlanFileError as error:
            damaged.append(Damaged(path.name, error.line, error.reason))
    return Library(plans, tuple(damaged))


def load_plan_file(path: Path) -> BuiltinPlan:
    """One plan file. Raises PlanFileError."""
    if not NAME.fullmatch(path.stem):
        raise PlanFileError(1, "the file's name has to be small letters, digits and single hyphens")
    fields = _fields_in(_text_of(path))
    kind = _scalar(fields["kind"])
    if not 0 < len(kind) <= LONGEST_KIND:
        raise PlanFileError(_line_of(fields["kind"]), f"kind: has to have 1 to {LONGEST_KIND} characters")
    plan = _read([*_header_lines(fields), *_part_lines(fields["parts"])])
    timeline = compile_timeline(plan)
    return BuiltinPlan(path.stem, kind, plan, timeline, appraise(timeline))


def _text_of(path: Path) -> str:
    try:
        if path.stat().st_size > LONGEST_FILE:
            raise PlanFileError(1, f"the file is longer than {LONGEST_FILE} bytes")
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        raise PlanFileError(1, "the file is not in UTF-8") from None
    except OSError as error:
        raise PlanFileError(1, f"it cannot be read: {error.strerror}") from None


def _fields_in(text: str) -> dict[str, yaml.Node]:
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
    fields: dict[str, yaml.Node] = {}
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


def _header_lines(fields: dict[str, yaml.Node]) -> list[_Line]:
    present = [(name, fields[name]) for name in HEADERS if name in fields]
    return [_Line(f"{name}: {' '.join(_scalar(node).split())}", _line_of(node)) for name, node in present]


def _part_lines(parts: yaml.Node) -> list[_Line]:
    if not isinstance(parts, yaml.SequenceNode):
        raise PlanFileError(_line_of(parts), "parts: is not a list")
    return [line for part in parts.value for line in _lines_of_part(part)]


def _lines_of_part(part: yaml.Node) -> list[_Line]:
    pairs = part.value if isinstance(part, yaml.MappingNode) else []
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


def _scalar(node: yaml.Node) -> str:
    if isinstance(node, yaml.ScalarNode):
        return str(node.value)
    raise PlanFileError(_line_of(node), "text has to stand here")


def _line_of(node: yaml.Node) -> int:
    return int(node.start_mark.line) + 1
