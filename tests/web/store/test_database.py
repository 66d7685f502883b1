"""The database opens by itself, has its steps once, and says when it is away."""

from __future__ import annotations

import sqlite3
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from sqlalchemy import func, insert, inspect, select, text

from web.store.connection import BUSY_MS, SQLITE_SETTINGS, BadAddress, Database, StoreAway
from web.store.migrations import STEPS, migrate
from web.store.tables import metadata, steps_done


def test_the_steps_make_the_tables_that_queries_name(database: Database) -> None:
    with database.read() as connection:
        made = inspect(connection)
        columns = {name: {c["name"] for c in made.get_columns(name)} for name in made.get_table_names()}
    assert columns == {name: set(table.columns.keys()) for name, table in metadata.tables.items()}


def test_steps_are_done_once_and_new_ones_later(database: Database) -> None:
    more = (*STEPS, ("CREATE TABLE later (number {whole}){strict}",))
    with database.write() as connection:
        assert migrate(connection) == 0
        assert migrate(connection, more) == 1
        assert migrate(connection, more) == 0
        connection.execute(text("INSERT INTO later VALUES (1)"))
        connection.execute(text("DROP TABLE later"))
        assert connection.scalar(select(func.max(steps_done.c.number))) == len(more)


def test_a_step_that_fails_leaves_nothing_behind(database: Database) -> None:
    broken = (*STEPS, ("CREATE TABLE half (number {whole}){strict}", "CREATE TABLE links (id {whole})"))
    with pytest.raises(StoreAway), database.write() as connection:
        migrate(connection, broken)
    with database.read() as connection:
        assert "half" not in inspect(connection).get_table_names()
        assert connection.scalar(select(func.max(steps_done.c.number))) == len(STEPS)


def test_what_fails_half_way_is_not_written(database: Database) -> None:
    def fail() -> None:
        with database.write() as connection:
            connection.execute(insert(steps_done).values(number=99))
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fail()
    with database.read() as connection:
        assert connection.scalar(select(func.max(steps_done.c.number))) == len(STEPS)


def test_many_who_read_and_then_write_at_once_all_get_their_turn(database: Database) -> None:
    """With SQLite a plain BEGIN would refuse most of them at once."""

    def count_up(_: int) -> None:
        with database.write() as connection:
            most = connection.scalar(select(func.max(steps_done.c.number)))
            connection.execute(insert(steps_done).values(number=most + 1))

    with ThreadPoolExecutor(8) as crowd:
        list(crowd.map(count_up, range(80)))
    with database.read() as connection:
        assert connection.scalar(select(func.count()).select_from(steps_done)) == len(STEPS) + 80


def test_who_does_not_wait_is_refused_while_another_writes_and_served_afterwards(
    address: str, database: Database
) -> None:
    other = Database(address)
    assert database.is_well()
    with other.write(), pytest.raises(StoreAway), database.write(waits=False):
        pass
    other.close()
    with database.write(waits=False) as connection:
        connection.execute(insert(steps_done).values(number=99))
        if connection.dialect.name == "sqlite":
            assert connection.exec_driver_sql("PRAGMA busy_timeout").scalar() == 0
    with database.read() as connection:
        assert connection.scalar(select(func.max(steps_done.c.number))) == 99


def test_sqlite_is_set_so_that_what_is_told_is_on_the_disk(tmp_path: Path) -> None:
    database = Database(f"sqlite:///{tmp_path / 'store.db'}")
    wanted = {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "busy_timeout": BUSY_MS}
    with database.read() as connection:
        found = {name: connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in wanted}
    assert found == wanted
    assert len(SQLITE_SETTINGS) == 5
    database.close()


def test_a_file_that_is_no_database_is_away_and_not_overwritten(tmp_path: Path) -> None:
    path = tmp_path / "store.db"
    path.write_bytes(b"something else entirely " * 100)
    database = Database(f"sqlite:///{path}")
    assert not database.is_well()
    with pytest.raises(StoreAway), database.write():
        pass
    assert path.read_bytes().startswith(b"something else")


def test_a_database_that_comes_back_is_used_again(tmp_path: Path) -> None:
    database = Database(f"sqlite:///{tmp_path / 'not-yet' / 'store.db'}")
    assert not database.is_well()
    (tmp_path / "not-yet").mkdir()
    assert database.is_well()
    database.close()
    assert sqlite3.connect(tmp_path / "not-yet" / "store.db").execute(
        "PRAGMA integrity_check"
    ).fetchone() == ("ok",)


@pytest.mark.parametrize("address", ["", "nothing", "mysql://host/name", "oracle://host/name"])
def test_an_address_that_is_none_is_refused(address: str) -> None:
    with pytest.raises(BadAddress):
        Database(address)
