"""The operator's commands, on the store that the server uses."""

from __future__ import annotations

import json
from pathlib import Path
from types import SimpleNamespace

import pytest

from planner.schemas.plan_schema import load_plan
from tests.web.asking import PLAN
from web.operator import main
from web.settings import settings_from
from web.store.connection import Database
from web.store.links import Banned, LinkShelf
from web.store.walls import NoSuchWall, WallShelf


@pytest.fixture
def environment(tmp_path: Path) -> dict[str, str]:
    """The environment of a server with an empty store."""
    return {"DATA_DIR": str(tmp_path)}


@pytest.fixture
def shelf(environment: dict[str, str]) -> LinkShelf:
    """The shelf of that server."""
    return LinkShelf(Database(settings_from(environment).database))


def test_an_empty_store_is_said_to_be_empty(
    environment: dict[str, str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["list"], environment) == 0
    assert capsys.readouterr().out == "Nothing is published.\n"


def test_plans_are_listed_with_name_time_size_and_title(
    environment: dict[str, str], shelf: LinkShelf, capsys: pytest.CaptureFixture[str]
) -> None:
    name = shelf.keep(load_plan({**PLAN, "title": "Früh am Fluß"})).id
    assert main(["list", "--latest", "1"], environment) == 0
    line = capsys.readouterr().out
    assert line.startswith(f"{name}  20")
    assert line.endswith("Früh am Fluß\n")


def test_a_plan_is_removed_banned_and_let_in_again(
    environment: dict[str, str], shelf: LinkShelf, capsys: pytest.CaptureFixture[str]
) -> None:
    plan = load_plan(PLAN)
    name = shelf.keep(plan).id
    assert main(["remove", name], environment) == 0
    assert shelf.find(name) is None
    shelf.keep(plan)
    assert main(["ban", name], environment) == 0
    with pytest.raises(Banned):
        shelf.keep(plan)
    assert main(["ban", "--lift", name], environment) == 0
    assert shelf.keep(plan).id == name
    assert capsys.readouterr().out.splitlines() == [
        f"{name}: removed",
        f"{name}: banned",
        f"{name}: no longer banned",
    ]


def test_walls_are_listed_the_last_changed_first_and_removed_with_their_keys(
    environment: dict[str, str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert main(["walls"], environment) == 0
    assert capsys.readouterr().out == "There are no walls.\n"
    shelf = WallShelf(Database(settings_from(environment).database))
    clock = iter((0, 60, 3600))
    monkeypatch.setattr("web.store.walls.time", SimpleNamespace(time=lambda: next(clock)))
    empty, led = shelf.make(), shelf.make()
    shelf.change(led.id, led.key, json.dumps({"plans": [{**PLAN, "title": "Früh am Fluß"}]}), None)
    assert main(["walls"], environment) == 0
    assert capsys.readouterr().out.splitlines() == [
        f"{led.id}  1970-01-01 01:00  Früh am Fluß",
        f"{empty.id}  1970-01-01 00:00  shows nothing",
    ]
    assert main(["walls", "--latest", "1"], environment) == 0
    assert empty.id not in capsys.readouterr().out
    assert main(["remove-wall", led.id, "nothing"], environment) == 1
    assert capsys.readouterr().out.splitlines() == [f"{led.id}: removed", "nothing: there is no such wall"]
    with pytest.raises(NoSuchWall):
        shelf.find(led.id, led.key)
    assert shelf.find(empty.id).version == 1


@pytest.mark.parametrize("command", [["remove"], ["ban"], ["ban", "--lift"]])
def test_a_name_that_is_not_there_is_told(
    environment: dict[str, str], capsys: pytest.CaptureFixture[str], command: list[str]
) -> None:
    assert main([*command, "nothing"], environment) == 1
    assert capsys.readouterr().out.startswith("nothing: ")


def test_a_store_that_cannot_be_reached_is_told_in_one_line(
    environment: dict[str, str], capsys: pytest.CaptureFixture[str]
) -> None:
    Path(environment["DATA_DIR"], "slipway.db").write_bytes(b"no database " * 99)
    assert main(["list"], environment) == 2
    assert capsys.readouterr().err.startswith("That cannot be done: ")
