"""The way to the database: SQLite by default, PostgreSQL by address; opened when it is first needed.

SQLite: a write that begins by reading fails at once when another got in between, unless it began as a write;
so reading and writing have an engine each, and so has a write that waits for nobody. On both, writes take
turns. Every commit is on the disk before it is told (`synchronous=FULL`).
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from threading import Lock
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, text
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, DBAPIError, NoSuchModuleError
from sqlalchemy.pool import QueuePool

from web.store.migrations import migrate

SQLITE_SETTINGS = (
    "journal_mode=WAL",
    "synchronous=FULL",
    "foreign_keys=ON",
    "trusted_schema=OFF",
    "cell_size_check=ON",
)
BUSY_MS = 5000
"""How long who waits for the lock of SQLite does."""
POSTGRES_OPTIONS = (
    "-c statement_timeout=5000 -c lock_timeout=2000 -c idle_in_transaction_session_timeout=10000"
)
CONNECT_SECONDS = 3
CONNECTIONS = 8
"""As many as the server has threads."""
WRITING = 7_266_547
"""Any number, the same in every process: by it PostgreSQL, too, lets one of them write at a time."""


class BadAddress(ValueError):  # noqa: N818 - it says what is so
    """An address that is no database's."""


class StoreAway(RuntimeError):  # noqa: N818 - it says what is so
    """The database cannot be reached, or did not take what it was given."""


class Database:
    """The database at an address such as sqlite:///data/slipway.db or postgresql://user@host/name."""

    def __init__(self, address: str) -> None:
        """Nothing is opened yet. Raises BadAddress."""
        try:
            self._url = make_url(address)
            if self._url.get_backend_name() == "postgresql":
                self._url = self._url.set(drivername="postgresql+psycopg")
            self._reading, self._writing, self._hurried = self._engines()
        except (ArgumentError, NoSuchModuleError, ModuleNotFoundError) as error:
            raise BadAddress(str(error).splitlines()[0]) from None
        self._ready = False
        self._lock = Lock()

    @contextmanager
    def read(self) -> Iterator[Connection]:
        """A connection to read by. Raises StoreAway."""
        self._make_ready()
        with _told(), self._reading.connect() as connection:
            yield connection

    @contextmanager
    def write(self, waits: bool = True) -> Iterator[Connection]:
        """A connection whose work counts as a whole once this ends well. Raises StoreAway.

        Who does not wait for a turn is refused where another one writes.
        """
        self._make_ready()
        with self._taking_turns(waits) as connection:
            yield connection

    def is_well(self) -> bool:
        """Whether it answers now."""
        try:
            with self.read() as connection:
                return bool(connection.scalar(text("SELECT 1")))
        except StoreAway:
            return False

    def close(self) -> None:
        """Let go of every connection."""
        for engine in (self._reading, self._writing, self._hurried):
            engine.dispose()

    def _make_ready(self) -> None:
        with self._lock:
            if not self._ready:
                with self._taking_turns() as connection:
                    migrate(connection)
                self._ready = True

    @contextmanager
    def _taking_turns(self, waits: bool = True) -> Iterator[Connection]:
        with _told(), (self._writing if waits else self._hurried).begin() as connection:
            if connection.dialect.name == "postgresql":
                if waits:
                    connection.execute(text(f"SELECT pg_advisory_xact_lock({WRITING})"))
                elif not connection.scalar(text(f"SELECT pg_try_advisory_xact_lock({WRITING})")):
                    raise StoreAway("another one writes")
            yield connection

    def _engines(self) -> tuple[Engine, Engine, Engine]:
        """To read, to write, and to write without waiting for a turn."""
        if self._url.get_backend_name() == "sqlite":
            begin = "BEGIN IMMEDIATE"
            return _sqlite(self._url, "BEGIN"), _sqlite(self._url, begin), _sqlite(self._url, begin, 0)
        if self._url.get_backend_name() != "postgresql":
            raise ArgumentError("only sqlite and postgresql will do")
        engine = create_engine(
            self._url,
            pool_size=CONNECTIONS,
            max_overflow=0,
            pool_pre_ping=True,
            connect_args={"options": POSTGRES_OPTIONS, "connect_timeout": CONNECT_SECONDS},
        )
        return engine, engine, engine


@contextmanager
def _told() -> Iterator[None]:
    try:
        yield
    except DBAPIError as error:
        raise StoreAway(str(error.orig)) from error


def _sqlite(url: Any, begin: str, busy_ms: int = BUSY_MS) -> Engine:
    engine = create_engine(
        url,
        poolclass=QueuePool,
        pool_size=CONNECTIONS,
        max_overflow=0,
        connect_args={"check_same_thread": False},
    )

    @event.listens_for(engine, "connect")
    def settle(connection: Any, _record: object) -> None:
        connection.isolation_level = None
        for setting in (*SQLITE_SETTINGS, f"busy_timeout={busy_ms}"):
            connection.execute(f"PRAGMA {setting}")

    @event.listens_for(engine, "begin")
    def start(connection: Connection) -> None:
        connection.exec_driver_sql(begin)

    return engine
