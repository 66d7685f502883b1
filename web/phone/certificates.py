"""A little authority of this machine's own, and the certificate that it gives the machine; made by openssl.

The authority is what phones are told to trust, so it is never made anew by itself, and it can vouch for
nothing but addresses of local networks. The machine's certificate is renewed before it runs out, and when
addresses change.
"""

from __future__ import annotations

import hashlib
import ipaddress
import os
import re
import ssl
import subprocess
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from web.settings import CannotStart

AUTHORITY_DAYS = 5 * 365
SERVER_DAYS = 397
"""iOS takes 825 days at the most (Apple, HT210176) [M]; public ones have no more than 398."""
RENEWED_BEFORE = timedelta(days=30)
LOCAL_NETWORKS = ("10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "127.0.0.0/8")
"""RFC 1918, RFC 3927, and the machine itself."""
ANEW = "start with NEW_AUTHORITY=yes for a new one, which every phone then has to be told to trust"

_AUTHORITY = """\
[req]
distinguished_name = name
x509_extensions = extensions
[name]
[extensions]
basicConstraints = critical, CA:true, pathlen:0
keyUsage = critical, keyCertSign, cRLSign
subjectKeyIdentifier = hash
nameConstraints = critical, {permitted}
"""
_SERVER = """\
[req]
distinguished_name = name
x509_extensions = extensions
[name]
[extensions]
basicConstraints = critical, CA:false
keyUsage = critical, digitalSignature
extendedKeyUsage = serverAuth
subjectKeyIdentifier = hash
authorityKeyIdentifier = keyid
subjectAltName = {names}
"""


@dataclass(frozen=True, slots=True)
class Certificates:
    """The authority (DER), its SHA-256, the ends of both, the file for the proxy, what was made just now."""

    authority: bytes
    fingerprint: str
    authority_ends: datetime
    server_ends: datetime
    server: Path
    made: tuple[str, ...]


def certificates(
    folder: Path, addresses: Sequence[str], name: str, *, anew: bool, now: datetime | None = None
) -> Certificates:
    """What the folder holds, made where it is missing; `anew` makes another authority. Raises CannotStart."""
    now = now or datetime.now(UTC)
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    made = []
    authority, server = folder / "authority.pem", folder / "server.pem"
    kept = [path for path in (authority, _key_of(authority)) if path.exists()]
    if anew or not kept:
        _make_authority(authority, addresses, name)
        made.append("an authority of this machine's own, which phones are to trust")
    elif len(kept) == 1:
        raise CannotStart(f"of the authority in {folder} only {kept[0].name} is left: {ANEW}")
    ends = _end_of(authority)
    if ends <= now + RENEWED_BEFORE:
        raise CannotStart(f"the authority in {folder} runs out on {day(ends)}: {ANEW}")
    if made or not _serves(server, authority, addresses, name, now):
        _make_server(server, authority, addresses, name)
        made.append("a certificate for " + ", ".join(filter(None, (*addresses, name))))
    for key in (_key_of(authority), _key_of(server)):
        key.chmod(0o600)
    body = ssl.PEM_cert_to_DER_cert(authority.read_text(encoding="ascii"))
    return Certificates(body, _fingerprint(body), ends, _end_of(server), server, tuple(made))


def day(moment: datetime) -> str:
    """As people write it, such as 3 March 2031."""
    return f"{moment.day} {moment:%B %Y}"


def _key_of(certificate: Path) -> Path:
    """Where the proxy looks for it by itself."""
    return certificate.with_name(certificate.name + ".key")


def _make_authority(into: Path, addresses: Iterable[str], name: str) -> None:
    networks = list(map(ipaddress.IPv4Network, LOCAL_NETWORKS))
    networks += [
        ipaddress.IPv4Network(address)
        for address in addresses
        if not any(ipaddress.IPv4Address(address) in network for network in networks)
    ]
    permitted = [f"permitted;IP:{network.network_address}/{network.netmask}" for network in networks]
    permitted += [f"permitted;DNS:{name or 'localhost'}"]
    subject = f"/CN=Slipway on {name or 'this machine'} {os.urandom(3).hex()}"
    _make(into, _AUTHORITY.format(permitted=", ".join(permitted)), subject, AUTHORITY_DAYS)


def _make_server(into: Path, authority: Path, addresses: Sequence[str], name: str) -> None:
    names = [*(f"IP:{address}" for address in addresses), *([f"DNS:{name}"] if name else [])]
    issuer = ["-CA", str(authority), "-CAkey", str(_key_of(authority))]
    _make(into, _SERVER.format(names=", ".join(names)), f"/CN={addresses[0]}", SERVER_DAYS, issuer)
    if not _is_vouched_for(into, authority, addresses, name):
        into.unlink()
        raise CannotStart(f"the authority in {into.parent} does not vouch for {', '.join(addresses)}: {ANEW}")


def _make(into: Path, config: str, subject: str, days: int, issuer: Sequence[str] = ()) -> None:
    """A key and its certificate, put in their places together."""
    with TemporaryDirectory(dir=into.parent) as folder:
        written, certificate = Path(folder) / "config", Path(folder) / into.name
        written.write_text(config, encoding="ascii")
        kind = ["-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-noenc", "-sha256"]
        out = ["-keyout", str(_key_of(certificate)), "-out", str(certificate)]
        _openssl(
            *("req", "-x509", "-config", str(written), *kind, "-subj", subject, "-days", str(days)),
            *(*issuer, *out),
        )
        _key_of(certificate).chmod(0o600)
        _key_of(certificate).replace(_key_of(into))
        certificate.replace(into)


def _serves(server: Path, authority: Path, addresses: Sequence[str], name: str, now: datetime) -> bool:
    if not server.exists() or not _key_of(server).exists():
        return False
    return _end_of(server) > now + RENEWED_BEFORE and _is_vouched_for(server, authority, addresses, name)


def _is_vouched_for(server: Path, authority: Path, addresses: Iterable[str], name: str) -> bool:
    asked = [
        *(("-verify_ip", address) for address in addresses),
        *([("-verify_hostname", name)] if name else []),
    ]
    usual = ["verify", "-x509_strict", "-purpose", "sslserver", "-CAfile", str(authority)]
    try:
        for one in asked:
            _openssl(*usual, *one, str(server))
    except CannotStart:
        return False
    return True


def _end_of(certificate: Path) -> datetime:
    said = _openssl("x509", "-in", str(certificate), "-noout", "-enddate")
    end = re.search(r"notAfter=(.+)", said)
    assert end, said
    return datetime.fromtimestamp(ssl.cert_time_to_seconds(end[1]), UTC)


def _fingerprint(body: bytes) -> str:
    """As phones show it: pairs of hexadecimal digits."""
    return hashlib.sha256(body).digest().hex(":").upper()


def _openssl(*arguments: str) -> str:
    try:
        done = subprocess.run(
            ["openssl", *arguments], capture_output=True, text=True, check=False, umask=0o077
        )
    except FileNotFoundError:
        raise CannotStart("openssl is not here: sudo apt-get install openssl") from None
    if done.returncode:
        raise CannotStart(f"openssl {arguments[0]} says: {done.stderr.strip()}")
    return done.stdout
