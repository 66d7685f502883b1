"""The coach's shorthand read to a plan, line by line, so that each mistake is named in its own place."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial

from lark import Token, Tree

from planner import limits
from planner.expansion import check
from planner.limits import LINE_LENGTH, NOTE_LENGTH, TITLE_LENGTH, WORD_LENGTH
from planner.notation.drafts import item_of, step_of, time_in, times_of
from planner.notation.lines import read_line
from planner.notation.mistake import MOST_PROBLEMS, MistakeError, ShorthandError, ShorthandProblem
from planner.notation.outline import Outline
from planner.notation.tokens import timed
from planner.plan import Call, Gap, Open, PartKind, Plan, Setting
from planner.text import clean

UNTITLED = "My session"
MOST_CHARACTERS = 262_144
"""As many as a request may hold, so that whatever plan comes in can also stand as text."""
MOST_LINES = 15_000
MOST_IN_LINE = 1_000

# Signs as phones and word processors write them, each to one plain sign, so that columns stay as they are.
_PLAIN = str.maketrans(
    dict.fromkeys("’‘′ʹ´`", "'")
    | dict.fromkeys("”“″ʺ„", '"')
    | dict.fromkeys("–—−‐‑", "-")
    | dict.fromkeys("\t\u00a0\u2007\u2009\u200a\u202f\u3000", " ")
    | {"✕": "x", "✖": "x"}
)


def _line(pattern: str) -> re.Pattern[str]:
    """A whole line. Spaces in patterns are possessive runs: each is looked at once, however long it is."""
    return re.compile(r"\s*+" + pattern.replace(" ", r"\s*+"), re.I | re.A | re.S)


_HEADER = _line(r"(title|summary|set[- ]?up)\b :? (.*)")
_HEADING = _line(r"(?:(warm-?up)|(main(?: piece| set)?)|(cool-?down)) :? ".replace("-?", "(?:-| )?"))
_GAP = _line(r"gap\b :? (.*)")
_NOTE = _line(r"(focus|drill)\b :? (.*)")
_CALL = _line(r"call\b(?: (at|last)\b)? :? (.*)")
_COUNTED = re.compile(
    r"(?:stroke\s+)?(\d{1,6})(?:\s+strokes?)?(?:\s+left)?(?:\s*:\s*|\s+|$)(.*)", re.I | re.A | re.S
)
_SETTING = _line(r"(?:setting\b :? )?(?:(lever)|(drag(?: factor)?))\b :? (\d{1,6}) ")
_SETTING_WORD = _line(r"(setting|lever|drag)\b")
_UNCOUNTED = "a call is placed by strokes: write call at 10: ... or call last 5: ..., or call: and the words"
_KINDS = (PartKind.WARM_UP, PartKind.MAIN, PartKind.COOL_DOWN)


def read(text: str) -> Plan:
    """The plan that a whole text describes; raises ShorthandError with the mistakes found."""
    reading = _Reading()
    for number, line in enumerate(_lines_of(text), start=1):
        reading.take(number, line)
    plan = reading.plan()
    if reading.problems:
        raise ShorthandError(reading.problems)
    return plan


def _lines_of(text: str) -> list[str]:
    lines = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    if len(text) > MOST_CHARACTERS or len(lines) > MOST_LINES:
        sentence = f"the text is longer than {MOST_LINES} lines or {MOST_CHARACTERS} characters: shorten it"
        raise ShorthandError([MistakeError(0, sentence).on(1)])
    return lines


class _Reading:
    """A text half read: its header, its outline, and the mistakes so far."""

    def __init__(self) -> None:
        self.header: dict[str, str] = {}
        self.setting: Setting | None = None
        self.outline = Outline()
        self.problems: list[ShorthandProblem] = []
        self.number = 0

    def take(self, number: int, line: str) -> None:
        """Reads one line; a mistake in it is kept, and the reading goes on."""
        if len(self.problems) >= MOST_PROBLEMS:
            return
        self.number = number
        try:
            self._take(line, line.translate(_PLAIN))
        except MistakeError as mistake:
            self.problems.append(mistake.on(number))

    def _take(self, line: str, plain: str) -> None:
        if len(line) > MOST_IN_LINE:
            sentence = f"a line of {len(line)} characters is longer than {MOST_IN_LINE}"
            raise MistakeError(MOST_IN_LINE, sentence)
        if not plain.strip():
            return
        if found := _HEADER.fullmatch(plain):
            self._take_header(found, line)
        elif found := _HEADING.fullmatch(plain):
            kind = next(kind for kind, word in zip(_KINDS, found.groups(), strict=True) if word)
            self.outline.begin(kind, self.number)
        elif found := _GAP.fullmatch(plain):
            self._take_gap(found)
        elif found := _NOTE.fullmatch(plain):
            self._take_note(found, line)
        elif found := _CALL.fullmatch(plain):
            self._take_call(found, line)
        elif found := _SETTING_WORD.match(plain):
            self._take_setting(plain, found)
        else:
            self._take_steps(plain)

    def _take_header(self, found: re.Match[str], line: str) -> None:
        name = "set-up" if found[1].lower().startswith("set") else found[1].lower()
        if name in self.header:
            raise MistakeError(found.start(1), f"a second {name}: a plan has one", found[1])
        limit = TITLE_LENGTH if name == "title" else NOTE_LENGTH
        # Kept even when it is wrong, so that a second one is not taken for the first.
        self.header[name] = ""
        self.header[name] = _cleaned(line, found.start(2), limit)

    def _take_gap(self, found: re.Match[str]) -> None:
        gap = Gap(1)
        try:
            # Blanks stand for the word, so that columns stay as they are.
            gap = Gap(timed(time_in(read_line(" " * found.start(1) + found[1], "gap"))))
        finally:
            self.outline.begin(gap, self.number)

    def _take_note(self, found: re.Match[str], line: str) -> None:
        name = found[1].lower()
        block = self.outline.block_above(found.start(1), name)
        if getattr(block, name) is not None:
            raise MistakeError(found.start(1), f"a second {name} for one block: a block has one", found[1])
        setattr(block, name, "")
        setattr(block, name, _cleaned(line, found.start(2), LINE_LENGTH if name == "focus" else WORD_LENGTH))

    def _take_call(self, found: re.Match[str], line: str) -> None:
        block = self.outline.block_above(_indent_of(line), "call")
        if len(block.calls) == limits.CALLS_IN_BLOCK:
            raise MistakeError(_indent_of(line), f"more than {limits.CALLS_IN_BLOCK} calls for one block")
        if found[1] is None:
            block.calls.append(Call(_cleaned(line, found.start(2), LINE_LENGTH)))
            return
        counted = _COUNTED.fullmatch(found[2])
        if not counted:
            raise MistakeError(found.start(1), _UNCOUNTED, f"{found[1]} {found[2]}"[:40].strip())
        stroke = int(counted[1])
        if complaint := limits.BLOCK_STROKES.complaint(stroke):
            raise MistakeError(found.start(2) + counted.start(1), complaint, counted[1])
        text = _cleaned(line, found.start(2) + counted.start(2), LINE_LENGTH)
        if found[1].lower() == "at":
            block.calls.append(Call(text, stroke=stroke))
        elif isinstance(block.length, Open):
            raise MistakeError(found.start(1), "an open block has no last strokes: use call at", found[1])
        else:
            block.calls.append(Call(text, strokes_left=stroke))

    def _take_setting(self, plain: str, word: re.Match[str]) -> None:
        found = _SETTING.fullmatch(plain)
        if not found:
            sentence = "a setting is written setting: lever 4 or setting: drag factor 120"
            raise MistakeError(word.start(1), sentence, plain.strip()[:40])
        bounds = limits.LEVER if found[1] else limits.DRAG_FACTOR
        value = int(found[3])
        if complaint := bounds.complaint(value):
            raise MistakeError(found.start(3), complaint, found[3])
        owner = self if self.outline.is_empty else self.outline.block_above(word.start(1), "setting")
        if owner.setting is not None:
            raise MistakeError(word.start(1), "a second setting here: leave one of them out", word[1])
        owner.setting = Setting(lever=value) if found[1] else Setting(drag_factor=value)

    def _take_steps(self, plain: str) -> None:
        try:
            change = self._change_by(read_line(plain))
        except MistakeError:
            self.outline.lose(self.number, plain.strip())
            raise
        change()

    def _change_by(self, tree: Tree[Token]) -> Callable[[], None]:
        """What a line does to the outline, once everything in it is known to be right."""
        outline, line = self.outline, self.number
        match tree.data:
            case "opening":
                return partial(outline.open, times_of(_token(tree)), line)
            case "closing":
                return partial(outline.close, line)
            case "closing_between":
                return partial(outline.close, line, item_of(_subtree(tree), line))
            case "closing_opening":
                return partial(outline.close, line, then_open=True)
        return partial(outline.add, step_of(_subtree(tree), line), line)

    def plan(self) -> Plan:
        """The plan as read; what is wrong with it as a whole joins the problems."""
        if (line := self.outline.open_line) is not None:
            self.problems.append(MistakeError(0, "this bracket is never closed: add a line with )").on(line))
        parts, finishing = self.outline.finished()
        self.problems += finishing.problems
        header = self.header
        plan = Plan(
            header.get("title", UNTITLED), parts, header.get("summary"), header.get("set-up"), self.setting
        )
        if not self.problems:
            for problem in check(plan):
                self.problems.append(MistakeError(0, problem.sentence).on(finishing.line_of(problem.pointer)))
        return plan


def _indent_of(line: str) -> int:
    return len(line) - len(line.lstrip())


def _cleaned(line: str, start: int, limit: int) -> str:
    text = line[start:]
    try:
        return clean(text, limit)
    except ValueError as trouble:
        raise MistakeError(start, str(trouble), text[:40].strip()) from None


def _token(tree: Tree[Token]) -> Token:
    child = tree.children[0]
    assert isinstance(child, Token)
    return child


def _subtree(tree: Tree[Token]) -> Tree[Token]:
    child = tree.children[0]
    assert isinstance(child, Tree)
    return child
