"""What sounds when in some of the shared plans, up to where a tap is waited for: read by TypeScript too.

`python -m tests.shared.cue_lists` writes the file again after a wanted change.
"""

from __future__ import annotations

import json
from pathlib import Path

from planner.cues import cues_of
from planner.notation.reader import read
from planner.timeline import Timeline, compile_timeline
from tests.shared.pairs import TEXTS

FILE = Path(__file__).parent / "cues" / "cues.json"
NAMES = ("every-effort", "ladder", "drills-and-setting")


def text() -> str:
    """The text of the file: for each plan the kind of each cue and its seconds from the first catch."""
    lists = {name: _list(compile_timeline(read(TEXTS[name]))) for name in NAMES}
    return json.dumps(lists, separators=(",", ":")).replace("]],", "]],\n") + "\n"


def _list(timeline: Timeline) -> list[tuple[str, list[int]]]:
    end = next((s.start for s in timeline.segments if s.waits), timeline.totals.seconds + 1)
    return [(cue.kind, [*cue.at.as_integer_ratio()]) for cue in cues_of(timeline) if cue.at < end]


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8")
