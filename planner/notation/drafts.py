"""Blocks while they are being read: lines below a block still add to it."""

from __future__ import annotations

from dataclasses import dataclass, field

from lark import Token, Tree

from planner import limits
from planner.notation.mistake import MistakeError
from planner.notation.tokens import column_of, effort_of, length_of, seconds_of, whole
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


@dataclass(slots=True)
class BlockDraft:
    """A block with its line; `sides` is (sides, seconds on a side, seconds to swap)."""

    line: int
    length: Length
    rate: int | None = None
    effort: Effort | None = None
    sides: tuple[int, int, int | None] | None = None
    drill: str | None = None
    focus: str | None = None
    setting: Setting | None = None
    calls: list[Call] = field(default_factory=list)

    def finished(self) -> Block:
        """The block; a length by sides needs the name of its drill."""
        if self.sides and not self.drill:
            raise MistakeError(
                0, "a length by sides needs a line below it that names the drill, such as drill: one foot"
            )
        drill = Drill(self.drill, *(self.sides or ())) if self.drill else None
        return Block(self.length, self.rate, self.effort, drill, self.focus, tuple(self.calls), self.setting)


@dataclass(slots=True)
class RepeatDraft:
    """A repeat whose blocks are still open to change."""

    line: int
    times: int
    blocks: list[StepDraft] = field(default_factory=list)
    between: list[StepDraft] = field(default_factory=list)


StepDraft = BlockDraft | RepeatDraft | Rest


def finished(drafts: list[StepDraft], place: str, lines: dict[str, int]) -> tuple[Step, ...]:
    """The steps of some drafts; `lines` learns on which line each place of the plan stands."""
    return tuple(_finished(draft, f"{place}/{index}", lines) for index, draft in enumerate(drafts))


def _finished(draft: StepDraft, place: str, lines: dict[str, int]) -> Step:
    if isinstance(draft, Rest):
        return draft
    lines[place] = draft.line
    if isinstance(draft, BlockDraft):
        return draft.finished()
    return Repeat(
        draft.times,
        finished(draft.blocks, f"{place}/blocks", lines),
        finished(draft.between, f"{place}/between", lines),
    )


def step_of(tree: Tree[Token], line: int) -> StepDraft:
    """The draft of a `step` tree, or of what stands in one."""
    if tree.data == "step":
        return step_of(_child(tree, 0), line)
    if tree.data == "rest":
        return rest_of(tree)
    if tree.data == "block":
        return _block_of(tree, line)
    times, *items = tree.children
    repeat = RepeatDraft(line, times_of(_token(times)))
    repeat.blocks = item_of(_tree(items[0]), line)
    repeat.between = item_of(_tree(items[1]), line) if len(items) > 1 else []
    return repeat


def item_of(tree: Tree[Token], line: int) -> list[StepDraft]:
    """The drafts of what is repeated, or of what comes between."""
    return [step_of(_tree(child), line) for child in tree.children]


def times_of(token: Token) -> int:
    """How often a repeat is rowed."""
    return whole(token, limits.TIMES, int(str(token).rstrip("xX× \t")))


def rest_of(tree: Tree[Token]) -> Rest:
    """A rest of some seconds."""
    token = next(_token(c) for c in tree.children if _token(c).type == "TIME")
    return Rest(whole(token, limits.BLOCK_SECONDS, seconds_of(token)))


def _block_of(tree: Tree[Token], line: int) -> BlockDraft:
    token = _token(tree.children[0])
    draft = _sided(token, line) if token.type == "SIDES" else BlockDraft(line, length_of(token))
    for ask in tree.children[1:]:
        _add(draft, _token(_tree(ask).children[0]))
    if isinstance(draft.length, ForStrokes) and draft.rate is None:
        raise MistakeError(column_of(token), "a length in strokes needs a rate, such as r22", str(token))
    return draft


def _sided(token: Token, line: int) -> BlockDraft:
    head, _, swap_text = str(token).lower().partition("swap")
    numbers = [int("".join(filter(str.isdigit, n))) for n in head.replace("×", "x").split("x")]
    sides = whole(token, limits.SIDES, 2 * numbers[0] if len(numbers) > 1 else 2)
    side = whole(token, limits.SIDE_SECONDS, numbers[-1])
    swap = (
        whole(token, limits.SWAP_SECONDS, int("".join(filter(str.isdigit, swap_text)))) if swap_text else None
    )
    return BlockDraft(line, ForSeconds(sides * side + (sides - 1) * (swap or 0)), sides=(sides, side, swap))


def _add(draft: BlockDraft, token: Token) -> None:
    if token.type == "RATE":
        if draft.rate is not None:
            raise MistakeError(column_of(token), f"a second rate, {token}: a block has one", str(token))
        draft.rate = whole(token, limits.RATE, int(str(token)[1:]))
        return
    if draft.effort is not None:
        raise MistakeError(column_of(token), f"a second effort, {token}: a block has one", str(token))
    draft.effort = effort_of(token)


def _token(child: Token | Tree[Token]) -> Token:
    assert isinstance(child, Token)
    return child


def _tree(child: Token | Tree[Token]) -> Tree[Token]:
    assert isinstance(child, Tree)
    return child


def _child(tree: Tree[Token], index: int) -> Tree[Token]:
    return _tree(tree.children[index])
