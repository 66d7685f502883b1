"""The settings, read from the environment. There are no others: nothing is stored on the server yet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
VERSION = "0.1.0"
HOST, PORT = "127.0.0.1", 8000

YES, NO = ("1", "yes", "true", "on"), ("", "0", "no", "false", "off")

HELP = {
    "HOST": "the address to listen at; 0.0.0.0 is every address of this machine",
    "PORT": "the port to listen at",
    "HTTPS": "yes when people reach the app over https, through a proxy: browsers then insist on it",
}
"""One line for each setting that the environment can give."""


class CannotStart(Exception):  # noqa: N818 - it says what is so, and the remedy
    """The app cannot start: what is wrong, and what would do."""


@dataclass(frozen=True, slots=True)
class Settings:
    """Where the app listens, whether it is reached over https, and the folders of its own tree."""

    host: str = HOST
    port: int = PORT
    https: bool = False
    dist: Path = ROOT / "static" / "dist"
    icons: Path = ROOT / "static" / "icons"
    plans: Path = ROOT / "plans"


def settings_from(environment: Mapping[str, str]) -> Settings:
    """The settings that an environment gives. Raises CannotStart."""
    given = {name: environment.get(name, "").strip() for name in HELP}
    return Settings(given["HOST"] or HOST, _port(given["PORT"] or str(PORT)), _yes(given["HTTPS"]))


def _port(text: str) -> int:
    if text.isascii() and text.isdecimal() and len(text) <= 5 and 0 < int(text) < 65_536:
        return int(text)
    raise CannotStart(f'PORT is "{text}": write a number from 1 to 65535')


def _yes(text: str) -> bool:
    word = text.lower()
    if word not in YES + NO:
        raise CannotStart(f'HTTPS is "{text}": write yes or no')
    return word in YES
