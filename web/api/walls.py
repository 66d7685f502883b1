"""What walls show: POST /api/walls makes one, GET tells, PUT changes it by its key, which can be renewed."""

from __future__ import annotations

import json
import re
import time
from collections.abc import Iterator
from contextlib import contextmanager
from math import ceil, inf

from flask import Blueprint, Response, request
from limits.storage import Storage
from werkzeug.exceptions import NotFound, PreconditionFailed, ServiceUnavailable, Unauthorized
from werkzeug.http import unquote_etag

from planner.schemas.plan_schema import dump_plan
from planner.schemas.wall_schema import load_wall_key, load_wall_request
from web.api.allowance import Allowance
from web.api.publishing import PublishingRule, bearer_of
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.settings import Settings
from web.store.connection import StoreAway
from web.store.links import Full
from web.store.walls import Changed, NoSuchWall, Wall, WallShelf, WrongKey
from web.stored import ASK_AGAIN, NEVER, Stored, answer

WALLS = "/api/walls"
NAME = re.compile(r"[a-z2-7]{16}", re.ASCII)
LOOKS_A_MINUTE = 600
NOTED_EVERY_S = 20
"""How fresh it is known when a tablet last asked: a write so often, and not at each of its looks."""
TRIED_EVERY_S = 5
"""Where it could not be noted it is tried again, and not at each look either."""
WRONG_KEYS_A_MINUTE = 10
NEW_WALLS_AN_HOUR = 20
NO_SUCH_WALL = "there is no wall of that name on this server: look at its address again"
NO_KEY = "only who has the key of this wall changes what it shows: open its key link on this device"
WRONG_KEY = (
    "the key is not that of this wall; it may have been replaced: open the newest key link on this device"
)
CHANGED = "somebody else has changed what the wall shows: look at it, and then change it again"
FULL = "this server has no room for more walls"
AWAY = "this server cannot reach its store just now: try again later; what a wall shows goes on"


class WallDesk:
    """What is asked about walls, with its allowances."""

    def __init__(self, shelf: WallShelf, rule: PublishingRule, counts: Storage) -> None:
        self._shelf, self._rule = shelf, rule
        self._looks = Allowance("looks at walls", LOOKS_A_MINUTE, counts=counts)
        self._wrong = Allowance("wrong keys of a wall", WRONG_KEYS_A_MINUTE, counts=counts)
        self._new = Allowance("new walls", NEW_WALLS_AN_HOUR, "hour", counts)
        self._failed: dict[str, float] = {}

    def make(self) -> dict[str, str]:
        """A new wall with its key. Raises 401, 403, 415, 429 or 503."""
        json_body(request)  # no form of another site can send that
        self._rule.check(request)
        self._new.take(request)
        with self._told():
            made = self._shelf.make()
        return {"id": made.id, "key": made.key}

    def look(self, name: str) -> Wall:
        """What a wall shows; who comes without its key is a tablet. Raises 401, 404, 429 or 503."""
        self._looks.take(request)
        key = self._key(name) if bearer_of(request) else None
        with self._told(name):
            wall = self._shelf.find(_checked(name), key)
        if key is None:
            self._note(name, wall)
        return wall

    def _note(self, name: str, wall: Wall) -> None:
        """Remember that a tablet asks, seldom enough to cost nothing, and without holding up its answer."""
        ago, now = _asked_s_ago(wall), time.monotonic()
        if ago is not None and ago < NOTED_EVERY_S:
            return
        if now - self._failed.get(name, -inf) >= TRIED_EVERY_S:
            try:
                self._shelf.asked(name, int(time.time()))
            except StoreAway:
                self._failed[name] = now

    def change(self, name: str) -> Wall:
        """Let a wall show what was sent. Raises 401, 404, 412, 429 or 503."""
        asked = load_wall_request(parse(json_body(request)))
        starts_at_s = asked.starts_at_s
        if asked.start_in_seconds is not None:
            starts_at_s = ceil(time.time()) + asked.start_in_seconds
        shows = {"plans": [dump_plan(plan) for plan in asked.plans], "starts_at_s": starts_at_s}
        key = self._key(name)
        with self._told(name):
            return self._shelf.change(_checked(name), key, json.dumps(shows, ensure_ascii=False), _seen())

    def renew(self, name: str) -> str:
        """The key that was sent is that of the wall from now on. Raises as `change`."""
        fresh = load_wall_key(parse(json_body(request)))
        key = self._key(name)
        with self._told(name):
            self._shelf.renew(_checked(name), key, fresh)
        return fresh

    def _key(self, name: str) -> str:
        self._wrong.look(request, name)
        if key := bearer_of(request):
            return key
        raise Unauthorized(NO_KEY)

    @contextmanager
    def _told(self, name: str = "") -> Iterator[None]:
        try:
            yield
        except NoSuchWall:
            raise NotFound(NO_SUCH_WALL) from None
        except WrongKey:
            self._wrong.take(request, name)
            raise Unauthorized(WRONG_KEY) from None
        except Changed:
            raise PreconditionFailed(CHANGED) from None
        except Full:
            raise ServiceUnavailable(FULL) from None
        except StoreAway:
            raise ServiceUnavailable(AWAY) from None


