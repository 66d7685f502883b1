"""What stands in what: parts, repeats whose brackets are open, and the block that the next lines add to."""

from __future__ import annotations

from dataclasses import dataclass, field

from planner.limits import DEPTH
from planner.notation.drafts import BlockDraft, Finishing, RepeatDraft, StepDraft
from planner.notation.mistake import MistakeError
from planner.plan import ForSeconds, Gap, Part, PartKind


@dataclass(slots=True)
class _PartDraft:
    kind: PartKind
    line: int
    steps: list[StepDraft] = field(default_factory=list)


@dataclass(slots=True)
class _Frame:
    """An opened bracket: where its blocks go, and the repeat it belongs to.

    After a mistake within, a frame counts as damaged: then nothing is said about its being empty.
    """

    repeat: RepeatDraft
    steps: list[StepDraft]
    line: int
    is_between: bool = False
    is_damaged: bool = False


class Outline:
    """The plan as far as it has been read."""

    def __init__(self) -> None:
        self._parts: list[_PartDraft | Gap] = []
        self._frames: list[_Frame] = []
        self._latest: list[StepDraft] = []

    @property
    def is_empty(self) -> bool:
        """True as long as no part has begun."""
        return not self._parts

    @property
    def open_line(self) -> int | None:
        """The line of the innermost bracket that is still open."""
        return self._frames[-1].line if self._frames else None

    def begin(self, part: PartKind | Gap, line: int) -> None:
        """A heading or a gap: what follows belongs to it. Raises MistakeError inside a bracket."""
        open_line = self.open_line
        self._frames.clear()
        self._parts.append(part if isinstance(part, Gap) else _PartDraft(part, line))
        self._latest = []
        if open_line is not None:
            what = "a gap" if isinstance(part, Gap) else "a heading"
            raise MistakeError(
                0, f"{what} stands inside the bracket opened on line {open_line}: close it with )"
            )

    def add(self, draft: StepDraft, line: int) -> None:
        """A block, a rest or a repeat on one line."""
        self._steps(line).append(draft)
        self._latest = draft.blocks if isinstance(draft, RepeatDraft) else [draft]

    def open(self, times: int, line: int) -> None:
        """A repeat whose blocks stand on the following lines."""
        self._latest = []
        if len(self._frames) >= DEPTH:
            self._frames[-1].is_damaged = True
            self._open_lost(line)
            if len(self._frames) == DEPTH + 1:
                raise MistakeError(0, f"repeats stand more than {DEPTH} deep: write the inner ones out", "(")
            return
        repeat = RepeatDraft(line, times)
        self._steps(line).append(repeat)
        self._frames.append(_Frame(repeat, repeat.blocks, line))

    def close(self, line: int, between: list[StepDraft] | None = None, *, then_open: bool = False) -> None:
        """A closing bracket, perhaps with what comes between, or opening another bracket for that."""
        if not self._frames:
            if then_open:
                self._open_lost(line)
            raise MistakeError(0, "this bracket closes nothing: open a repeat first, such as 3 x (", ")")
        frame = self._frames.pop()
        self._latest = []
        if then_open:
            self._frames.append(_Frame(frame.repeat, frame.repeat.between, line, is_between=True))
        if not frame.steps and not frame.is_damaged:
            raise MistakeError(0, f"the bracket opened on line {frame.line} is empty", ")")
        if frame.is_between and (then_open or between):
            raise MistakeError(0, "a second slash: what comes between repetitions stands in one bracket", ")")
        frame.repeat.between.extend(between or [])

    def lose(self, line: int, text: str) -> None:
        """A line that cannot be read. Its brackets count and what stands below it is let pass, so that one
        mistake is told once."""
        self._latest = [BlockDraft(line, 0, ForSeconds(1))]
        if text.startswith(")") and self._frames:
            self._frames.pop()
        if self._frames:
            self._frames[-1].is_damaged = True
        if text.endswith("("):
            self._open_lost(line)

    def _open_lost(self, line: int) -> None:
        """A bracket that belongs to no repeat, only so that its end finds its beginning."""
        repeat = RepeatDraft(line, 1)
        self._frames.append(_Frame(repeat, repeat.blocks, line, is_damaged=True))

    def block_above(self, column: int, what: str) -> BlockDraft:
        """The one block that this line adds to; raises MistakeError when there is none."""
        match self._latest:
            case [BlockDraft() as block]:
                return block
            case []:
                raise MistakeError(column, f"{what} belongs below a block: write the block first", what)
            case [_]:
                raise MistakeError(column, f"a rest has no {what}: that belongs below a block", what)
        raise MistakeError(column, f"{what} needs one block above it: give each block its own line", what)

    def finished(self) -> tuple[tuple[Part | Gap, ...], Finishing]:
        """The parts, and what was found while they were made."""
        finishing = Finishing()
        return tuple(self._finished(finishing)), finishing

    def _finished(self, finishing: Finishing) -> list[Part | Gap]:
        parts: list[Part | Gap] = []
        for index, part in enumerate(self._parts):
            if isinstance(part, Gap):
                parts.append(part)
                continue
            place = f"/parts/{index}"
            finishing.lines[place] = part.line
            parts.append(Part(part.kind, finishing.steps(part.steps, f"{place}/blocks")))
        return parts

    def _steps(self, line: int) -> list[StepDraft]:
        if self._frames:
            return self._frames[-1].steps
        if not self._parts or isinstance(self._parts[-1], Gap):
            self._parts.append(_PartDraft(PartKind.MAIN, line))
        part = self._parts[-1]
        assert isinstance(part, _PartDraft)
        return part.steps
