"""Links and plans that Python and TypeScript have to judge alike, in `tests/shared/links`.

- `opened.json`: payloads of plans, with the SHA-256 of the canonical JSON of the timeline that the planner
  compiles. `python -m tests.shared.links` works the digests out again after a wanted change of timelines, and
  adds the built-in plans that are not there yet; payloads stay.
- `verdicts.json`: plan documents, most of them spoilt in one place, and whether the planner takes them as
  they are.
- `faults.json`: payloads that cannot be opened, and why.
- `version-1.json`: a link of version 1 and its plan, never written again: it has to open for ever.
"""

from __future__ import annotations

import hashlib
import json
import random
import zlib
from base64 import urlsafe_b64encode
from collections.abc import Iterator
from copy import deepcopy
from pathlib import Path
from typing import Any

import rfc8785

from planner.errors import InputError
from planner.plan import Plan
from planner.schemas.plan_schema import load_plan
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import compile_timeline
from tests.planner.test_schemas import EVERYTHING
from web import link_codec
from web.builtin_plans import load_library
from web.link_codec import canonical, decode, encode
from web.settings import Settings

FOLDER = Path(__file__).parent / "links"
OPENED, VERDICTS, FAULTS, KEPT = (
    FOLDER / f"{name}.json" for name in ("opened", "verdicts", "faults", "version-1")
)
SPOILT = 450


def digest_of(plan: Plan) -> str:
    """The SHA-256 of the canonical JSON of a plan's timeline for anybody."""
    return hashlib.sha256(rfc8785.dumps(dump_timeline(compile_timeline(plan)))).hexdigest()  # type: ignore[arg-type]


def is_taken(document: Any) -> bool:
    """Whether the planner takes a document, and would write it just so."""
    try:
        return rfc8785.dumps(document) == canonical(load_plan(document))
    except (InputError, ValueError):
        return False


# --- Spoilt plans

VALUES: tuple[Any, ...] = (
    *(
        None,
        True,
        False,
        "",
        "x",
        " x",
        "x ",
        "a  b",
        [],
        {},
        [None],
        {"seconds": 60},
        "light",
        "\u202ex",
        "e\u0301",
    ),
    *(
        "x" * 60,
        "x" * 61,
        "x" * 80,
        "x" * 81,
        "x" * 120,
        "x" * 121,
        "x" * 600,
        "x" * 601,
        "\u200b",
        "🙂" * 60,
    ),
    *(
        "\u2800",
        "a\u0301\u0301\u0301\u0301\u0301",
        "q\u0301\u0302\u0303\u0304",
        "\ufdd0",
        "👍🏽",
        "\u00a0",
        "\ttab",
    ),
    *(-1, 0, 1, 2, 4, 5, 7, 8, 9, 10, 11, 19, 20, 40, 49, 50, 51, 60, 61, 100, 101, 102, 120, 121, 230, 231),
    *(250, 251, 360, 361, 2000, 2001, 14_400, 14_401, 100_000, 100_001, 0.1, 0.05, 0.5, 0.25, 0.65, 0.655),
    *(3.01, 115.5, 115.55, -40.1, 59.9, 360.1, 9.5, 1e21, 1.5e-7, -0.5),
)


def spoilt(document: Any, chance: random.Random) -> Any:
    """A copy with one thing changed: a value, a field too many or too few, an item twice."""
    copy = deepcopy(document)
    holder, key = chance.choice(list(_places(copy)))
    match chance.randrange(5):
        case 0 | 1:
            holder[key] = deepcopy(chance.choice(VALUES))
        case 2:
            del holder[key]
        case 3 if isinstance(holder, list):
            holder.append(deepcopy(holder[key]))
        case 3:
            holder[
                chance.choice(
                    ["stroke", "strokes_left", "times", "rest", "open", "rate", "between", "__proto__"]
                )
            ] = deepcopy(chance.choice(VALUES))
        case _:
            _, other = chance.choice(list(_named(document)))
            holder[key] = deepcopy(other)
    return copy


def _places(value: Any) -> Iterator[tuple[Any, Any]]:
    inside = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in list(inside):
        yield value, key
        yield from _places(inner)


def _named(value: Any) -> Iterator[tuple[Any, Any]]:
    return ((key, holder[key]) for holder, key in _places(value))


def verdicts() -> Iterator[tuple[Any, bool]]:
    """Plans in their sizes and depths at the edge, then spoilt ones, each with its verdict."""
    chance = random.Random(20260)
    sources = [EVERYTHING, *[SMALL] * 9]
    for document in (EVERYTHING, *_sizes(), *(spoilt(chance.choice(sources), chance) for _ in range(SPOILT))):
        yield document, is_taken(document)


BLOCK: dict[str, Any] = {"for": {"seconds": 60}, "rate": 20}
SMALL: dict[str, Any] = {
    "format": 1,
    "title": "Small",
    "setting": {"lever": 4},
    "parts": [
        {"kind": "warm-up", "blocks": [{"for": {"strokes": 20}, "rate": 18, "effort": {"split": 130.5}}]},
        {"kind": "gap", "for": {"seconds": 180}},
        {
            "kind": "main",
            "blocks": [
                {"times": 3, "blocks": [{"for": {"metres": 500}, "effort": {"two_k_power_fraction": 0.65}}]},
                {
                    "for": {"seconds": 60},
                    "drill": {"name": "one foot", "sides": 2, "side_seconds": 25, "swap_seconds": 10},
                },
                {"open": True, "calls": [{"text": "Row on", "stroke": 3}], "effort": {"cr10": 3.5}},
                {
                    "for": {"seconds": 60},
                    "effort": {"heart_rate": {"percent_max": 70}},
                    "calls": [{"text": "x", "strokes_left": 2}],
                },
            ],
        },
    ],
}


