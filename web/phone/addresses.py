"""By which names and addresses phones in the same network reach this machine."""

from __future__ import annotations

import ipaddress
import re
import socket
import subprocess
from collections.abc import Iterable

from web.settings import CannotStart

NAME = re.compile(r"[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?")
# Asked only which way it would be reached; nothing is sent to it (RFC 5737: addresses for documentation).
FAR_AWAY = ("198.51.100.1", 9)


def addresses_here(given: str) -> list[str]:
    """The IPv4 addresses of this machine, or those given; phones use the first. Raises CannotStart."""
    found = _checked(given.split()) if given else _found()
    if not found:
        raise CannotStart(
            "this machine is in no network: join the one that the phones are in, or give its address, "
            "such as ADDRESSES=192.168.1.20"
        )
    return found


def name_here() -> str:
    """This machine's name in the local network (RFC 6762), such as boathouse.local; "" where it has none."""
    name = socket.gethostname().partition(".")[0].lower()
    return f"{name}.local" if NAME.fullmatch(name) else ""


def _checked(given: Iterable[str]) -> list[str]:
    try:
        return [str(ipaddress.IPv4Address(address)) for address in given]
    except ValueError as error:
        raise CannotStart(f"ADDRESSES holds no IPv4 address: {error}") from None


def _found() -> list[str]:
    try:
        said = subprocess.run(["hostname", "--all-ip-addresses"], capture_output=True, text=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        return []
    listed = [address for address in said.stdout.split() if ":" not in address]
    usual = _usual()
    return sorted(listed, key=lambda address: address != usual)


def _usual() -> str:
    """The address from which this machine would ask a far one; "" where it has no way there."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(FAR_AWAY)
        except OSError:
            return ""
        return str(probe.getsockname()[0])
