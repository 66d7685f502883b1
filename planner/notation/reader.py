"""The coach's shorthand read to a plan, line by line, so that each mistake is named in its own place."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from lark import Token, Tree

from planner import limits
from planner.expansion import check
from planner.limits import LINE_LENGTH, NOTE_LENGTH, TITLE_LENGTH, WORD_LENGTH
from planner.notation.drafts import (
    BlockDraft,
    RepeatDraft,
    StepDraft,
    finished,
    item_of,
    rest_of,
    step_of,
    times_of,
)
from planner.notation.lines import read_line
from planner.notation.mistake import MistakeError, ShorthandError, ShorthandProblem
from planner.plan import Call, Gap, Open, Part, PartKind, Plan, Setting, Step
from planner.text import clean

UNTITLED = "My session"
MOST_CHARACTERS = 20_000
MOST_LINES = 600
MOST_IN_LINE = 1_000

_STRAIGHT = str.maketrans(
    dict.fromkeys("’‘′ʹ´`", "'")
    | dict.fromkeys("”“″ʺ„", '"')
    | dict.fromkeys("–—−‐‑", "-")
    | dict.fromkeys("\t\u00a0\u2007\u2009\u200a\u202f\u3000", " ")
)
# Possessive (*+): a run of spaces is looked at once, however long it is.
_HEADER = re.compile(r"\s*(title|summary|set-?up)\s*:\s*(.*)", re.I)
_HEADING = re.compile(r"\s*+(?:(warm[- ]?up)|(main(?: piece)?)|(cool[- ]?down))\s*+:?\s*+", re.I)
_GAP = re.compile(r"\s*gap\b\s*:?\s*(.*)", re.I)
_NOTE = re.compile(r"\s*(focus|drill)\b\s*:?\s*(.*)", re.I)
_CALL = re.compile(r"\s*call\b\s*(?:(at|last)\s+(\d{1,6})\s*(?:strokes?\s*)?)?:?\s*(.*)", re.I)
_SETTING = re.compile(r"\s*+setting\b\s*+:?\s*+(?:(lever)|(drag factor))\s++(\d{1,6})\s*+", re.I)
_SETTING_WORD = re.compile(r"\s*setting\b", re.I)
_KINDS = (PartKind.WARM_UP, PartKind.MAIN, PartKind.COOL_DOWN)


def read(text: str) -> Plan:
    """The plan that a whole text describes; raises ShorthandError with every mistake found."""
    reading = _read_lines(text)
    plan = reading.plan()
    if reading.problems:
        raise ShorthandError(reading.problems)
    return plan


def read_blocks(text: str) -> tuple[Step, ...]:
    """The blocks of one part, written without headings; raises ShorthandError."""
    plan = read(text)
    if len(plan.parts) == 1 and isinstance(plan.parts[0], Part):
        return plan.parts[0].blocks
    raise ShorthandError([MistakeError(0, "only blocks can stand here, without headings or gaps").on(1)])


def _read_lines(text: str) -> _Reading:
    lines = text.removeprefix("\ufeff").split("\n")
    if len(text) > MOST_CHARACTERS or len(lines) > MOST_LINES:
        sentence = f"the text is longer than {MOST_LINES} lines or {MOST_CHARACTERS} characters: shorten it"
        raise ShorthandError([MistakeError(0, sentence).on(1)])
    reading = _Reading()
    for number, line in enumerate(lines, start=1):
        reading.take(number, line.rstrip("\r"))
    return reading


@dataclass(slots=True)
class _PartDraft:
    kind: PartKind
    line: int
    steps: list[StepDraft] = field(default_factory=list)


@dataclass(slots=True)
class _Frame:
    """An opened bracket: where its blocks go, and the repeat it belongs to."""

    repeat: RepeatDraft
    steps: list[StepDraft]
    line: int
    is_between: bool = False


class _Reading:
    """What has been read so far: parts, opened brackets, the block that the next lines may add to."""

    def __init__(self) -> None:
        self.header: dict[str, str] = {}
        self.setting: Setting | None = None
        self.parts: list[_PartDraft | Gap] = []
        self.frames: list[_Frame] = []
        self.latest: list[StepDraft] = []
        self.problems: list[ShorthandProblem] = []
        self.number = 0

    def take(self, number: int, line: str) -> None:
        """Reads one line; a mistake in it is kept, and the reading goes on."""
        self.number = number
        try:
            if line.strip():
                self._take(line)
        except MistakeError as mistake:
            self.problems.append(mistake.on(number))

    def _take(self, line: str) -> None:
        if len(line) > MOST_IN_LINE:
            raise MistakeError(
                MOST_IN_LINE, f"a line of {len(line)} characters is longer than {MOST_IN_LINE}"
            )
        if found := _HEADER.fullmatch(line):
            self._take_header(found)
        elif found := _HEADING.fullmatch(line):
            self._outside_brackets("a heading")
            kind = next(k for k, word in zip(_KINDS, found.groups(), strict=True) if word)
            self.parts.append(_PartDraft(kind, self.number))
            self.latest = []
        elif found := _GAP.fullmatch(line):
            self._take_gap(found)
        elif found := _NOTE.fullmatch(line):
            self._take_note(found)
        elif found := _CALL.fullmatch(line):
            self._take_call(found)
        elif _SETTING_WORD.match(line):
            self._take_setting(line)
        else:
            self._take_steps(read_line(line.translate(_STRAIGHT)))

    def _take_header(self, found: re.Match[str]) -> None:
        name = found[1].lower().replace("setup", "set-up")
        if name in self.header:
            raise MistakeError(found.start(1), f"a second {name}: a plan has one", found[1])
        limit = TITLE_LENGTH if name == "title" else NOTE_LENGTH
        self.header[name] = _cleaned(found, 2, limit)

    def _take_gap(self, found: re.Match[str]) -> None:
        self._outside_brackets("a gap")
        tree = _steps_only(found, 1, "a gap needs a length of time, such as gap 5'")
        self.parts.append(Gap(rest_of(tree).seconds))
        self.latest = []

    def _take_note(self, found: re.Match[str]) -> None:
        name = found[1].lower()
        block = self._block_for(found.start(1), name)
        limit = LINE_LENGTH if name == "focus" else WORD_LENGTH
        if getattr(block, name) is not None:
            raise MistakeError(found.start(1), f"a second {name} for one block: a block has one", found[1])
        setattr(block, name, _cleaned(found, 2, limit))

    def _take_call(self, found: re.Match[str]) -> None:
        block = self._block_for(len(found[0]) - len(found[0].lstrip()), "call")
        text = _cleaned(found, 3, LINE_LENGTH)
        if len(block.calls) == limits.CALLS_IN_BLOCK:
            raise MistakeError(0, f"more than {limits.CALLS_IN_BLOCK} calls for one block")
        if found[1] is None:
            block.calls.append(Call(text))
            return
        count = int(found[2])
        if complaint := limits.BLOCK_STROKES.complaint(count):
            raise MistakeError(found.start(2), complaint, found[2])
        if found[1].lower() == "at":
            block.calls.append(Call(text, stroke=count))
        elif isinstance(block.length, Open):
            raise MistakeError(found.start(1), "an open block has no last strokes: use call at", found[1])
        else:
            block.calls.append(Call(text, strokes_left=count))

    def _take_setting(self, line: str) -> None:
        found = _SETTING.fullmatch(line)
        if not found:
            sentence = "a setting is written setting: lever 4 or setting: drag factor 120"
            raise MistakeError(len(line) - len(line.lstrip()), sentence, line.strip())
        bounds = limits.LEVER if found[1] else limits.DRAG_FACTOR
        value = int(found[3])
        if complaint := bounds.complaint(value):
            raise MistakeError(found.start(3), complaint, found[3])
        setting = Setting(lever=value) if found[1] else Setting(drag_factor=value)
        if not self.parts:
            self.setting = setting
        else:
            self._block_for(0, "setting").setting = setting

    def _block_for(self, column: int, what: str) -> BlockDraft:
        """The one block that the line before it wrote, which this line adds to."""
        if not self.latest:
            raise MistakeError(column, f"{what} belongs below a block: write the block first", what)
        if len(self.latest) == 1 and isinstance(self.latest[0], BlockDraft):
            return self.latest[0]
        raise MistakeError(
            column, f"{what} needs one block above it: give each block of the group a line", what
        )

    def _outside_brackets(self, what: str) -> None:
        if self.frames:
            line = self.frames.pop().line
            self.frames.clear()
            raise MistakeError(0, f"{what} stands inside the bracket opened on line {line}: close it with )")

    def _take_steps(self, tree: Tree[Token]) -> None:
        match tree.data:
            case "opening":
                repeat = RepeatDraft(self.number, times_of(_token(tree, 0)))
                self._steps().append(repeat)
                self._open(_Frame(repeat, repeat.blocks, self.number))
            case "closing":
                self._close()
            case "closing_between":
                frame = self._close(then_between=True)
                frame.repeat.between.extend(item_of(_subtree(tree), self.number))
                self.latest = []
            case "closing_opening":
                repeat = self._close(then_between=True).repeat
                self._open(_Frame(repeat, repeat.between, self.number, is_between=True))
            case _:
                draft = step_of(_subtree(tree), self.number)
                self._steps().append(draft)
                self.latest = draft.blocks if isinstance(draft, RepeatDraft) else [draft]

    def _open(self, frame: _Frame) -> None:
        if len(self.frames) > limits.DEPTH:
            raise MistakeError(0, f"repeats stand more than {limits.DEPTH} deep: write the inner ones out")
        self.frames.append(frame)
        self.latest = []

    def _steps(self) -> list[StepDraft]:
        if self.frames:
            return self.frames[-1].steps
        if not self.parts or isinstance(self.parts[-1], Gap):
            self.parts.append(_PartDraft(PartKind.MAIN, self.number))
        part = self.parts[-1]
        assert isinstance(part, _PartDraft)
        return part.steps

    def _close(self, *, then_between: bool = False) -> _Frame:
        if not self.frames:
            raise MistakeError(0, "this bracket closes nothing: open a repeat first, such as 3 x (", ")")
        frame = self.frames.pop()
        self.latest = []
        if not frame.steps:
            raise MistakeError(0, f"the bracket opened on line {frame.line} is empty", ")")
        if then_between and frame.is_between:
            raise MistakeError(0, "only one thing can come between repetitions", ")")
        return frame

    def plan(self) -> Plan:
        """The plan as read; what is wrong with it as a whole joins the problems."""
        if self.frames and not self.problems:
            line = self.frames[-1].line
            self.problems.append(MistakeError(0, "this bracket is never closed: add a line with )").on(line))
        lines: dict[str, int] = {}
        parts = tuple(self._finished_parts(lines))
        header = self.header
        plan = Plan(
            header.get("title", UNTITLED), parts, header.get("summary"), header.get("set-up"), self.setting
        )
        if not self.problems:
            for problem in check(plan):
                self.problems.append(MistakeError(0, problem.sentence).on(_line_of(problem.pointer, lines)))
        return plan

    def _finished_parts(self, lines: dict[str, int]) -> list[Part | Gap]:
        parts: list[Part | Gap] = []
        for index, part in enumerate(self.parts):
            if isinstance(part, Gap):
                parts.append(part)
                continue
            place = f"/parts/{index}"
            lines[place] = part.line
            parts.append(Part(part.kind, self._finished_steps(part.steps, f"{place}/blocks", lines)))
        return parts

    def _finished_steps(self, steps: list[StepDraft], place: str, lines: dict[str, int]) -> tuple[Step, ...]:
        try:
            return finished(steps, place, lines)
        except MistakeError as mistake:
            self.problems.append(mistake.on(max(lines.values())))
            return ()


def _line_of(pointer: str, lines: dict[str, int]) -> int:
    """The line of the nearest place around a pointer that was written on a line of its own."""
    while pointer and pointer not in lines:
        pointer = pointer.rpartition("/")[0]
    return lines.get(pointer, 1)


def _cleaned(found: re.Match[str], group: int, limit: int) -> str:
    try:
        return clean(found[group], limit)
    except ValueError as trouble:
        raise MistakeError(found.start(group), str(trouble), found[group][:40]) from None


def _steps_only(found: re.Match[str], group: int, otherwise: str) -> Tree[Token]:
    text = found[group].translate(_STRAIGHT)
    try:
        return next(read_line(f"{text} rest").find_data("rest"))
    except (MistakeError, StopIteration):
        raise MistakeError(found.start(group), otherwise, text) from None


def _token(tree: Tree[Token], index: int) -> Token:
    child = tree.children[index]
    assert isinstance(child, Token)
    return child


def _subtree(tree: Tree[Token]) -> Tree[Token]:
    child = tree.children[0]
    assert isinstance(child, Tree)
    return child
