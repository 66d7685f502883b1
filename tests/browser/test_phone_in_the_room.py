"""A phone in the room: over https it keeps the app once it trusts this machine's authority, and not before.

Over plain http the app says what it cannot do, and offers the one-file page.
"""

from __future__ import annotations

import re
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server, free_port
from tests.browser.conftest import Launch
from tests.browser.targets import button, link, words

AUTHORITY = "/phone/slipway-authority.crt"
# A name that is nobody's (RFC 6761, 6.2), so that the page is no secure context as on this machine itself.
ELSEWHERE = "boathouse.test"
SAVED = "Saved on this device. It will run with no signal."
OPENER = urllib.request.build_opener(urllib.request.ProxyHandler({}))


class Room(NamedTuple):
    """A server for phones, and the ports of the proxy in front of it."""

    server: Server
    secure: int
    plain: int


@pytest.fixture
def room(tmp_path: Path) -> Iterator[Room]:
    """What `make phone` starts."""
    secure, plain = free_port(), free_port()
    ports = {"SECURE_PORT": str(secure), "PLAIN_PORT": str(plain), "ADDRESSES": "127.0.0.1"}
    server = Server(tmp_path / "data", (sys.executable, "-m", "web.for_phones"), ports)
    server.start()
    yield Room(server, secure, plain)
    server.kill()


def trust(authority: Path, home: Path) -> None:
    """Put an authority among those that this person's Chromium trusts (NSS's shared store)."""
    store = home / ".pki" / "nssdb"
    store.mkdir(parents=True)
    for arguments in (
        ["-N", "--empty-password"],
        ["-A", "-t", "C,,", "-n", "room", "-i", str(authority)],
    ):
        subprocess.run(["certutil", "-d", f"sql:{store}", *arguments], check=True)


def test_https_is_trusted_after_its_authority_is_and_plain_http_says_what_it_cannot_do(
    room: Room, launch: Launch, tmp_path: Path
) -> None:
    secure = f"https://127.0.0.1:{room.secure}"
    elsewhere = (f"--host-resolver-rules=MAP {ELSEWHERE} 127.0.0.1",)
    stranger = launch("chromium", home=tmp_path / "stranger", arguments=elsewhere)
    with pytest.raises(AssertionError, match="ERR_CERT_AUTHORITY_INVALID"):
        stranger.open(f"{secure}/plan/short-steady")

    stranger.open(f"http://{ELSEWHERE}:{room.plain}/")
    stranger.see(words(re.compile("^This connection is not https")))
    stranger.click(link("How this phone gets all of that"))
    stranger.see(link("this machine’s certificate"))
    assert accessibility_faults(stranger) == []
    stranger.open(f"http://{ELSEWHERE}:{room.plain}/plan/rate-ladder")
    stranger.click(button("Get the one-file page"))
    stranger.see(words(re.compile("^Made: ")))
    stranger.close()

    with OPENER.open(f"http://127.0.0.1:{room.plain}{AUTHORITY}", timeout=20) as answer:
        (tmp_path / "authority.crt").write_bytes(answer.read())
    trust(tmp_path / "authority.crt", tmp_path / "phone")
    phone = launch("chromium", home=tmp_path / "phone")
    phone.open(f"{secure}/plan/rate-ladder")
    phone.see(words(SAVED))
    assert phone.evaluate("() => navigator.serviceWorker.controller.scriptURL") == f"{secure}/sw.js"
    room.server.kill()
    phone.reload()
    phone.see(words(SAVED))
