"""HAProxy in front of the app: https for phones, and plain http for those that do not trust it yet."""

from __future__ import annotations

import os
import shutil
import signal
import socket
import subprocess
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from web.settings import CannotStart

HERE = "127.0.0.1"
STOP_SECONDS = 5
# Debian keeps it where only root looks.
WHERE = os.pathsep.join((os.environ.get("PATH", os.defpath), "/usr/sbin"))

_CONFIG = """\
global
  log stderr format raw local0 warning
  ssl-default-bind-options ssl-min-ver TLSv1.2 no-tls-tickets

defaults
  mode http
  log global
  timeout connect 5s
  timeout client 60s
  timeout http-request 15s
  # Files take a while to be made.
  timeout server 130s

frontend secure
  bind *:{secure_port} ssl crt {certificate} alpn h2,http/1.1
  http-request set-header X-Forwarded-Proto https
  default_backend app

frontend plain
  bind *:{plain_port}
  http-request set-header X-Forwarded-Proto http
  default_backend app

backend app
  http-request set-header X-Forwarded-For %[src]
  http-request set-header X-Forwarded-Host %[req.hdr(Host)]
  server app {here}:{app_port}
"""


class ProxyEnded(Exception):  # noqa: N818 - it says what is so
    """The proxy has ended while the app was running."""


@contextmanager
def proxy(
    folder: Path, certificate: Path, secure_port: int, plain_port: int, app_port: int
) -> Iterator[None]:
    """Runs while the app does, and stops it by ending first. Raises CannotStart, and ProxyEnded then."""
    program = shutil.which("haproxy", path=WHERE)
    if program is None:
        raise CannotStart("haproxy is not here: sudo apt-get install haproxy")
    for port in (secure_port, plain_port):
        _see_that_it_is_free(port)
    config = folder / "haproxy.cfg"
    config.write_text(
        _CONFIG.format(
            certificate=certificate,
            secure_port=secure_port,
            plain_port=plain_port,
            app_port=app_port,
            here=HERE,
        ),
        encoding="utf-8",
    )
    # It dies with this process, however that ends, and leaves Ctrl-C to it.
    command = ["setpriv", "--pdeathsig", "TERM", program, "-db", "-f", str(config)]
    process = subprocess.Popen(command, start_new_session=True)
    wanted = threading.Event()
    watched = threading.Thread(target=_stop_when_it_ends, args=(process, wanted), daemon=True)
    watched.start()
    try:
        yield
        if process.poll() is not None:
            raise ProxyEnded(
                f"haproxy ended by itself (status {process.returncode}); what it said stands above"
            )
    finally:
        wanted.set()
        process.terminate()
        watched.join(STOP_SECONDS)


def _stop_when_it_ends(process: subprocess.Popen[bytes], wanted: threading.Event) -> None:
    process.wait()
    if not wanted.is_set():
        os.kill(os.getpid(), signal.SIGTERM)


def _see_that_it_is_free(port: int) -> None:
    with socket.socket() as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind(("", port))
        except OSError as error:
            raise CannotStart(
                f"nothing can listen at port {port} ({error.strerror}): end what does, or give another port "
                "with SECURE_PORT or PLAIN_PORT"
            ) from None
