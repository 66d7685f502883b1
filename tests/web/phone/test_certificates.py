"""The authority and the certificate: what other programs make of them, and when they are made anew.

Certificates are judged by TLS handshakes of Python's ssl module, which checks names as RFC 6125 asks.
"""

from __future__ import annotations

import hashlib
import ssl
import subprocess
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from web.phone.certificates import Certificates, certificates
from web.settings import CannotStart

ADDRESS, NAME = "192.168.7.20", "boathouse.local"


def made_in(folder: Path, *addresses: str, anew: bool = False, days_later: int = 0) -> Certificates:
    now = datetime.now(UTC) + timedelta(days=days_later)
    return certificates(folder, addresses or (ADDRESS,), NAME, anew=anew, now=now)


def handshake(authority: Path, server: Path, name: str) -> None:
    """Shake hands in memory, asking for that name or address. Raises ssl.SSLCertVerificationError."""
    ours = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    ours.load_cert_chain(server, f"{server}.key")
    theirs = ssl.create_default_context(cafile=str(authority))
    to_server, to_client = ssl.MemoryBIO(), ssl.MemoryBIO()
    there = ours.wrap_bio(to_server, to_client, server_side=True)
    here = theirs.wrap_bio(to_client, to_server, server_hostname=name)
    for _ in range(3):
        for side in (here, there):
            try:
                side.do_handshake()
            except ssl.SSLWantReadError:
                continue
    assert here.cipher()


def test_whoever_trusts_the_authority_trusts_each_address_and_the_name_and_nothing_else(
    tmp_path: Path,
) -> None:
    made_in(tmp_path, ADDRESS, "10.1.2.3")
    for name in (ADDRESS, "10.1.2.3", NAME):
        handshake(tmp_path / "authority.pem", tmp_path / "server.pem", name)
    with pytest.raises(ssl.SSLCertVerificationError, match="IP address mismatch"):
        handshake(tmp_path / "authority.pem", tmp_path / "server.pem", "192.168.7.21")


@pytest.mark.parametrize(("kind", "name"), [("DNS", "rowing.example"), ("IP", "203.0.113.5")])
def test_the_authority_cannot_vouch_for_places_outside_the_network(
    tmp_path: Path, kind: str, name: str
) -> None:
    """Name constraints (RFC 5280, 4.2.1.10): a stolen key opens nothing elsewhere."""
    made_in(tmp_path)
    stolen = tmp_path / "stolen.pem"
    signed = ["-CA", str(tmp_path / "authority.pem"), "-CAkey", str(tmp_path / "authority.pem.key")]
    says = ["-addext", f"subjectAltName={kind}:{name}", "-addext", "basicConstraints=critical,CA:false"]
    key = ["-newkey", "rsa:2048", "-noenc", "-keyout", f"{stolen}.key"]
    asked = [
        "openssl",
        "req",
        "-x509",
        *key,
        "-subj",
        "/CN=x",
        "-days",
        "9",
        *signed,
        *says,
        "-out",
        str(stolen),
    ]
    subprocess.run(asked, check=True, capture_output=True)
    with pytest.raises(ssl.SSLCertVerificationError, match="permitted subtree violation"):
        handshake(tmp_path / "authority.pem", stolen, name)


def test_keys_are_for_their_owner_alone(tmp_path: Path) -> None:
    folder = tmp_path / "phone"
    made_in(folder)
    assert folder.stat().st_mode & 0o777 == 0o700
    (folder / "server.pem.key").chmod(0o644)
    made_in(folder)
    assert {path.name: path.stat().st_mode & 0o777 for path in folder.glob("*.key")} == {
        "authority.pem.key": 0o600,
        "server.pem.key": 0o600,
    }


def test_what_there_is_stays_and_what_is_made_is_told(tmp_path: Path) -> None:
    first = made_in(tmp_path)
    assert len(first.made) == 2
    again = made_in(tmp_path)
    assert (again.made, again.authority) == ((), first.authority)
    body = ssl.PEM_cert_to_DER_cert((tmp_path / "authority.pem").read_text())
    assert again.fingerprint.replace(":", "").lower() == hashlib.sha256(body).hexdigest()


def test_another_address_needs_another_certificate_and_no_other_authority(tmp_path: Path) -> None:
    first = made_in(tmp_path)
    moved = made_in(tmp_path, "192.168.7.99")
    assert moved.made == ("a certificate for 192.168.7.99, boathouse.local",)
    assert moved.authority == first.authority
    handshake(tmp_path / "authority.pem", tmp_path / "server.pem", "192.168.7.99")


def test_a_certificate_is_renewed_before_it_runs_out(tmp_path: Path) -> None:
    first = made_in(tmp_path)
    later = made_in(tmp_path, days_later=370)
    assert later.authority == first.authority
    assert later.made == ("a certificate for 192.168.7.20, boathouse.local",)


def test_an_authority_that_runs_out_is_told_and_left_alone_until_another_is_asked_for(tmp_path: Path) -> None:
    first = made_in(tmp_path)
    with pytest.raises(CannotStart, match=r"runs out on \d+ \w+ \d{4}: start with NEW_AUTHORITY=yes"):
        made_in(tmp_path, days_later=5 * 365 - 20)
    assert made_in(tmp_path).authority == first.authority
    anew = made_in(tmp_path, anew=True)
    assert len(anew.made) == 2
    assert anew.authority != first.authority
    handshake(tmp_path / "authority.pem", tmp_path / "server.pem", ADDRESS)


@pytest.mark.parametrize("lost", ["authority.pem", "authority.pem.key"])
def test_half_an_authority_is_told_and_not_replaced(tmp_path: Path, lost: str) -> None:
    made_in(tmp_path)
    (tmp_path / lost).unlink()
    with pytest.raises(CannotStart, match="only authority"):
        made_in(tmp_path)
    assert not (tmp_path / lost).exists()


def test_an_address_outside_the_authoritys_networks_is_told(tmp_path: Path) -> None:
    first = made_in(tmp_path)
    with pytest.raises(CannotStart, match=r"does not vouch for 203\.0\.113\.9: start with NEW_AUTHORITY=yes"):
        made_in(tmp_path, "203.0.113.9")
    assert made_in(tmp_path, "203.0.113.9", anew=True).authority != first.authority


def test_openssl_that_is_missing_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(CannotStart, match="sudo apt-get install openssl"):
        made_in(tmp_path)
