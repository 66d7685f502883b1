"""`make phone`: serves phones in the same network over https, with a certificate made on the spot."""

from __future__ import annotations

import os
import sys
from collections.abc import Mapping

from web.factory import create_app
from web.phone.addresses import addresses_here, name_here
from web.phone.certificates import Certificates, certificates, day
from web.phone.pages import PAGE, Room
from web.phone.proxy import HERE, ProxyEnded, proxy
from web.serving import run, serve
from web.settings import port_from, settings_from, yes_from

SECURE_PORT, PLAIN_PORT = 8443, 8080
SETTINGS_ARE = "This takes no arguments, only the app's own settings and these from the environment:"
HELP = {
    "SECURE_PORT": f"the port for https, {SECURE_PORT} unless another is given",
    "PLAIN_PORT": f"the port for plain http, where the certificate is fetched, else {PLAIN_PORT}",
    "ADDRESSES": "the addresses by which phones reach this machine, where it finds others",
    "NEW_AUTHORITY": "yes to make a new authority, which every phone then has to be told to trust",
}


def main(arguments: list[str]) -> int:
    """Serve until SIGTERM or Ctrl-C; 1 when that cannot even begin."""
    try:
        return run(arguments, SETTINGS_ARE, HELP, lambda: _serve_phones(os.environ))
    except ProxyEnded as error:
        print(f"Slipway cannot go on: {error}.", file=sys.stderr)
        return 1


def _serve_phones(environment: Mapping[str, str]) -> None:
    given = {name: environment.get(name, "").strip() for name in HELP}
    secure_port = port_from(given["SECURE_PORT"] or str(SECURE_PORT), "SECURE_PORT")
    plain_port = port_from(given["PLAIN_PORT"] or str(PLAIN_PORT), "PLAIN_PORT")
    addresses, name = addresses_here(given["ADDRESSES"]), name_here()
    secure_url = f"https://{addresses[0]}:{secure_port}"
    settings = settings_from(
        {"PUBLIC_URL": secure_url, **environment, "HOST": HERE, "PROXY": HERE, "HTTPS": ""}
    )
    folder = settings.data / "phone"
    anew = yes_from(given["NEW_AUTHORITY"], "NEW_AUTHORITY")
    made = certificates(folder, addresses, name, anew=anew)
    room = Room(
        secure_url=secure_url,
        plain_url=f"http://{addresses[0]}:{plain_port}",
        authority=made.authority,
        fingerprint=made.fingerprint,
        ends=made.authority_ends,
    )
    with proxy(folder, made.server, secure_port, plain_port, settings.port):
        _say(made, room)
        serve(create_app(settings, room), settings)


def _say(made: Certificates, room: Room) -> None:
    for what in made.made:
        print(f"Made just now: {what}.")
    print(
        f"The authority runs out on {day(made.authority_ends)}, the certificate on {day(made.server_ends)}."
    )
    print(f"On a phone open {room.plain_url}{PAGE} and do what it says; then {room.secure_url}")


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
