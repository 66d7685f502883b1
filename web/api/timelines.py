"""POST /api/timeline: a plan compiled to what is rowed and appraised, for one athlete or for anybody."""

from __future__ import annotations

from flask import Blueprint, Response, request

from planner.appraisal import appraise
from planner.athlete import Level
from planner.schemas.appraisal_schema import dump_appraised
from planner.schemas.request_schema import TimelineRequest, load_timeline_request
from planner.timeline import compile_timeline
from web.api.answer_cache import AnswerCache
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.stored import NEVER, Stored, answer


def timelines_api(cache: AnswerCache) -> Blueprint:
    """The address, with a memory for what was asked before; nothing about a person goes into it."""
    blueprint = Blueprint("timelines_api", __name__)

    @blueprint.post("/api/timeline")
    def timeline() -> Response:
        """The timeline of a plan."""
        body = json_body(request)
        stored = cache.get(body)
        if stored is None:
            asked = load_timeline_request(parse(body))
            stored = _compiled(asked)
            if asked.athlete is None:
                cache.put(body, stored)
        return answer(stored, request)

    return blueprint


def _compiled(asked: TimelineRequest) -> Stored:
    timeline = compile_timeline(asked.plan, asked.athlete, asked.fit, asked.rhythm, asked.words_a_minute)
    level = asked.athlete.level if asked.athlete else Level.CLUB
    appraisal = appraise(timeline, asked.athlete, level, asked.room)
    return Stored(json_bytes(dump_appraised(timeline, appraisal)), JSON, NEVER)
