"""The tables as queries name them; `migrations` makes them, and a test holds the two together."""

from __future__ import annotations

from sqlalchemy import BigInteger, Column, Integer, MetaData, Table, Text

metadata = MetaData()

steps_done = Table("steps_done", metadata, Column("number", Integer, primary_key=True, autoincrement=False))
"""The migrations that this database has had."""

links = Table(
    "links",
    metadata,
    Column("id", Text, primary_key=True),
    Column("digest", Text, nullable=False),
    Column("plan", Text, nullable=False),
    Column("bytes", Integer, nullable=False),
    Column("made_at", BigInteger, nullable=False),
)
"""Published plans: canonical JSON under the beginning of its digest; `made_at` in seconds since 1970."""

walls = Table(
    "walls",
    metadata,
    Column("id", Text, primary_key=True),
    Column("key_digest", Text, nullable=False),
    Column("shows", Text, nullable=False),
    Column("version", Integer, nullable=False),
    Column("changed_at", BigInteger, nullable=False),
    Column("asked_at", BigInteger),
)
"""What walls show, as JSON; of each key only its SHA-256. `asked_at`: see `WallShelf.asked`."""

banned = Table(
    "banned",
    metadata,
    Column("digest", Text, primary_key=True),
    Column("id", Text, nullable=False),
    Column("banned_at", BigInteger, nullable=False),
)
"""Plans that were taken down and are not taken again."""
