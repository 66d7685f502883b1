"""Serves the practice page under a content policy as strict as the app's; reads HOST and PORT likewise."""

from __future__ import annotations

import os
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; worker-src 'self'; "
    "img-src 'self'; require-trusted-types-for 'script'; trusted-types worker"
)


class Handler(SimpleHTTPRequestHandler):
    """Files, and the page itself at every other path."""

    def end_headers(self) -> None:
        self.send_header("Content-Security-Policy", POLICY)
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()

    def translate_path(self, path: str) -> str:
        file = super().translate_path(path)
        return file if Path(file).is_file() else super().translate_path("/index.html")


address = (os.environ["HOST"], int(os.environ["PORT"]))
ThreadingHTTPServer(address, partial(Handler, directory=str(Path(__file__).parent))).serve_forever()
