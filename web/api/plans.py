"""GET /api/plans, /api/plans/<slug> and /api/library: the plans that come with the app, written out once."""

from __future__ import annotations

from typing import Any

import brotli
from flask import Blueprint, Response, abort, request

from planner.schemas.appraisal_schema import dump_appraised
from planner.schemas.plan_schema import dump_plan
from web.api.writing import JSON, json_bytes
from web.builtin_plans import BuiltinPlan, Library
from web.stored import Stored, answer

LISTING = "/api/plans"
LIBRARY = "/api/library"
"""All plans in one answer, which phones keep: compressed together they come to little more than half."""


def plan_answers(library: Library) -> dict[str, Stored]:
    """Every answer about built-in plans by its path."""
    listing = {"plans": [_summary(plan) for plan in library.plans.values()]}
    wholes = {plan.slug: _whole(plan) for plan in library.plans.values()}
    kept = {"plans": [_without_readiness(whole) for whole in wholes.values()]}
    answers = {LISTING: _stored(listing), LIBRARY: _stored(kept)}
    for slug, whole in wholes.items():
        answers[f"{LISTING}/{slug}"] = _stored(whole)
    return answers


def _without_readiness(whole: dict[str, Any]) -> dict[str, Any]:
    """It rests on who rows, so that a phone asks for it anew; nobody needs it to row."""
    timeline = {name: value for name, value in whole["timeline"].items() if name != "readiness"}
    return {**whole, "timeline": timeline}


def _stored(document: object) -> Stored:
    """Compressed as far as can be: phones keep the library at their first visit."""
    body = json_bytes(document)
    return Stored(body, JSON, encoded={"br": bytes(brotli.compress(body))})


def _summary(plan: BuiltinPlan) -> dict[str, object]:
    totals = plan.timeline.totals
    return {
        "slug": plan.slug,
        "title": plan.plan.title,
        "summary": plan.plan.summary or "",
        "kind": plan.kind,
        "seconds_s": float(totals.seconds),
        "strokes": totals.strokes,
        "estimated": totals.estimated,
    }


def _whole(plan: BuiltinPlan) -> dict[str, Any]:
    return {
        "slug": plan.slug,
        "kind": plan.kind,
        "level": plan.level,
        "plan": dump_plan(plan.plan),
        "timeline": dump_appraised(plan.timeline, plan.appraisal),
    }


def plans_api(answers: dict[str, Stored]) -> Blueprint:
    """The three addresses."""
    blueprint = Blueprint("plans_api", __name__)

    @blueprint.get(LIBRARY)
    def library() -> Response:
        """Every plan with its timeline for anybody."""
        return answer(answers[LIBRARY], request)

    @blueprint.get(LISTING)
    def plans() -> Response:
        """What there is to choose from."""
        return answer(answers[LISTING], request)

    @blueprint.get(f"{LISTING}/<slug>")
    def plan(slug: str) -> Response:
        """One plan with its timeline for anybody."""
        found = answers.get(f"{LISTING}/{slug}")
        return answer(found, request) if found else abort(404, "there is no built-in plan of that name")

    return blueprint
