"""What Python and TypeScript have to write alike: the texts of the plans in `tests/shared/links`.

First those of `opened.json`, then those of `verdicts.json` that the planner takes, in their order. They are
written again, after a wanted change of the notation, by `python -m tests.shared.texts`.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from planner.notation.writer import write
from planner.schemas.plan_schema import load_plan
from tests.shared import links
from web.link_codec import decode

FILE = Path(__file__).parent / "texts" / "written.json"


def texts() -> Iterator[str]:
    """The canonical text of every plan."""
    yield from (write(decode(payload)) for payload, _ in links.read(links.OPENED))
    yield from (write(load_plan(document)) for document, taken in links.read(links.VERDICTS) if taken)


def kept() -> list[str]:
    """The texts as they are kept."""
    return [str(text) for text in json.loads(FILE.read_text(encoding="utf-8"))]


if __name__ == "__main__":
    FILE.write_text(json.dumps(list(texts()), indent=0) + "\n", encoding="utf-8")
