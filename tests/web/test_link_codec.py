"""Links that carry their plan: round trips, every way to be wrong, and canonical JSON against its RFC."""

from __future__ import annotations

import base64
import json
import os
import random
import struct
import tracemalloc
import zlib
from typing import Any

import pytest
import rfc8785
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.errors import InputError
from planner.schemas.plan_schema import load_plan
from tests.shared import links
from tests.strategies import DOCUMENTS
from tests.web.asking import PLAN
from web.link_codec import DICTIONARY, LinkError, canonical, decode, encode

# RFC 8785, appendix B: the bits of a number and its form in canonical JSON.
NUMBERS = {
    "0000000000000000": "0",
    "8000000000000000": "0",
    "0000000000000001": "5e-324",
    "8000000000000001": "-5e-324",
    "7fefffffffffffff": "1.7976931348623157e+308",
    "ffefffffffffffff": "-1.7976931348623157e+308",
    "4340000000000000": "9007199254740992",
    "c340000000000000": "-9007199254740992",
    "4430000000000000": "295147905179352830000",
    "44b52d02c7e14af5": "9.999999999999997e+22",
    "44b52d02c7e14af6": "1e+23",
    "44b52d02c7e14af7": "1.0000000000000001e+23",
    "444b1ae4d6e2ef4e": "999999999999999700000",
    "444b1ae4d6e2ef4f": "999999999999999900000",
    "444b1ae4d6e2ef50": "1e+21",
    "3eb0c6f7a0b5ed8c": "9.999999999999997e-7",
    "3eb0c6f7a0b5ed8d": "0.000001",
    "41b3de4355555553": "333333333.3333332",
    "41b3de4355555554": "333333333.33333325",
    "41b3de4355555555": "333333333.3333333",
    "41b3de4355555556": "333333333.3333334",
    "41b3de4355555557": "333333333.33333343",
    "becbf647612f3696": "-0.0000033333333333333333",
    "43143ff3c1cb0959": "1424953923781206.2",
}
MUTATIONS = int(os.environ.get("MUTATIONS", "5000"))
"""A sample; MUTATIONS=100000 is the whole."""


# --- Canonical JSON


@pytest.mark.parametrize(("bits", "written"), NUMBERS.items())
def test_numbers_are_written_as_the_rfc_writes_them(bits: str, written: str) -> None:
    (number,) = struct.unpack(">d", bytes.fromhex(bits))
    assert rfc8785.dumps(number) == written.encode()


def test_the_sample_of_the_rfc_comes_out_as_it_says() -> None:
    """RFC 8785, sections 3.2.2 to 3.2.4."""
    sample = json.loads(
        r"""{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
        "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}"""
    )
    wanted = (
        r"""{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"""
        r""""string":"€$\u000f\nA'B\"\\\\\"/"}"""
    )
    assert rfc8785.dumps(sample) == wanted.encode()


def test_names_are_sorted_as_the_rfc_sorts_them() -> None:
    """RFC 8785, section 3.2.3: by UTF-16 code units."""
    named = {"\u20ac": 5, "\r": 1, "\ufb33": 7, "1": 2, "\U0001f600": 6, "\u0080": 3, "\u00f6": 4}
    assert list(json.loads(rfc8785.dumps(named)).values()) == [1, 2, 3, 4, 5, 6, 7]


def test_checksum_and_base64url_are_those_of_their_standards() -> None:
    """CRC-32/ISO-HDLC of "123456789" is cbf43926 (its published check value); RFC 4648, section 10."""
    assert zlib.crc32(b"123456789") == 0xCBF43926
    assert base64.urlsafe_b64encode(b"foobar") == b"Zm9vYmFy"
    assert base64.urlsafe_b64encode(b"fooba") == b"Zm9vYmE="


# --- Round trips


@given(DOCUMENTS)
@settings(max_examples=100, deadline=None)
def test_a_plan_comes_out_of_a_link_as_it_went_in(document: Any) -> None:
    try:
        plan = load_plan(document)
    except InputError:
        return
    assert decode(encode(plan)) == plan


