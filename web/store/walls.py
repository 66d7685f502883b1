"""Walls: what each of them shows, changed only by who has its key."""

from __future__ import annotations

import hashlib
import hmac
import json
import secrets
import time
from base64 import b32encode
from dataclasses import dataclass

from sqlalchemy import Connection, delete, func, insert, select, update

from web.store.connection import Database
from web.store.links import Full
from web.store.tables import walls

ID_BYTES = 10
"""16 letters: nobody comes upon another wall by chance. The key is what is secret."""
KEY_BYTES = 32
MOST_WALLS = 10_000
NOTHING = '{"plans":[],"starts_at_s":null}'


class NoSuchWall(LookupError):  # noqa: N818 - it says what is so
    """There is no wall of that name."""


class WrongKey(RuntimeError):  # noqa: N818 - it says what is so
    """The key is not that of the wall."""


class Changed(RuntimeError):  # noqa: N818 - it says what is so
    """The wall shows something else by now than who changes it has seen."""


@dataclass(frozen=True, slots=True)
class MadeWall:
    """A new wall with its key, which is not stored and cannot be told again."""

    id: str
    key: str


@dataclass(frozen=True, slots=True)
class Wall:
    """What a wall shows, as JSON, how often that has changed, and when its tablet asked, to some seconds."""

    shows: str
    version: int
    asked_at: int | None


@dataclass(frozen=True, slots=True)
class ListedWall:
    """A wall as its operator sees it: the title of what it shows or ""; `changed_at` in s since 1970."""

    id: str
    title: str
    changed_at: int


class WallShelf:
    """The walls of a database."""

    def __init__(self, database: Database, most: int = MOST_WALLS) -> None:
        self._database, self._most = database, most

    def make(self) -> MadeWall:
        """A wall that shows nothing yet. Raises Full, StoreAway."""
        name = b32encode(secrets.token_bytes(ID_BYTES)).decode("ascii").lower()
        key = secrets.token_urlsafe(KEY_BYTES)
        with self._database.write() as connection:
            if (connection.scalar(select(func.count()).select_from(walls)) or 0) >= self._most:
                raise Full
            row = {"id": name, "key_digest": _digest(key), "shows": NOTHING, "version": 1}
            connection.execute(insert(walls).values(**row, changed_at=int(time.time())))
        return MadeWall(name, key)

    def find(self, name: str, key: str | None = None) -> Wall:
        """What a wall shows, to anybody or to who gives its key. Raises NoSuchWall, WrongKey, StoreAway."""
        with self._database.read() as connection:
            if key is not None:
                _check(connection, name, key)
            columns = (walls.c.shows, walls.c.version, walls.c.asked_at)
            row = connection.execute(select(*columns).where(walls.c.id == name)).first()
        if row is None:
            raise NoSuchWall
        return Wall(*row)

    def change(self, name: str, key: str, shows: str, seen: int | None) -> Wall:
        """Show something else; `seen` is the version that the change was made from, if that matters.

        Raises NoSuchWall, WrongKey, Changed, StoreAway.
        """
        with self._database.write() as connection:
            version, asked_at = _check(connection, name, key)
            if seen is not None and seen != version:
                raise Changed
            now = {"shows": shows, "version": version + 1, "changed_at": int(time.time())}
            connection.execute(update(walls).where(walls.c.id == name).values(**now))
        return Wall(shows, version + 1, asked_at)

    def asked(self, name: str, at: int) -> None:
        """Note that a tablet asks, in s since 1970, unless that would have to wait. Raises StoreAway."""
        with self._database.write(waits=False) as connection:
            connection.execute(update(walls).where(walls.c.id == name).values(asked_at=at))

    def renew(self, name: str, key: str, fresh: str) -> None:
        """Another key in the place of this one, which is worth nothing from now on. Raises as `change`."""
        with self._database.write() as connection:
            _check(connection, name, key)
            connection.execute(update(walls).where(walls.c.id == name).values(key_digest=_digest(fresh)))

    def listed(self, latest: int) -> list[ListedWall]:
        """The walls that were changed last, the last one first. Raises StoreAway."""
        order = (walls.c.changed_at.desc(), walls.c.id)
        with self._database.read() as connection:
            columns = (walls.c.id, walls.c.shows, walls.c.changed_at)
            rows = connection.execute(select(*columns).order_by(*order).limit(latest))
            return [ListedWall(name, _title(shows), changed_at) for name, shows, changed_at in rows]

    def remove(self, name: str) -> bool:
        """Take a wall away with its key, for good. Whether there was one. Raises StoreAway."""
        with self._database.write() as connection:
            return connection.execute(delete(walls).where(walls.c.id == name)).rowcount == 1


def _title(shows: str) -> str:
    plans = json.loads(shows)["plans"]
    return str(plans[0]["title"]) if plans else ""


def _check(connection: Connection, name: str, key: str) -> tuple[int, int | None]:
    """The version of a wall whose key this is, and when its tablet asked."""
    columns = (walls.c.key_digest, walls.c.version, walls.c.asked_at)
    row = connection.execute(select(*columns).where(walls.c.id == name)).first()
    if row is None:
        raise NoSuchWall
    if not hmac.compare_digest(row.key_digest, _digest(key)):
        raise WrongKey
    return int(row.version), row.asked_at


def _digest(key: str) -> str:
    return hashlib.sha256(key.encode("utf-8", "surrogatepass")).hexdigest()