def _sizes() -> Iterator[Any]:
    def plan(*blocks: Any) -> Any:
        return {"format": 1, "title": "x", "parts": [{"kind": "main", "blocks": list(blocks)}]}

    def deep(levels: int) -> Any:
        return BLOCK if levels == 0 else {"times": 2, "blocks": [deep(levels - 1)]}

    yield from (plan(deep(levels)) for levels in range(7))
    yield from (plan(*[BLOCK] * count) for count in (1, 100, 101))
    yield from (plan({"times": times, "blocks": [BLOCK] * 5}) for times in (99, 100))
    yield plan({"times": 100, "blocks": [BLOCK] * 5}, BLOCK)
    yield plan({"times": 100, "blocks": [BLOCK] * 4, "between": [{"rest": True, "for": {"seconds": 1}}]})
    yield plan({"times": 100, "blocks": [BLOCK] * 4, "between": [{"rest": True, "for": {"seconds": 1}}] * 2})
    yield from (plan({"times": 3, "blocks": [{"for": {"seconds": seconds}}]}) for seconds in (14_400, 14_399))
    yield plan({"times": 3, "blocks": [{"for": {"seconds": 14_400}}]}, {"for": {"seconds": 1}})
    yield from (
        plan({"for": {"metres": metres}, "effort": {"split": 360}}) for metres in (60_000, 60_001, 60_100)
    )
    yield from (
        plan({"for": {"metres": 100_000}}, {"for": {"metres": metres}}) for metres in (44_000, 44_004)
    )
    yield from (
        {"format": 1, "title": "x", "parts": [{"kind": "gap", "for": {"seconds": 60}}] * n}
        for n in (0, 12, 13)
    )


# --- Links that cannot be opened


def faults() -> Iterator[tuple[str, str]]:
    """What is wrong, as this file knows it, and the payload."""
    good = encode(load_plan(EVERYTHING))
    yield from (("empty", text) for text in ("", " ", ".", "\n).\n"))
    yield from (
        ("doubled", text) for text in (good + good, f"{good}#{good}", f"{good}https://row.example/p#{good}")
    )
    yield from (
        ("damaged", text) for text in (good[:-1], good[:100], good[:6], "AQ", "§", good + "A", good[1:])
    )
    yield from (
        ("damaged", text)
        for text in (good.swapcase(), good[:50] + "é" + good[51:], good[:50] + "+" + good[51:])
    )
    yield "damaged", sealed(2, b"hello")[:-1]
    yield from (("future", sealed(version, b"hello")) for version in (0, 2, 255))
    yield "too-long", sealed(1, b"x" * 6000)
    yield "too-long", sealed(1, packed(b"0" * (link_codec.UNPACKED_BYTES + 1)))
    yield "too-long", sealed(1, packed(b"\0" * 5_000_000))
    for text in NO_PLANS:
        yield "no-plan", sealed(1, packed(text))
    yield from (
        ("no-plan", sealed(1, body)) for body in (b"\xff" * 9, packed(canonical(load_plan(SMALL)))[:-9])
    )


_TEXT = canonical(load_plan(SMALL))
NO_PLANS = (
    *(
        b"",
        b"null",
        b"[]",
        b'"plan"',
        b"{}",
        b"{",
        b"\xef\xbb\xbf{}",
        b"\xff\xfe",
        b"[" * 200_000,
        b"9" * 6000,
    ),
    *(b'{"format":1}', b'{"a":NaN}', b'{"a":1e999}', b'{"a":"\\ud800"}', _TEXT + b" ", _TEXT + b"\n"),
    _TEXT.replace(b'"format":1', b'"format":1.0'),
    _TEXT.replace(b'"format":1', b'"format":2'),
    _TEXT.replace(b'"format":1', b'"format":1,"format":1'),
    _TEXT.replace(b"Small", b"Sma\\u006cl"),
    _TEXT.replace(b"Small", b"Sma\\u0000l"),
    b'{"__proto__":1,' + _TEXT[1:],
)


def sealed(version: int, body: bytes) -> str:
    """A payload of this version with a true checksum."""
    first = bytes([version])
    whole = first + zlib.crc32(first + body).to_bytes(4) + body
    return urlsafe_b64encode(whole).rstrip(b"=").decode("ascii")


def packed(text: bytes) -> bytes:
    """A text as links pack it."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -15, 9, zdict=link_codec.DICTIONARY.read_bytes())
    return packer.compress(text) + packer.flush()


# --- The files


def read(file: Path) -> Any:
    """What a file holds."""
    return json.loads(file.read_text(encoding="utf-8"))


def write(file: Path, rows: list[Any]) -> None:
    """One row a line."""
    lines = ",\n".join(json.dumps(row, separators=(",", ":")) for row in rows)
    file.write_text(f"[\n{lines}\n]\n", encoding="utf-8")


if __name__ == "__main__":
    held = [payload for payload, _ in read(OPENED)]
    known = {canonical(decode(payload)) for payload in held}
    built_in = [built.plan for built in load_library(Settings().plans).plans.values()]
    held += [encode(plan) for plan in built_in if canonical(plan) not in known]
    write(OPENED, [[payload, digest_of(decode(payload))] for payload in held])
    write(VERDICTS, [list(row) for row in verdicts()])
    write(FAULTS, [list(row) for row in faults()])
