"""Numbered steps from an empty database to the tables of today; each is done once, and never changed."""

from __future__ import annotations

from sqlalchemy import Connection, func, insert, select, text

from web.store.tables import steps_done

STEPS: tuple[tuple[str, ...], ...] = (
    (
        "CREATE TABLE links (id TEXT PRIMARY KEY NOT NULL, digest TEXT NOT NULL UNIQUE, plan TEXT NOT NULL,"
        " bytes INTEGER NOT NULL CHECK (bytes BETWEEN 1 AND 262144), made_at {whole} NOT NULL){strict}",
        "CREATE INDEX links_by_bytes ON links (bytes)",
        "CREATE INDEX links_by_time ON links (made_at)",
        "CREATE TABLE banned (digest TEXT PRIMARY KEY NOT NULL, id TEXT NOT NULL UNIQUE,"
        " banned_at {whole} NOT NULL){strict}",
    ),
    (
        "CREATE TABLE walls (id TEXT PRIMARY KEY NOT NULL, key_digest TEXT NOT NULL,"
        " shows TEXT NOT NULL CHECK (length(shows) <= 524288), version INTEGER NOT NULL,"
        " changed_at {whole} NOT NULL){strict}",
    ),
    ("ALTER TABLE walls ADD COLUMN asked_at {whole}",),
)
"""What each step says to the database."""
WORDS = {
    "sqlite": {"whole": "INTEGER", "strict": " STRICT"},
    "postgresql": {"whole": "BIGINT", "strict": ""},
}


def migrate(connection: Connection, steps: tuple[tuple[str, ...], ...] = STEPS) -> int:
    """Do the steps that this database has not had yet, inside the connection's transaction; how many."""
    steps_done.create(connection, checkfirst=True)
    had: int = connection.scalar(select(func.coalesce(func.max(steps_done.c.number), 0))) or 0
    for number, statements in enumerate(steps[had:], had + 1):
        for statement in statements:
            connection.execute(text(statement.format(**WORDS[connection.dialect.name])))
        connection.execute(insert(steps_done).values(number=number))
    return max(0, len(steps) - had)
