"""Whether a request may put something on this server, and how much of it."""

from __future__ import annotations

import hashlib
import hmac

from flask import Request
from limits.storage import Storage
from werkzeug.exceptions import Forbidden, Unauthorized

from web.api.allowance import Allowance
from web.settings import Publishing, Settings

BEARER = "Bearer "
CLOSED = "this server takes no plans: its operator can open it; a link that carries its plan needs no server"
NO_KEY = "this server asks for a key before it takes a plan: its operator has it"
WRONG_KEY = "the key is not the one that this server asks for"
WRONG_KEYS_A_MINUTE = 10


class PublishingRule:
    """Open, by key, or closed."""

    def __init__(self, settings: Settings, counts: Storage) -> None:
        self._rule, self._key = settings.publish, settings.publish_key
        self._wrong = Allowance("wrong keys", WRONG_KEYS_A_MINUTE, counts=counts)

    def check(self, request: Request) -> None:
        """Raises 403 where publishing is closed, 401 where a key is missing or wrong, 429 after too many."""
        if self._rule is Publishing.CLOSED:
            raise Forbidden(CLOSED)
        if self._rule is Publishing.OPEN:
            return
        self._wrong.look(request)
        given = bearer_of(request)
        if not given:
            raise Unauthorized(NO_KEY)
        if not is_same(given, self._key):
            self._wrong.take(request)
            raise Unauthorized(WRONG_KEY)


def bearer_of(request: Request) -> str:
    """The key that a request gives (RFC 6750, 2.1), or nothing."""
    header = request.headers.get("Authorization", "")
    return header.removeprefix(BEARER).strip() if header.startswith(BEARER) else ""


def is_same(given: str, wanted: str) -> bool:
    """Whether two keys are the same, in a time that tells nothing about either."""
    return hmac.compare_digest(_digest(given), _digest(wanted))


def _digest(key: str) -> bytes:
    return hashlib.sha256(key.encode("utf-8", "surrogatepass")).digest()
