"""Plans under short addresses: POST /api/links and GET /api/links/<id>."""

from __future__ import annotations

import json
import re

from flask import Blueprint, Response, request
from limits.storage import Storage
from werkzeug.exceptions import Gone, NotFound, ServiceUnavailable

from planner.schemas.request_schema import load_link_request
from web.api.allowance import Allowance
from web.api.publishing import PublishingRule
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.settings import Settings
from web.store.connection import StoreAway
from web.store.links import Banned, Full, LinkShelf
from web.stored import FOR_EVER, NEVER, Stored, answer

LINKS = "/api/links"
NAME = re.compile(r"[a-z2-7]{16,52}", re.ASCII)
READS_A_MINUTE = 600
MISSES_A_MINUTE = 10
NEW_PLANS_AN_HOUR = 20
TAKEN_DOWN = "this plan was taken down by whoever runs this server"
NO_SUCH_LINK = (
    "there is no plan of that name on this server: look at the link again, or ask for it to be sent anew"
)
FULL = "this server has no room for more plans: a link that carries its plan works without"
AWAY = (
    "this server cannot reach its store just now: try again later; a link that carries its plan works without"
)


class LinkDesk:
    """What is asked about published plans, with its allowances."""

    def __init__(self, shelf: LinkShelf, rule: PublishingRule, counts: Storage) -> None:
        self._shelf, self._rule = shelf, rule
        self._reads = Allowance("plans", READS_A_MINUTE, counts=counts)
        self._misses = Allowance("names that are not there", MISSES_A_MINUTE, counts=counts)
        self._new = Allowance("new plans", NEW_PLANS_AN_HOUR, "hour", counts)

    def text_of(self, name: str) -> str:
        """The canonical JSON of a plan. Raises 404, 410, 429 or 503."""
        self._reads.take(request)
        self._misses.look(request)
        try:
            text = self._shelf.find(name) if NAME.fullmatch(name) else None
        except Banned:
            raise Gone(TAKEN_DOWN) from None
        except StoreAway:
            raise ServiceUnavailable(AWAY) from None
        if text is None:
            self._misses.take(request)
            raise NotFound(NO_SUCH_LINK)
        return text

    def publish(self) -> tuple[str, bool]:
        """The name of the plan that was sent, and whether it is new. Raises 401, 403, 410, 429 or 503."""
        self._rule.check(request)
        plan = load_link_request(parse(json_body(request)))
        try:
            if known := self._shelf.known(plan):
                return known, False
            self._new.take(request)
            kept = self._shelf.keep(plan)
        except Banned:
            raise Gone(TAKEN_DOWN) from None
        except Full:
            raise ServiceUnavailable(FULL) from None
        except StoreAway:
            raise ServiceUnavailable(AWAY) from None
        return kept.id, kept.is_new


def links_api(desk: LinkDesk, settings: Settings) -> Blueprint:
    """The two addresses."""
    blueprint = Blueprint("links_api", __name__)

    @blueprint.post(LINKS)
    def publish() -> Response:
        """A short address for a plan; the same plan has the same one."""
        name, is_new = desk.publish()
        told = {"id": name, "url": f"{settings.public_url}/p/{name}"}
        return answer(Stored(json_bytes(told), JSON, NEVER), request, 201 if is_new else 200)

    @blueprint.get(f"{LINKS}/<name>")
    def link(name: str) -> Response:
        """The plan, which never changes."""
        text = desk.text_of(name)
        body = json_bytes({"id": name, "plan": json.loads(text)})
        response = answer(Stored(body, JSON, FOR_EVER), request)
        response.set_etag(name)
        response.make_conditional(request)
        return response

    return blueprint
