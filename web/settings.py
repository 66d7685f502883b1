"""The settings, read from the environment. There are no others."""

from __future__ import annotations

import ipaddress
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from urllib.parse import urlsplit

ROOT = Path(__file__).resolve().parents[1]
VERSION = "0.1.0"
HOST, PORT = "127.0.0.1", 8000

YES, NO = ("1", "yes", "true", "on"), ("", "0", "no", "false", "off")
IN_MEMORY = "memory://"
SHORTEST_KEY = 16

HELP = {
    "HOST": "the address to listen at; 0.0.0.0 is every address of this machine",
    "PORT": "the port to listen at",
    "HTTPS": "yes when people reach the app over https, through a proxy: browsers then insist on it",
    "PROXY": "the address of that proxy, whose word on who asks is taken; empty where there is none",
    "PUBLIC_URL": "how people reach the app, such as https://row.example; for codes and links to it",
    "DATA_DIR": "the folder for what is stored: plans that were published, and walls",
    "DATABASE_URL": "another place for it, such as postgresql://user@host/name",
    "RATE_LIMITS_URL": "where requests are counted when several machines answer: redis://host:6379",
    "PUBLISH": "who may publish: open or closed; by itself open only where nobody comes from elsewhere",
    "PUBLISH_KEY": "publishing is open to those who give this key, of 16 characters or more",
}
"""One line for each setting that the environment can give."""


class CannotStart(Exception):  # noqa: N818 - it says what is so, and the remedy
    """The app cannot start: what is wrong, and what would do."""


class Publishing(StrEnum):
    """Who may put something on this server: everybody, those with its key, nobody."""

    OPEN = "open"
    KEY = "key"
    CLOSED = "closed"


@dataclass(frozen=True, slots=True)
class Settings:
    """Where the app listens and stores, how it is reached, who may publish, and the folders of its own tree.

    `public_url` is empty where it is not given; `database_url` and `rate_limits_url` always name a place.
    """

    host: str = HOST
    port: int = PORT
    https: bool = False
    proxy: str = ""
    public_url: str = ""
    data: Path = ROOT / "data"
    database_url: str = ""
    rate_limits_url: str = IN_MEMORY
    publish: Publishing = Publishing.OPEN
    publish_key: str = ""
    dist: Path = ROOT / "static" / "dist"
    icons: Path = ROOT / "static" / "icons"
    plans: Path = ROOT / "plans"

    @property
    def database(self) -> str:
        """The database's address: a file in the data folder unless another is given."""
        return self.database_url or f"sqlite:///{self.data.resolve() / 'slipway.db'}"


def settings_from(environment: Mapping[str, str]) -> Settings:
    """The settings that an environment gives. Raises CannotStart."""
    given = {name: environment.get(name, "").strip() for name in HELP}
    host, https = given["HOST"] or HOST, yes_from(given["HTTPS"], "HTTPS")
    public_url = _public_url(given["PUBLIC_URL"])
    alone = _is_this_machine(host) and not (given["PROXY"] or https or _leads_elsewhere(public_url))
    return Settings(
        host=host,
        port=port_from(given["PORT"] or str(PORT), "PORT"),
        https=https,
        proxy=given["PROXY"],
        public_url=public_url,
        data=Path(given["DATA_DIR"] or ROOT / "data"),
        database_url=given["DATABASE_URL"],
        rate_limits_url=given["RATE_LIMITS_URL"] or IN_MEMORY,
        publish=_publishing(given["PUBLISH"].lower(), given["PUBLISH_KEY"], alone),
        publish_key=given["PUBLISH_KEY"],
    )


def missing_from(settings: Settings) -> str:
    """A sentence about a setting that others make needful and that is not given, or nothing."""
    elsewhere = _is_this_machine(settings.host) and _leads_elsewhere(settings.public_url)
    if settings.proxy or not (settings.https or elsewhere):
        return ""
    said = "HTTPS is yes" if settings.https else f"PUBLIC_URL is {settings.public_url}"
    return (
        f"{said}, so people come through a proxy, but PROXY is not set: all of them count as one address and "
        "share what one may ask for. Give its address, such as PROXY=127.0.0.1"
    )


def port_from(text: str, setting: str) -> int:
    """The port that a setting names. Raises CannotStart."""
    if text.isascii() and text.isdecimal() and len(text) <= 5 and 0 < int(text) < 65_536:
        return int(text)
    raise CannotStart(f'{setting} is "{text}": write a number from 1 to 65535')


def yes_from(text: str, setting: str) -> bool:
    """Whether a setting says yes. Raises CannotStart."""
    word = text.lower()
    if word not in YES + NO:
        raise CannotStart(f'{setting} is "{text}": write yes or no')
    return word in YES


def _public_url(text: str) -> str:
    address = urlsplit(text)
    if text and (address.scheme not in ("http", "https") or not address.netloc or address.path.strip("/")):
        raise CannotStart(
            f'PUBLIC_URL is "{text}": write how people reach the app, such as https://row.example'
        )
    return text.rstrip("/")


def _publishing(word: str, key: str, alone: bool) -> Publishing:
    if key and len(key) < SHORTEST_KEY:
        raise CannotStart(f"PUBLISH_KEY has {len(key)} characters: give it {SHORTEST_KEY} or more")
    if word not in ("", "open", "closed"):
        raise CannotStart(f'PUBLISH is "{word}": write open or closed, or give a PUBLISH_KEY')
    if word and key:
        raise CannotStart(f"PUBLISH is {word} and there is a PUBLISH_KEY: give one of the two")
    if key:
        return Publishing.KEY
    return Publishing(word) if word else Publishing.OPEN if alone else Publishing.CLOSED


def _leads_elsewhere(public_url: str) -> bool:
    """Whether people reach the app by an address that is not this machine's own alone."""
    return bool(public_url) and not _is_this_machine(urlsplit(public_url).hostname or "")


def _is_this_machine(host: str) -> bool:
    try:
        return host == "localhost" or ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False
