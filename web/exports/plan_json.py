"""The plan itself as a JSON document, to be kept, sent and read back in."""

from __future__ import annotations

import json

from planner.plan import Plan
from planner.schemas.plan_schema import dump_plan


def plan_json(plan: Plan) -> bytes:
    """The document in UTF-8, indented for people; reading it gives an equal plan."""
    return (json.dumps(dump_plan(plan), indent=2, ensure_ascii=False, allow_nan=False) + "\n").encode()
