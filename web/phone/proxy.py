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


@contextmanager
def proxy(
    folder: Path, certificate: Path, secure_port: int, plain_port: int, app_port: int
) -> Iterator[None]:
    """Runs while the app does; ends this process, too, when it ends by itself. Raises CannotStart."""
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
    # It dies with this process, however that ends.
    process = subprocess.Popen(["setpriv", "--pdeathsig", "TERM", program, "-db", "-f", str(config)])
    watched = threading.Thread(target=_end_with, args=(process,), daemon=True)
    watched.start()
    try:
        yield
    finally:
        process.terminate()
        watched.join(STOP_SECONDS)


def _end_with(process: subprocess.Popen[bytes]) -> None:
    if process.wait() not in (0, -signal.SIGTERM, 128 + signal.SIGTERM):
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
