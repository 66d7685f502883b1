"""POST /api/timeline: a plan compiled to what is rowed and appraised, for one athlete or for anybody."""

from __future__ import annotations

from threading import Semaphore

from flask import Blueprint, Response, request
from limits.storage import Storage
from werkzeug.exceptions import TooManyRequests

from planner.appraisal import appraise
from planner.athlete import Level
from planner.schemas.appraisal_schema import dump_appraised
from planner.schemas.request_schema import TimelineRequest, load_timeline_request
from planner.timeline import Timeline, compile_timeline
from web.api.allowance import Allowance
from web.api.answer_cache import AnswerCache
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.stored import NEVER, Stored, answer

LONG_SEGMENTS = 100
"""A plan of more is long: it takes up to a second or two, others some hundredths."""
LONG_A_MINUTE = 60
LONG_AT_ONCE = 3
"""Of the server's eight threads."""
BUSY_SECONDS = 5


class TimelineDesk:
    """What is compiled and appraised, with its allowances."""

    def __init__(self, allowance: Allowance, counts: Storage) -> None:
        self._all = allowance
        self._long = Allowance("long plans", LONG_A_MINUTE, counts=counts)
        self._at_once = Semaphore(LONG_AT_ONCE)

    def compiled(self, asked: TimelineRequest) -> Stored:
        """The timeline, appraised. Raises 422, and 429 where it is one too many."""
        self._all.take(request)
        timeline = compile_timeline(asked.plan, asked.athlete, asked.fit, asked.rhythm, asked.words_a_minute)
        if len(timeline.segments) <= LONG_SEGMENTS:
            return _appraised(timeline, asked)
        self._long.take(request)
        if not self._at_once.acquire(blocking=False):
            raise TooManyRequests(
                f"{LONG_AT_ONCE} long plans are being looked at already: try again in {BUSY_SECONDS} s",
                retry_after=BUSY_SECONDS,
            )
        try:
            return _appraised(timeline, asked)
        finally:
            self._at_once.release()


def _appraised(timeline: Timeline, asked: TimelineRequest) -> Stored:
    level = asked.athlete.level if asked.athlete else Level.CLUB
    appraisal = appraise(timeline, asked.athlete, level, asked.room)
    return Stored(json_bytes(dump_appraised(timeline, appraisal)), JSON, NEVER)


def timelines_api(cache: AnswerCache, allowance: Allowance, counts: Storage) -> Blueprint:
    """The address, with a memory for what was asked before; nothing about a person goes into it."""
    desk = TimelineDesk(allowance, counts)
    blueprint = Blueprint("timelines_api", __name__)

    @blueprint.post("/api/timeline")
    def timeline() -> Response:
        """The timeline of a plan."""
        body = json_body(request)
        stored = cache.get(body)
        if stored is None:
            asked = load_timeline_request(parse(body))
            stored = desk.compiled(asked)
            if asked.athlete is None:
                cache.put(body, stored)
        return answer(stored, request)

    return blueprint
