"""Answers known before they are asked for: their bytes, compressed forms, ETag and how long to keep them."""

from __future__ import annotations

import gzip
import hashlib
from dataclasses import dataclass, field
from functools import cached_property

import brotli
from flask import Request, Response

FOR_EVER = "public, max-age=31536000, immutable"
ASK_AGAIN = "no-cache"
NEVER = "no-store"

CODINGS = ("br", "gzip")
"""Best first."""
BROTLI_QUALITY = 5
"""For what is compressed while somebody waits, each time anew; the build uses the most there is."""
SMALLEST = 11
GZIP_LEVEL = 6
WORTH_COMPRESSING = 1024


@dataclass
class Stored:
    """Bytes to be answered, and their compressed forms: those given, and others made when first asked for.

    `smallest`: as small as can be, for what is asked for again and again; the first who asks waits for it.
    """

    body: bytes
    content_type: str
    cache: str = ASK_AGAIN
    compressible: bool = True
    encoded: dict[str, bytes] = field(default_factory=dict)
    smallest: bool = False

    @cached_property
    def digest(self) -> str:
        """A short name for exactly these bytes."""
        return hashlib.sha256(self.body).hexdigest()[:32]

    def encode(self, coding: str) -> bytes:
        """The bytes in this coding."""
        if coding not in self.encoded:
            self.encoded[coding] = compress(self.body, coding, SMALLEST if self.smallest else BROTLI_QUALITY)
        return self.encoded[coding]


def compress(body: bytes, coding: str, brotli_quality: int = BROTLI_QUALITY) -> bytes:
    """The bytes in a coding, quickly rather than as small as can be unless told otherwise."""
    if coding == "br":
        return bytes(brotli.compress(body, quality=brotli_quality))
    return gzip.compress(body, GZIP_LEVEL, mtime=0)


def answer(stored: Stored, request: Request, status: int = 200) -> Response:
    """The stored bytes in the best coding that the client takes, or 304 when it has them already."""
    coding = _coding_for(stored, request)
    response = Response(
        stored.encode(coding) if coding else stored.body, status, content_type=stored.content_type
    )
    response.headers["Cache-Control"] = stored.cache
    if coding:
        response.headers["Content-Encoding"] = coding
    if stored.compressible:
        response.headers["Vary"] = "Accept-Encoding"
    if stored.cache == ASK_AGAIN and status == 200:
        response.set_etag(stored.digest, weak=True)
        response.make_conditional(request)
    return response


def _coding_for(stored: Stored, request: Request) -> str | None:
    worth_it = stored.compressible and len(stored.body) >= WORTH_COMPRESSING
    return coding_for(request) if worth_it else None


def coding_for(request: Request) -> str | None:
    """The best coding that the client takes, or None."""
    accepted = request.accept_encodings
    return next((coding for coding in CODINGS if accepted.quality(coding) > 0), None)
