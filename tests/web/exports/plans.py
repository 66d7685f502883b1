"""Plans to make files of: one that holds everything, and one that says a text wherever it can."""

from __future__ import annotations

from datetime import UTC, datetime

from planner.plan import Block, Call, Drill, ForSeconds, ForStrokes, Gap, Part, PartKind, Plan, Repeat, Rest
from planner.schemas.plan_schema import load_plan
from planner.timeline import Timeline, compile_timeline
from tests.builders import rower_of_7_42
from tests.planner.test_schemas import EVERYTHING

NOW = datetime(2026, 11, 29, 7, 30, tzinfo=UTC)
START = datetime(2026, 12, 1, 18, 0)


def everything() -> Timeline:
    """One of each, for a rower with a result."""
    return compile_timeline(load_plan(EVERYTHING), rower_of_7_42())


def saying(text: str) -> Plan:
    """A short plan that says this wherever a person may write something."""
    blocks = (
        Block(ForSeconds(120), 20, focus=text, calls=(Call(text), Call("Then legs", 20))),
        Block(ForSeconds(60), 18, drill=Drill(text)),
        Repeat(2, (Block(ForStrokes(10), 28, focus=text),), (Rest(50),)),
    )
    parts = (Part(PartKind.WARM_UP, blocks), Gap(60), Part(PartKind.MAIN, blocks[:1]))
    return Plan(text, parts, summary=text, setup=text)
