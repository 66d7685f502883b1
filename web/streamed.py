"""Answers made while they are sent: compressed piece by piece, so that none of them is ever held whole."""

from __future__ import annotations

import zlib
from collections.abc import Callable, Iterator

import brotli
from flask import Request, Response

from web.stored import NEVER, coding_for

BROTLI_QUALITY = 2
"""The first that finds again what stood megabytes before: an hour of clicks, 173 MB, took 13 kB."""
GZIP_LEVEL = 1
_GZIP_WINDOW = 31


def answer_streamed(pieces: Iterator[bytes], length: int, content_type: str, request: Request) -> Response:
    """The pieces, `length` bytes in all, in the best coding that the client takes; kept by nobody."""
    coding = coding_for(request)
    response = Response(CODERS[coding](pieces) if coding else pieces, content_type=content_type)
    response.headers["Cache-Control"] = NEVER
    response.headers["Vary"] = "Accept-Encoding"
    if coding:
        response.headers["Content-Encoding"] = coding
    else:
        response.content_length = length
    return response


def _in_brotli(pieces: Iterator[bytes]) -> Iterator[bytes]:
    coder = brotli.Compressor(quality=BROTLI_QUALITY)
    yield from filter(None, map(coder.process, pieces))
    yield coder.finish()


def _in_gzip(pieces: Iterator[bytes]) -> Iterator[bytes]:
    coder = zlib.compressobj(GZIP_LEVEL, wbits=_GZIP_WINDOW)
    yield from filter(None, map(coder.compress, pieces))
    yield coder.flush()


CODERS: dict[str, Callable[[Iterator[bytes]], Iterator[bytes]]] = {"br": _in_brotli, "gzip": _in_gzip}
