"""What a first visit transfers: the page, what it links to, the service worker and all that it keeps first.

What comes afterwards, when the app is kept already, is told beside it.
"""

from __future__ import annotations

import json
import re
import urllib.request
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.measuring import Row, at_most
from tests.bench.servers import running
from tests.browser.app_server import Server

AIM_KB = 120.0
START = ("/", "/sw.js")
LINK = re.compile(r"""(?:src|href)=["']?(/[^"'\s>]+)""")
# Not through a proxy, whatever the environment says: the server is on this machine.
OPENER = urllib.request.build_opener(urllib.request.ProxyHandler({}))
LATER = re.compile(r'\["/static/dist/[^\]]*\]')
AFTERWARDS = "/api/technique"
PRECACHED = re.compile(r'\[\{"url":.*?\}\]')


def rows() -> Iterator[Row]:
    """The bytes in all, and by kind."""
    with TemporaryDirectory() as folder, running(Server(Path(folder))) as server:
        sizes = {address: len(_body(server.url + address, coding="br")) for address in addresses(server.url)}
        later = sum(len(_body(server.url + address, coding="br")) for address in afterwards(server.url))
    kinds: Counter[str] = Counter()
    for address, size in sizes.items():
        kinds[_kind(address)] += size
    told = ", ".join(f"{kind} {size / 1000:.1f}" for kind, size in kinds.most_common())
    yield at_most("first load, compressed", sum(sizes.values()) / 1000, AIM_KB, " kB", told)
    yield Row("kept after the first load", f"{later / 1000:.2f} kB")


def addresses(url: str) -> list[str]:
    """Every address that a first visit asks for, each once."""
    page = _text(url + "/")
    worker = _text(url + "/sw.js")
    listed = PRECACHED.search(worker)
    assert listed, "the service worker holds no list of what it keeps"
    kept = [item["url"] for item in json.loads(listed[0])]
    linked = [link.split("#")[0] for link in LINK.findall(page)]
    return sorted({*START, *linked, *kept})


def afterwards(url: str) -> list[str]:
    """Every address that is asked for when the app is kept: scripts of later screens, the technique."""
    listed = LATER.search(_text(url + "/sw.js"))
    assert listed, "the service worker holds no list of what it keeps afterwards"
    return [AFTERWARDS, *json.loads(listed[0])]


def _kind(address: str) -> str:
    if address.startswith("/api/library"):
        return "plans"
    endings = {".woff2": "fonts", ".png": "icons", ".svg": "icons", ".js": "code", ".css": "code"}
    return endings.get(Path(address).suffix, "page")


def _text(url: str) -> str:
    return _body(url, coding="identity").decode("utf-8")


def _body(url: str, coding: str) -> bytes:
    """The body as it goes over the wire to a client that takes this coding."""
    request = urllib.request.Request(url, headers={"Accept-Encoding": coding})
    with OPENER.open(request, timeout=10) as answer:
        return bytes(answer.read())
