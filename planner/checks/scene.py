"""What every check looks at: a session as it is rowed, and who rows it where."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from planner.plan import Block
from planner.timeline import Segment, Timeline


@dataclass(frozen=True, slots=True)
class Scene:
    """A session as it is rowed."""

    timeline: Timeline

    def at(self, place: str) -> tuple[Segment, ...]:
        """The segments that come from a place in the plan, in order."""
        return tuple(segment for segment in self.timeline.segments if segment.place == place)

    def block(self, place: str) -> Block:
        """The block at a place of the plan, given as a JSON pointer."""
        found: Any = self.timeline.plan
        for step in place.split("/")[1:]:
            found = found[int(step)] if isinstance(found, tuple) else getattr(found, step)
        block: Block = found
        return block