@pytest.mark.parametrize("behind", [".", ").", " \n", ",", "”", "\n\n"])
def test_what_messages_put_behind_a_link_or_into_it_does_no_harm(behind: str) -> None:
    payload = encode(load_plan(PLAN))
    assert decode(payload + behind) == decode(payload[:9] + "\r\n" + payload[9:]) == load_plan(PLAN)


def test_a_plan_too_long_for_a_link_has_none() -> None:
    chance = random.Random(1)

    def with_calls(count: int) -> Any:
        calls = [{"text": _noise(chance), "stroke": n} for n in range(1, count + 1)]
        blocks = [
            {"for": {"seconds": 600}, "rate": 20, "calls": calls[n : n + 20]} for n in range(0, count, 20)
        ]
        return load_plan({**PLAN, "parts": [{"kind": "main", "blocks": blocks}]})

    long = with_calls(60)
    assert decode(encode(long)) == long
    with pytest.raises(LinkError, match="too long for a link"):
        encode(with_calls(120))


def _noise(chance: random.Random) -> str:
    return "".join(chance.choices("abcdefghijklmnopqrstuvwxyz0123456789", k=119))


# --- What both sides read


def test_links_of_version_1_open_for_ever() -> None:
    kept = links.read(links.KEPT)
    assert decode(kept["payload"]) == load_plan(kept["plan"])


def test_the_dictionary_is_frozen() -> None:
    assert zlib.crc32(DICTIONARY.read_bytes()) == 0x5581CD81


def test_timelines_are_those_that_the_file_holds() -> None:
    """When this fails: python -m tests.shared.links, and look at the change first."""
    for payload, digest in links.read(links.OPENED):
        assert links.digest_of(decode(payload)) == digest


def test_verdicts_are_those_that_the_file_holds() -> None:
    """When this fails: python -m tests.shared.links."""
    kept = links.read(links.VERDICTS)
    assert [list(row) for row in links.verdicts()] == kept
    assert 50 < sum(taken for _, taken in kept) < len(kept) - 50


@pytest.mark.parametrize(("fault", "payload"), links.read(links.FAULTS))
def test_what_cannot_be_opened_is_told_by_its_kind(fault: str, payload: str) -> None:
    with pytest.raises(LinkError) as told:
        decode(payload)
    assert told.value.fault == fault


# --- Damage


def test_mutated_links_raise_the_codecs_own_error_and_no_other() -> None:
    """Bit flips, cuts, doublings, and bodies spoilt under a true checksum; none opens as another plan."""
    chance = random.Random(26)
    payloads = [payload for payload, _ in links.read(links.OPENED)]
    for _ in range(MUTATIONS):
        payload = chance.choice(payloads)
        mutated = _mutated(payload, chance)
        try:
            canonical(decode(mutated))
        except LinkError:
            continue


def _mutated(payload: str, chance: random.Random) -> str:
    body = bytearray(base64.urlsafe_b64decode(payload + "=" * (-len(payload) % 4))[5:])
    place = chance.randrange(len(body))
    match chance.randrange(6):
        case 0:
            return payload[: chance.randrange(len(payload))]
        case 1:
            return payload + payload[chance.randrange(len(payload)) :]
        case 2:
            at = chance.randrange(len(payload))
            return payload[:at] + chance.choice("AZaz09-_é#\n %") + payload[at + 1 :]
        case 3:
            body[place] ^= 1 << chance.randrange(8)
        case 4:
            del body[place : place + chance.randrange(1, 9)]
        case _:
            body[place:place] = chance.randbytes(chance.randrange(1, 9))
    return links.sealed(chance.choice((1, 1, 1, 2)), bytes(body))


@given(st.text(max_size=60) | st.binary(max_size=60).map(lambda body: links.sealed(1, body)))
def test_anything_at_all_raises_the_codecs_own_error(text: str) -> None:
    with pytest.raises(LinkError):
        decode(text)


def test_a_bomb_takes_little_room() -> None:
    """5 MB of zeros in 5 KB: no more than the bound of what a plan may be is unpacked."""
    bomb = links.sealed(1, links.packed(b"\0" * 5_000_000))
    tracemalloc.start()
    with pytest.raises(LinkError):
        decode(bomb)
    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert most < 2_000_000
