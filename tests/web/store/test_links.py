"""Published plans: one name for one plan, room that ends, and what an operator takes away."""

from __future__ import annotations

import hashlib
import json
from base64 import b32encode
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest
from sqlalchemy import update

from planner.plan import Plan
from planner.schemas.plan_schema import load_plan
from tests.web.asking import PLAN
from web.link_codec import canonical
from web.store import links as links_module
from web.store.connection import Database
from web.store.links import Banned, Full, LinkShelf
from web.store.tables import links


@pytest.fixture
def shelf(database: Database) -> LinkShelf:
    """An empty shelf."""
    return LinkShelf(database)


def plan(number: int = 0, **more: Any) -> Plan:
    return load_plan({**PLAN, "title": f"Plan {number}", **more})


def test_a_plan_is_found_again_by_its_name(shelf: LinkShelf) -> None:
    kept = shelf.keep(plan())
    assert kept.is_new
    assert shelf.find(kept.id) == canonical(plan()).decode()
    assert shelf.find("a" * 16) is None
    assert shelf.known(plan()) == kept.id
    assert shelf.known(plan(1)) is None


def test_the_name_is_the_beginning_of_the_digest_of_the_canonical_json(shelf: LinkShelf) -> None:
    """Base32 (RFC 4648) of SHA-256 over canonical JSON (RFC 8785), in small letters."""
    digest = hashlib.sha256(canonical(plan())).digest()
    assert shelf.keep(plan()).id == b32encode(digest)[:16].decode().lower()


def test_the_same_plan_has_the_same_name_and_is_kept_once(shelf: LinkShelf) -> None:
    first, again = shelf.keep(plan()), shelf.keep(plan())
    assert (again.id, again.is_new) == (first.id, False)
    assert len(shelf.listed(10)) == 1


def test_the_same_plan_from_many_at_once_is_kept_once(shelf: LinkShelf) -> None:
    with ThreadPoolExecutor(8) as crowd:
        names = {kept.id for kept in crowd.map(lambda n: shelf.keep(plan(n % 4)), range(40))}
    assert len(names) == len(shelf.listed(100)) == 4


def test_a_name_that_another_plan_has_grows_longer(shelf: LinkShelf, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(links_module, "digest_of", lambda text: "a" * 17 + str(len(text)) + "b" * 30)
    names = [shelf.keep(plan(number)).id for number in (1, 10, 100)]
    assert [len(name) for name in names] == [16, 17, 18]
    assert [json.loads(shelf.find(name) or "")["title"] for name in names] == [
        "Plan 1",
        "Plan 10",
        "Plan 100",
    ]


def test_text_in_any_script_comes_back_as_it_was(shelf: LinkShelf) -> None:
    odd = plan(0, title="漢字 עברית 👍🏽 e\u0301 '; DROP TABLE links; --".replace("e\u0301", "é"))
    assert shelf.find(shelf.keep(odd).id) == canonical(odd).decode()


def test_a_full_shelf_takes_no_more_but_still_knows_what_it_has(database: Database) -> None:
    shelf = LinkShelf(database, most=2)
    names = [shelf.keep(plan(number)).id for number in (1, 2)]
    with pytest.raises(Full):
        shelf.keep(plan(3))
    assert shelf.keep(plan(2)).id == names[1]
    assert shelf.remove(names[0])
    assert shelf.keep(plan(3)).is_new


def test_bytes_run_out_as_well(database: Database) -> None:
    shelf = LinkShelf(database, most_bytes=len(canonical(plan(1))) + 5)
    shelf.keep(plan(1))
    with pytest.raises(Full):
        shelf.keep(plan(2))


def test_a_plan_that_was_removed_may_be_published_again(shelf: LinkShelf) -> None:
    name = shelf.keep(plan()).id
    assert shelf.remove(name)
    assert not shelf.remove(name)
    assert shelf.find(name) is None
    assert shelf.keep(plan()).id == name


def test_a_banned_plan_is_gone_and_not_taken_again_until_the_ban_is_lifted(shelf: LinkShelf) -> None:
    name = shelf.keep(plan()).id
    assert shelf.ban(name)
    assert not shelf.ban(name)
    for ask in (lambda: shelf.find(name), lambda: shelf.keep(plan())):
        with pytest.raises(Banned):
            ask()
    assert shelf.lift(name)
    assert not shelf.lift(name)
    assert shelf.keep(plan()).id == name


def test_the_latest_are_listed_first(shelf: LinkShelf, database: Database) -> None:
    for number in range(3):
        name = shelf.keep(plan(number)).id
        with database.write() as connection:
            connection.execute(update(links).where(links.c.id == name).values(made_at=1000 + number))
    assert [row.title for row in shelf.listed(2)] == ["Plan 2", "Plan 1"]
    assert shelf.listed(1)[0].bytes == len(canonical(plan(2)))
