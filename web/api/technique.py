"""GET /api/technique: the coach's library of positions, drills and calls, written out once at the start."""

from __future__ import annotations

from dataclasses import asdict

from flask import Blueprint, Response, request

from planner.drills import DRILLS, KnownDrill
from planner.focus_points import FOCUSES, POSITIONS, Focus, TechnicalCall
from planner.schemas.block_schema import given
from web.api.writing import JSON, json_bytes
from web.stored import Stored, answer

TECHNIQUE = "/api/technique"


def technique_answer() -> Stored:
    """The whole library, to be compressed as far as can be: every phone keeps it once the app stands."""
    body = json_bytes(
        {
            "positions": [asdict(position) for position in POSITIONS],
            "drills": [_drill(drill) for drill in DRILLS],
            "focuses": [_focus(focus) for focus in FOCUSES],
        }
    )
    return Stored(body, JSON, smallest=True)


def _drill(drill: KnownDrill) -> dict[str, object]:
    low, high = drill.rates
    return given(
        name=drill.name,
        other_names=list(drill.other_names),
        phase=drill.phase.value,
        mends=drill.mends,
        how=drill.how,
        caution=drill.caution,
        level=drill.level.value,
        rate_low=low,
        rate_high=high,
        sides=asdict(drill.sides) if drill.sides else None,
    )


def _focus(focus: Focus) -> dict[str, object]:
    return {
        "name": focus.name,
        "phase": focus.phase.value,
        "calls": [_call(call) for call in focus.calls],
    }


def _call(call: TechnicalCall) -> dict[str, object]:
    return given(
        text=call.text,
        mends=call.mends,
        phase=call.phase.value,
        level=call.level.value,
        caution=call.caution,
        highest_rate=call.highest_rate,
    )


def technique_api() -> Blueprint:
    """The address."""
    blueprint = Blueprint("technique_api", __name__)
    stored = technique_answer()

    @blueprint.get(TECHNIQUE)
    def technique() -> Response:
        """Everything a coach teaches here."""
        return answer(stored, request)

    return blueprint
