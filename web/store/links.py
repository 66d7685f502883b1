"""Published plans: kept once, under a name that follows from what they say, and never changed."""

from __future__ import annotations

import hashlib
import json
import time
from base64 import b32encode
from dataclasses import dataclass

from sqlalchemy import Connection, delete, func, insert, select

from planner.plan import Plan
from web.link_codec import canonical
from web.store.connection import Database
from web.store.tables import banned, links

ID_LETTERS = 16
"""The shortest name: 80 bits."""
MOST_LINKS = 200_000
MOST_BYTES = 5_000_000_000


class Full(RuntimeError):  # noqa: N818 - it says what is so
    """No more plans are taken."""


class Banned(RuntimeError):  # noqa: N818 - it says what is so
    """This plan was taken down by whoever runs the server."""


@dataclass(frozen=True, slots=True)
class Kept:
    """A published plan: its name, and whether it was new."""

    id: str
    is_new: bool


@dataclass(frozen=True, slots=True)
class Listed:
    """A published plan as the operator sees it; `made_at` in seconds since 1970."""

    id: str
    title: str
    bytes: int
    made_at: int


class LinkShelf:
    """The published plans of a database."""

    def __init__(self, database: Database, most: int = MOST_LINKS, most_bytes: int = MOST_BYTES) -> None:
        self._database, self._most, self._most_bytes = database, most, most_bytes

    def known(self, plan: Plan) -> str | None:
        """The name under which a plan is published, if it is. Raises StoreAway."""
        with self._database.read() as connection:
            return connection.scalar(select(links.c.id).where(links.c.digest == digest_of(canonical(plan))))

    def keep(self, plan: Plan) -> Kept:
        """Publish a plan; the same plan is kept once. Raises Banned, Full, StoreAway."""
        text = canonical(plan)
        digest = digest_of(text)
        with self._database.write() as connection:
            if connection.scalar(select(banned.c.id).where(banned.c.digest == digest)):
                raise Banned
            if known := connection.scalar(select(links.c.id).where(links.c.digest == digest)):
                return Kept(known, is_new=False)
            self._check_room(connection, len(text))
            name = _free_name(connection, digest)
            row = {"id": name, "digest": digest, "plan": text.decode("utf-8"), "bytes": len(text)}
            connection.execute(insert(links).values(**row, made_at=int(time.time())))
        return Kept(name, is_new=True)

    def find(self, name: str) -> str | None:
        """The canonical JSON of the plan of that name, as it was published. Raises Banned, StoreAway."""
        with self._database.read() as connection:
            text: str | None = connection.scalar(select(links.c.plan).where(links.c.id == name))
            if text is None and connection.scalar(select(banned.c.id).where(banned.c.id == name)):
                raise Banned
        return text

    def listed(self, latest: int) -> list[Listed]:
        """The latest published plans, the last one first."""
        columns = (links.c.id, links.c.plan, links.c.bytes, links.c.made_at)
        order = (links.c.made_at.desc(), links.c.id)
        with self._database.read() as connection:
            rows = connection.execute(select(*columns).order_by(*order).limit(latest))
            return [
                Listed(name, json.loads(plan)["title"], size, made_at) for name, plan, size, made_at in rows
            ]

    def remove(self, name: str) -> bool:
        """Take a plan away; it may be published again. Whether there was one."""
        with self._database.write() as connection:
            return connection.execute(delete(links).where(links.c.id == name)).rowcount == 1

    def ban(self, name: str) -> bool:
        """Take a plan away for good. Whether there was one."""
        with self._database.write() as connection:
            digest = connection.scalar(select(links.c.digest).where(links.c.id == name))
            if digest is None:
                return False
            connection.execute(delete(links).where(links.c.id == name))
            connection.execute(insert(banned).values(id=name, digest=digest, banned_at=int(time.time())))
        return True

    def lift(self, name: str) -> bool:
        """Let a banned plan be published again. Whether it was banned."""
        with self._database.write() as connection:
            return connection.execute(delete(banned).where(banned.c.id == name)).rowcount == 1

    def _check_room(self, connection: Connection, more: int) -> None:
        count, held = connection.execute(
            select(func.count(), func.coalesce(func.sum(links.c.bytes), 0))
        ).one()
        if count >= self._most or held + more > self._most_bytes:
            raise Full


def digest_of(text: bytes) -> str:
    """The SHA-256 of canonical JSON, as base32 (RFC 4648) in small letters: names are its beginnings."""
    return b32encode(hashlib.sha256(text).digest()).decode("ascii").rstrip("=").lower()


def _free_name(connection: Connection, digest: str) -> str:
    """The shortest beginning of a digest that no other plan has."""
    names = (digest[:letters] for letters in range(ID_LETTERS, len(digest) + 1))
    taken = select(links.c.id).union(select(banned.c.id)).subquery()
    return next(n for n in names if not connection.scalar(select(taken.c.id).where(taken.c.id == n)))