def _checked(name: str) -> str:
    if not NAME.fullmatch(name):
        raise NoSuchWall
    return name


def _seen() -> int | None:
    """The version that a change is made from; "*" is any (RFC 9110, 13.1.1), a strange tag matches none."""
    header = request.headers.get("If-Match")
    if header is None or header.strip() == "*":
        return None
    tag, _ = unquote_etag(header)
    return int(tag) if tag and tag.isascii() and tag.isdecimal() and len(tag) < 10 else 0


def walls_api(desk: WallDesk, settings: Settings) -> Blueprint:
    """The addresses."""
    blueprint = Blueprint("walls_api", __name__)

    @blueprint.post(WALLS)
    def make() -> Response:
        """A wall. Its key is told this once and never again."""
        made = desk.make()
        told = {**made, "url": f"{settings.public_url}/wall/{made['id']}"}
        return answer(Stored(json_bytes(told), JSON, NEVER), request, 201)

    @blueprint.get(f"{WALLS}/<name>")
    def look(name: str) -> Response:
        """What the wall shows, and whether a key is right; a tablet asks again and again for what is new."""
        wall = desk.look(name)
        return _led(name, wall) if bearer_of(request) else _shown(name, wall)

    @blueprint.put(f"{WALLS}/<name>")
    def change(name: str) -> Response:
        """Let the wall show something else."""
        return _led(name, desk.change(name))

    @blueprint.post(f"{WALLS}/<name>/key")
    def renew(name: str) -> Response:
        """The key that is sent in the place of the one that asks, which is worth nothing from now on."""
        told = {"id": name, "key": desk.renew(name), "url": f"{settings.public_url}/wall/{name}"}
        return answer(Stored(json_bytes(told), JSON, NEVER), request)

    return blueprint


def _shown(name: str, wall: Wall) -> Response:
    """For tablets: the same until it is changed, so that its tag is the version."""
    stored = Stored(json_bytes(_document(name, wall)), JSON, ASK_AGAIN)
    stored.digest = str(wall.version)
    return answer(stored, request)


def _led(name: str, wall: Wall) -> Response:
    """For who has the key: with what changes at every look, so that none is kept or compared by a tag."""
    document = _document(name, wall)
    ago = _asked_s_ago(wall)
    if ago is not None or wall.asked_at is None:
        document["asked_s_ago"] = ago
    return answer(Stored(json_bytes(document), JSON, NEVER), request)


def _asked_s_ago(wall: Wall) -> int | None:
    """How long ago its tablet asked, as far as that is known: a clock may have been put back since."""
    if wall.asked_at is None:
        return None
    ago = int(time.time()) - wall.asked_at
    return max(0, ago) if ago > -NOTED_EVERY_S else None


def _document(name: str, wall: Wall) -> dict[str, object]:
    return {"id": name, "version": wall.version, **json.loads(wall.shows)}
