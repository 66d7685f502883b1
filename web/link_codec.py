"""A plan inside a link, and the canonical JSON that names it.

A payload is base64url without padding (RFC 4648) of: a version byte; the CRC-32 (of ISO-HDLC, as in zlib) of
that byte and all that follows, four bytes, the first the highest; the plan's canonical JSON (RFC 8785) as raw
deflate (RFC 1951) with a preset dictionary. Later versions keep the first five bytes so, which is how a link
from a later version is told from a damaged one. Only the one spelling of a plan that `encode` gives is taken,
so that no two readers can understand a link in two ways. The phone has the same codec in
static/src/data/link-codec.ts.
"""

from __future__ import annotations

import json
import re
import zlib
from base64 import urlsafe_b64decode, urlsafe_b64encode
from enum import StrEnum
from functools import cache

import rfc8785

from planner.errors import InputError
from planner.plan import Plan
from planner.schemas.plan_schema import dump_plan, load_plan
from web.settings import ROOT

VERSION = 1
LONGEST = 8000
"""Characters of a payload: what every reader of addresses takes (RFC 9110, 4.1), in round numbers."""
UNPACKED_BYTES = 256 * 1024
DICTIONARY = ROOT / "static" / "src" / "data" / "link-dictionary-1.txt"
"""Frozen: links of version 1 open with exactly these bytes."""
_HEAD = 5
_PAYLOAD = re.compile(r"[A-Za-z0-9_-]*", re.ASCII)
_AFTER_IT = ".,;:!?)]>}'\"»”’…"
"""What a sentence puts behind a link."""


class Fault(StrEnum):
    """Why a link cannot be opened."""

    EMPTY = "empty"
    DAMAGED = "damaged"
    DOUBLED = "doubled"
    FUTURE = "future"
    TOO_LONG = "too-long"
    NO_PLAN = "no-plan"


SENTENCES = {
    Fault.EMPTY: "the link holds no plan: what should stand after its # was cut off",
    Fault.DAMAGED: "the link is damaged or was cut short: copy the whole of it, or ask for it again",
    Fault.DOUBLED: "the link stands there twice, one after the other: take one of them away",
    Fault.FUTURE: "the link was made by a newer Slipway than this one: it opens after an update",
    Fault.TOO_LONG: "the plan is too long for a link that holds all of it",
    Fault.NO_PLAN: "the link is whole, but what it holds is no plan",
}


class LinkError(ValueError):
    """A link that cannot be opened, or a plan that no link can hold: which fault, in a sentence."""

    def __init__(self, fault: Fault) -> None:
        self.fault = fault
        super().__init__(SENTENCES[fault])


def canonical(plan: Plan) -> bytes:
    """A plan's document as canonical JSON (RFC 8785): the same plan gives the same bytes."""
    return rfc8785.dumps(dump_plan(plan))  # type: ignore[arg-type]


def encode(plan: Plan) -> str:
    """The payload of a link that carries this plan. Raises LinkError when it would be too long."""
    return payload_of(canonical(plan))


def payload_of(text: bytes) -> str:
    """The same, for a plan's canonical JSON."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS, 9, zdict=_dictionary())
    body = packer.compress(text) + packer.flush()
    payload = urlsafe_b64encode(_sealed(VERSION, body)).rstrip(b"=").decode("ascii")
    if len(payload) > LONGEST:
        raise LinkError(Fault.TOO_LONG)
    return payload


def decode(payload: str) -> Plan:
    """The plan of a link, whatever a message put behind or inside it. Raises LinkError and nothing else."""
    version, body = _opened(payload)
    if version != VERSION:
        raise LinkError(Fault.FUTURE)
    return _plan_of(_inflated(body))


def _sealed(version: int, body: bytes) -> bytes:
    first = bytes([version])
    return first + zlib.crc32(first + body).to_bytes(4) + body


def _opened(payload: str) -> tuple[int, bytes]:
    """The version and the body of a payload that is whole."""
    text = "".join(payload.split()).rstrip(_AFTER_IT)
    if not text:
        raise LinkError(Fault.EMPTY)
    half = len(text) // 2
    if "#" in text or text[:half] == text[half:]:
        raise LinkError(Fault.DOUBLED)
    if len(text) > LONGEST:
        raise LinkError(Fault.TOO_LONG)
    if not _PAYLOAD.fullmatch(text) or len(text) % 4 == 1:
        raise LinkError(Fault.DAMAGED)
    read = urlsafe_b64decode(text + "=" * (-len(text) % 4))
    if len(read) <= _HEAD or _sealed(read[0], read[_HEAD:]) != read:
        raise LinkError(Fault.DAMAGED)
    return read[0], read[_HEAD:]


def _inflated(body: bytes) -> bytes:
    """What was packed, unless it is packed wrongly or comes to more than any plan does."""
    unpacker = zlib.decompressobj(-zlib.MAX_WBITS, zdict=_dictionary())
    try:
        unpacked = unpacker.decompress(body, UNPACKED_BYTES)
    except zlib.error:
        raise LinkError(Fault.NO_PLAN) from None
    if not unpacker.eof:
        raise LinkError(Fault.TOO_LONG if len(unpacked) == UNPACKED_BYTES else Fault.NO_PLAN)
    return unpacked


def _plan_of(text: bytes) -> Plan:
    try:
        plan = load_plan(json.loads(text.decode("utf-8")))
    except (InputError, ValueError, RecursionError):
        raise LinkError(Fault.NO_PLAN) from None
    if canonical(plan) != text:
        raise LinkError(Fault.NO_PLAN)
    return plan


@cache
def _dictionary() -> bytes:
    return DICTIONARY.read_bytes()
