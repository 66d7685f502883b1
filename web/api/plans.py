"""GET /api/plans, /api/plans/<slug> and /api/library: the plans that come with the app, written out once."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response, abort, request

from planner.schemas.appraisal_schema import dump_appraised
from planner.schemas.finding_schema import dump_finding
from planner.schemas.plan_schema import dump_plan
from web.api.writing import JSON, json_bytes
from web.builtin_plans import BuiltinPlan, Library
from web.stored import Stored, answer

LISTING = "/api/plans"
LIBRARY = "/api/library"
"""All plans in one answer, which phones keep; timelines, as much again, they compile themselves."""


def plan_answers(library: Library) -> dict[str, Stored]:
    """Every answer about built-in plans by its path."""
    listing = {"plans": [_summary(plan) for plan in library.plans.values()]}
    kept = {"plans": [_kept(plan) for plan in library.plans.values()]}
    answers = {LISTING: _stored(listing), LIBRARY: _stored(kept)}
    for slug, plan in library.plans.items():
        answers[f"{LISTING}/{slug}"] = _stored(_whole(plan))
    return answers


def _stored(document: object) -> Stored:
    """To be compressed as far as can be: phones keep the library at their first visit."""
    return Stored(json_bytes(document), JSON, smallest=True)


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


def _kept(plan: BuiltinPlan) -> dict[str, Any]:
    """Without its readiness, which rests on who rows: phones ask for it anew, and nobody needs it to row."""
    totals = plan.timeline.totals
    return {
        "slug": plan.slug,
        "kind": plan.kind,
        "level": plan.level,
        "seconds_s": float(totals.seconds),
        "estimated": totals.estimated,
        "plan": dump_plan(plan.plan),
        "findings": [dump_finding(finding) for finding in plan.appraisal.findings],
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
        """Every plan, for phones to keep."""
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
