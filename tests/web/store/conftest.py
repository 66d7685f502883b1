"""A database of each kind: SQLite in a file, and a PostgreSQL server of our own."""

from __future__ import annotations

import os
import pwd
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import text

from web.store.connection import Database
from web.store.tables import metadata

KINDS = ("sqlite", "postgresql")
# Nobody may run PostgreSQL as root.
USER = "nobody" if os.geteuid() == 0 else None


@pytest.fixture(scope="session")
def postgresql() -> Iterator[str]:
    """The address of a PostgreSQL server of our own, reached by a socket."""
    programs = sorted(Path("/usr/lib/postgresql").glob("*/bin"))
    assert programs, "there is no PostgreSQL server: .ci/system-packages installs it"
    folder = Path(tempfile.mkdtemp(prefix="slipway-postgresql-"))
    if USER:
        os.chown(folder, pwd.getpwnam(USER).pw_uid, -1)
    control = [programs[-1] / "pg_ctl", "--silent", "--wait", "--pgdata", folder / "data"]
    _run(programs[-1] / "initdb", "--no-sync", "--auth=trust", "--username=row", "--pgdata", folder / "data")
    _run(*control, "start", "--log", folder / "log", "--options", f"-k {folder} -h '' -F")
    try:
        yield f"postgresql://row@/postgres?host={folder}"
    finally:
        _run(*control, "stop", "--mode", "immediate")
        shutil.rmtree(folder, ignore_errors=True)


def _run(*command: object) -> None:
    subprocess.run([str(part) for part in command], check=True, user=USER, stdout=subprocess.DEVNULL, cwd="/")


@pytest.fixture(params=KINDS)
def address(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The address of an empty database."""
    if request.param == "sqlite":
        return f"sqlite:///{tmp_path / 'store.db'}"
    server: str = request.getfixturevalue("postgresql")
    _empty(server)
    return server


@pytest.fixture
def database(address: str) -> Iterator[Database]:
    """An empty database."""
    opened = Database(address)
    yield opened
    opened.close()


def _empty(address: str) -> None:
    server = Database(address)
    with server.write() as connection:
        for table in metadata.tables:
            connection.execute(text(f"DROP TABLE {table}"))
    server.close()
