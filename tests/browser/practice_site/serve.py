"""Serves the practice page under a content policy as strict as the app's; reads HOST and PORT, answers /healthz."""

from __future__ import annotations

import os
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; worker-src 'self'; img-src 'self'; "
    "require-trusted-types-for 'script'; trusted-types worker"
)


class Handler(SimpleHTTPRequestHandler):
    def end_headers(self) -> None:
        self.send_header("Content-Security-Policy", POLICY)
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def do_GET(self) -> None:  # noqa: N802 - the base class names it
        if self.path == "/healthz":
            self.send_response(200)
            self.end_headers()
        else:
            super().do_GET()


address = (os.environ["HOST"], int(os.environ["PORT"]))
ThreadingHTTPServer(address, partial(Handler, directory=str(Path(__file__).parent))).serve_forever()
