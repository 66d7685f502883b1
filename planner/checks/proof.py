"""Mends tried out before they are offered: one that leaves its finding is carried on with, or not offered."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from planner.checks.scene import Scene, scene_of
from planner.edits import edited, moved
from planner.errors import InputError
from planner.findings import HEAVIEST_FIRST, Edit, Finding, Mend, Op, is_heavier
from planner.timeline import compile_timeline

Check = Callable[[Scene], Iterator[Finding]]

MOST_ROUNDS = 4
"""How often a mend is carried on with before it is given up: what it uncovers is mended with it."""
MOST_SEGMENTS = 2_500
"""How many segments are compiled and checked again, over all mends of a session: fifty times one of fifty
segments, five times the longest there may be. Counted, not timed, so that everybody is answered the same."""
COLD_WORK = frozenset({"hard-too-early", "no-warm-up"})
"""What no mend may bring, however light: hard work on a body that is not warm."""


@dataclass(slots=True)
class _Patience:
    """How many segments may still be tried."""

    segments: int = MOST_SEGMENTS

    def reaches(self, scene: Scene) -> bool:
        """Whether a session of this size may be tried once more; if so, it is counted."""
        self.segments -= len(scene.timeline.segments)
        return self.segments >= 0


def found_with_proved_mends(scene: Scene, checks: Iterable[Check]) -> Iterator[Finding]:
    """What the checks find, each with a mend that removes it and makes nothing worse, or with none.

    The weightiest are tried first: in a very long session those after them may be left without a mend.
    """
    found = _found(scene, checks)
    patience = _Patience()
    proved = dict[int, Mend | None]()
    for number in sorted(range(len(found)), key=lambda number: HEAVIEST_FIRST.index(found[number].severity)):
        proved[number] = _proved(scene, checks, found[number], found, patience)
    for number, finding in enumerate(found):
        yield replace(finding, mend=proved[number])


def _found(scene: Scene, checks: Iterable[Check]) -> list[Finding]:
    return [finding for check in checks for finding in check(scene)]


def _proved(
    scene: Scene, checks: Iterable[Check], finding: Finding, found: Sequence[Finding], patience: _Patience
) -> Mend | None:
    """The finding's mend, with what it needs besides to leave fewer of its kind there and nothing worse."""
    same = sum((f.code, f.place) == (finding.code, finding.place) for f in found)
    mend, label, edits = finding.mend, "", tuple[Edit, ...]()
    for _ in range(MOST_ROUNDS):
        if mend is None or not patience.reaches(scene):
            return None
        edits = (*edits, *mend.edits)
        after = _after(scene, edits)
        if after is None:
            return None
        now, place = _found(after, checks), moved(finding.place, edits)
        left = [f for f in now if f.code == finding.code and _is_at(f.place, place, edits)]
        stays = len(left) >= same
        label = mend.label if stays or not label else label
        worse = left if stays else _brought(finding, found, now)
        if not worse:
            return Mend(label, edits)
        mend = worse[0].mend
    return None


def _brought(finding: Finding, before: Sequence[Finding], after: Sequence[Finding]) -> list[Finding]:
    """What is found more often than before, and is heavier than the finding, or is work on a cold body."""
    had, has = (Counter(f.code for f in each) for each in (before, after))
    return [
        f
        for f in after
        if has[f.code] > had[f.code] and (f.code in COLD_WORK or is_heavier(f.severity, finding.severity))
    ]


def _is_at(found: str, place: str, edits: Sequence[Edit]) -> bool:
    """Whether something is found at a place, or in what the edits put in."""
    put_in = (moved(edit.place, edits[number:][1:]) for number, edit in enumerate(edits) if edit.op is Op.ADD)
    return found == place or any(f"{found}/".startswith(f"{new}/") for new in put_in)


def _after(scene: Scene, edits: Sequence[Edit]) -> Scene | None:
    """The session with the edits made, or None where no plan comes of them."""
    before = scene.timeline
    try:
        timeline = compile_timeline(
            edited(before.plan, edits), scene.athlete, before.fit, words_a_minute=before.words_a_minute
        )
    except InputError:
        return None
    return scene_of(timeline, scene.athlete, scene.level, scene.room)
