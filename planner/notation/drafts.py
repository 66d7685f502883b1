"""Blocks while they are being read: lines below a block still add to it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from lark import Token, Tree

from planner import limits
from planner.notation.mistake import MistakeError, ShorthandProblem
from planner.notation.tokens import column_of, effort_of, length_of, timed, whole
from planner.plan import (
    Block,
    Call,
    Drill,
    Effort,
    ForSeconds,
    ForStrokes,
    Length,
    Repeat,
    Rest,
    Setting,
    Step,
)


@dataclass(frozen=True, slots=True)
class Sides:
    """A drill's sides, seconds on each, and seconds to swap."""

    count: int
    side_seconds: int
    swap_seconds: int | None

    @property
    def seconds(self) -> int:
        """How long the sides and swaps last together."""
        return self.count * self.side_seconds + (self.count - 1) * (self.swap_seconds or 0)


@dataclass(slots=True)
class BlockDraft:
    """A block with its line and its column there, counted from 0."""

    line: int
    column: int
    length: Length
    rate: int | None = None
    effort: Effort | None = None
    sides: Sides | None = None
    drill: str | None = None
    focus: str | None = None
    setting: Setting | None = None
    calls: list[Call] = field(default_factory=list)

    def finished(self) -> Block:
        """The block as it stands."""
        drill = None
        if self.drill and self.sides:
            drill = Drill(self.drill, self.sides.count, self.sides.side_seconds, self.sides.swap_seconds)
        elif self.drill:
            drill = Drill(self.drill)
        return Block(self.length, self.rate, self.effort, drill, self.focus, tuple(self.calls), self.setting)


@dataclass(slots=True)
class RepeatDraft:
    """A repeat whose blocks are still open to change."""

    line: int
    times: int
    blocks: list[StepDraft] = field(default_factory=list)
    between: list[StepDraft] = field(default_factory=list)


StepDraft = BlockDraft | RepeatDraft | Rest


@dataclass(slots=True)
class Finishing:
    """Makes drafts into steps; learns on which line each place of the plan stands, and what is missing."""

    lines: dict[str, int] = field(default_factory=dict)
    problems: list[ShorthandProblem] = field(default_factory=list)

    def steps(self, drafts: Iterable[StepDraft], place: str) -> tuple[Step, ...]:
        """The steps of some drafts, written at this place of the plan."""
        return tuple(self._step(draft, f"{place}/{index}") for index, draft in enumerate(drafts))

    def line_of(self, pointer: str) -> int:
        """The line of the nearest place around a pointer that was written on a line of its own."""
        while pointer and pointer not in self.lines:
            pointer = pointer.rpartition("/")[0]
        return self.lines.get(pointer, 1)

    def _step(self, draft: StepDraft, place: str) -> Step:
        if isinstance(draft, Rest):
            return draft
        self.lines[place] = draft.line
        if isinstance(draft, RepeatDraft):
            blocks = self.steps(draft.blocks, f"{place}/blocks")
            return Repeat(draft.times, blocks, self.steps(draft.between, f"{place}/between"))
        if draft.sides and not draft.drill:
            sentence = "a length by sides needs a line below it that names the drill, such as drill: one foot"
            self.problems.append(MistakeError(draft.column, sentence, "each side").on(draft.line))
        return draft.finished()


def step_of(tree: Tree[Token], line: int) -> StepDraft:
    """The draft of a `step` tree, or of what stands in one."""
    match tree.data:
        case "step":
            return step_of(_tree(tree.children[0]), line)
        case "rest":
            return Rest(timed(time_in(tree)))
        case "block":
            return _block_of(tree, line)
    times, *items = tree.children
    blocks, between = [item_of(_tree(item), line) for item in items] + [[]] * (2 - len(items))
    return RepeatDraft(line, times_of(_token(times)), blocks, between)


def item_of(tree: Tree[Token], line: int) -> list[StepDraft]:
    """The drafts of what is repeated, or of what comes between."""
    return [step_of(_tree(child), line) for child in tree.children]


def times_of(token: Token) -> int:
    """How often a repeat is rowed."""
    return whole(token, limits.TIMES, count_in(token))


def time_in(tree: Tree[Token]) -> Token:
    """The time of a rest or a gap."""
    return next(_token(child) for child in tree.children if _token(child).type == "TIME")


def _block_of(tree: Tree[Token], line: int) -> BlockDraft:
    length, *asked = tree.children
    if isinstance(length, Tree):
        sides = _sides_of(length)
        draft = BlockDraft(
            line, column_of(_token(length.children[0])), ForSeconds(sides.seconds), sides=sides
        )
    else:
        draft = BlockDraft(line, column_of(length), length_of(length))
    for child in asked:
        if isinstance(child, Tree):
            draft.effort = effort_of(_token(child.children[0]))
        else:
            draft.rate = whole(child, limits.RATE, count_in(child))
    if isinstance(draft.length, ForStrokes) and draft.rate is None:
        raise MistakeError(draft.column, "a length in strokes needs a rate, such as r22", str(length))
    return draft


def _sides_of(tree: Tree[Token]) -> Sides:
    tokens = [_token(child) for child in tree.children]
    times = next((token for token in tokens if token.type == "TIMES"), None)
    side, *swap = (token for token in tokens if token.type == "TIME")
    return Sides(
        whole(times, limits.SIDES, 2 * count_in(times)) if times else 2,
        timed(side, limits.SIDE_SECONDS),
        timed(swap[0], limits.SWAP_SECONDS) if swap else None,
    )


def count_in(token: Token) -> int:
    """The one whole number of a token such as r20 or 6 x."""
    return int("".join(filter(str.isdigit, token)))


def _token(child: Token | Tree[Token]) -> Token:
    assert isinstance(child, Token)
    return child


def _tree(child: Token | Tree[Token]) -> Tree[Token]:
    assert isinstance(child, Tree)
    return child
