"""How coaches write drills, and which drill each is: read by TypeScript too, for the phone looks them up.

`python -m tests.shared.drill_names` writes the file again after a wanted change.
"""

from __future__ import annotations

import json
from pathlib import Path

from planner.drills import DRILLS, drill_named

FILE = Path(__file__).parent / "names" / "drills.json"

WRITTEN = (
    "Arms only",
    "arms only, legs straight",
    "arms only, hands level",
    "the single-foot drill",
    "A single foot",
    "one foot",
    "Pause at hands away",
    "pause with arms away",
    "1/2 slide",
    "  FEET  OUT ",
    "Pick drill",
    "the reverse pick drill!",
    "",
    ",",
    "drill",
    "headstands",
    "headstands, arms only",
    "only arms and a hat",
    "théarms only",
)


def text() -> str:
    """The text of the file."""
    drills = [{"name": drill.name, "other_names": list(drill.other_names)} for drill in DRILLS]
    found = {written: drill.name if (drill := drill_named(written)) else None for written in WRITTEN}
    return json.dumps({"drills": drills, "found": found}, ensure_ascii=False, indent=1) + "\n"


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8")
