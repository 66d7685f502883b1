"""Names for downloaded files, made from a title that may hold anything."""

from __future__ import annotations

import re
import unicodedata
from urllib.parse import quote

PLAIN_LENGTH = 60
PRETTY_OCTETS = 180
"""With an ending below the 255 octets that file systems take."""
UNNAMED = "session"

# What some file system or shell refuses or gives a meaning, and marks that show nothing.
_REFUSED = re.compile(r'[\x00-\x1f\x7f<>:"/\\|?*%\u200e\u200f\u061c]')
_DEVICES = re.compile(r"(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)", re.IGNORECASE)


def plain_name(title: str) -> str:
    """Small letters, digits and hyphens: for programs that know ASCII only."""
    letters = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    name = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:PLAIN_LENGTH].strip("-")
    return name if name and not _DEVICES.match(name) else UNNAMED


def pretty_name(title: str) -> str:
    """The title as near as a file's name may come to it."""
    name = " ".join(_REFUSED.sub(" ", title).split())
    while len(name.encode()) > PRETTY_OCTETS:
        name = name[:-1]
    name = name.strip(" .~-")
    return name if name and not _DEVICES.match(name) else UNNAMED


def disposition(title: str, ending: str) -> str:
    """The Content-Disposition of a download (RFC 6266), with both names."""
    pretty = quote(f"{pretty_name(title)}.{ending}", safe="")
    return f"attachment; filename=\"{plain_name(title)}.{ending}\"; filename*=UTF-8''{pretty}"
