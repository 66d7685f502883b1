"""What whoever runs the server can do: `python -m web.operator list|remove|ban` plans, `walls|remove-wall`.

It reads the same settings as the server, and may be used while that runs.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Mapping
from datetime import UTC, datetime

from web.settings import CannotStart, settings_from
from web.store.connection import BadAddress, Database, StoreAway
from web.store.links import LinkShelf
from web.store.walls import WallShelf

LATEST = 50


def main(arguments: list[str], environment: Mapping[str, str]) -> int:
    """Do what is asked. 0: done; 1: there was nothing to do it to; 2: it cannot be done."""
    asked = _parser().parse_args(arguments)
    try:
        database = Database(settings_from(environment).database)
        links, walls = LinkShelf(database), WallShelf(database)
        if asked.command == "list":
            return _list(links, asked.latest)
        return _list_walls(walls, asked.latest) if asked.command == "walls" else _change(links, walls, asked)
    except (CannotStart, BadAddress, StoreAway) as error:
        print(f"That cannot be done: {error}.", file=sys.stderr)
        return 2


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m web.operator", description="Published plans, and walls.")
    commands = parser.add_subparsers(dest="command", required=True)
    listing = commands.add_parser("list", help="the latest published plans, the last one first")
    walls = commands.add_parser("walls", help="the walls that were changed last, with what they show")
    for command in (listing, walls):
        command.add_argument("--latest", type=int, default=LATEST, help=f"how many ({LATEST})")
    remove = commands.add_parser("remove", help="take plans away; they may be published again")
    ban = commands.add_parser("ban", help="take plans away and refuse them from now on")
    ban.add_argument("--lift", action="store_true", help="let banned plans be published again")
    for command in (remove, ban):
        command.add_argument("id", nargs="+", help="the end of its address, /p/ID")
    remove_wall = commands.add_parser("remove-wall", help="take walls away for good, with their keys")
    remove_wall.add_argument("id", nargs="+", help="the end of its address, /wall/ID")
    return parser


def _list(shelf: LinkShelf, latest: int) -> int:
    rows = shelf.listed(latest)
    lines = [f"{row.id}  {_when(row.made_at)}  {row.bytes:6}  {row.title}" for row in rows]
    print("\n".join(lines) or "Nothing is published.")
    return 0


def _list_walls(shelf: WallShelf, latest: int) -> int:
    lines = [
        f"{row.id}  {_when(row.changed_at)}  {row.title or 'shows nothing'}" for row in shelf.listed(latest)
    ]
    print("\n".join(lines) or "There are no walls.")
    return 0


def _when(seconds: int) -> str:
    return datetime.fromtimestamp(seconds, UTC).strftime("%Y-%m-%d %H:%M")


def _change(shelf: LinkShelf, walls: WallShelf, asked: argparse.Namespace) -> int:
    if asked.command == "remove-wall":
        act, done, not_there = walls.remove, "removed", "there is no such wall"
    elif asked.command == "remove":
        act, done, not_there = shelf.remove, "removed", "there is no such plan"
    elif asked.lift:
        act, done, not_there = shelf.lift, "no longer banned", "it is not banned"
    else:
        act, done, not_there = shelf.ban, "banned", "there is no such plan"
    results = [(name, act(name)) for name in asked.id]
    for name, was_done in results:
        print(f"{name}: {done if was_done else not_there}")
    return 0 if all(was_done for _, was_done in results) else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:], os.environ))
