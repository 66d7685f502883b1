"""What a request may not be. Many of these get past a server that uses the same libraries as they come."""

from __future__ import annotations

import json
import time

import pytest
from flask.testing import FlaskClient
from werkzeug.exceptions import BadRequest

from tests.web.asking import PLAN, post, post_raw, problem_of
from web.api.reading import BODY_BYTES, DEPTH, parse

BLOCK = {"for": {"seconds": 120}}


def plan_with(**fields: object) -> bytes:
    return json.dumps({"plan": {**PLAN, **fields}}).encode()


def plan_with_block(text: str) -> bytes:
    """A request around a block written out by hand, as JSON or nearly."""
    head = '{"plan":{"format":1,"title":"A piece","parts":[{"kind":"main","blocks":['
    return f"{head}{text}]}}]}}}}".encode()


ODD_BODIES: list[tuple[str, bytes, int]] = [
    ("981 brackets", b"[" * 981 + b"]" * 981, 400),
    ("brackets without end", b"[" * 200_000, 400),
    ("quotes without end", b'"\\"' * 50_000, 400),
    ("half a letter in a title", plan_with(title="\ud800"), 422),
    ("half a letter in a name", plan_with(**{"\ud800": 1}), 422),
    ("a NUL in a title", plan_with(title="a\x00b"), 422),
    ("a title of blanks", plan_with(title=" \u00a0 "), 422),
    ("2**63", plan_with_block('{"for":{"seconds":9223372036854775808}}'), 422),
    ("1e999", plan_with_block('{"for":{"seconds":1e999}}'), 422),
    ("1e999 as a split", plan_with_block('{"open":true,"effort":{"split":1e999}}'), 422),
    ("NaN", plan_with_block('{"for":{"seconds":NaN}}'), 400),
    ("Infinity", plan_with_block('{"for":{"seconds":Infinity}}'), 400),
    ("-Infinity", plan_with_block('{"for":{"seconds":-Infinity}}'), 400),
    ("NaN in words", plan_with_block('{"open":true,"effort":{"split":"NaN"}}'), 422),
    ("5,000 digits", plan_with_block('{"for":{"seconds":' + "9" * 5000 + "}}"), 400),
    ("4,000 digits", plan_with_block('{"for":{"seconds":' + "9" * 4000 + "}}"), 422),
    ("a number in words", plan_with_block('{"for":{"seconds":"12"}}'), 422),
    ("a number with an underscore", plan_with_block('{"for":{"seconds":"1_000"}}'), 422),
    ("a number with blanks", plan_with_block('{"for":{"seconds":" 12 "}}'), 422),
    ("digits of another script", plan_with_block('{"for":{"seconds":"\u0661\u0662"}}'), 422),
    ("1.9 for a whole number", plan_with_block('{"for":{"seconds":1.9}}'), 422),
    ("1.0 for a whole number", plan_with_block('{"for":{"seconds":1.0}}'), 422),
    ("true for a number", plan_with_block('{"for":{"seconds":true}}'), 422),
    ("on for true", plan_with_block('{"open":"on"}'), 422),
    ("1 for true", plan_with_block('{"open":1}'), 422),
    ("a name twice", plan_with_block('{"open":true,"rate":20,"rate":20}'), 400),
    ("a name of the language", plan_with(__proto__={}), 422),
    ("an unknown name", plan_with(colour="red"), 422),
    ("UTF-16", json.dumps({"plan": PLAN}).encode("utf-16"), 400),
    ("UTF-16 without its mark", json.dumps({"plan": PLAN}).encode("utf-16-le"), 400),
    ("UTF-8 with a mark", b"\xef\xbb\xbf" + json.dumps({"plan": PLAN}).encode(), 400),
    ("Latin-1", '{"plan":"\u00e9"}'.encode("latin-1"), 400),
    ("a list", b"[]", 422),
    ("null", b"null", 422),
    ("text", b'"plan"', 422),
    ("a number", b"1", 422),
    ("nothing", b"", 400),
    ("not JSON", b"plan=1", 400),
    ("something after the end", b"{} {}", 400),
    ("a title of 5 MB", plan_with(title="a" * 5_000_000), 413),
    ("a title of 200 kB", plan_with(title="a" * 200_000), 422),
    ("10**9 rounds", plan_with_block('{"times":1000000000,"blocks":[{"open":true}]}'), 422),
    ("rounds in rounds in rounds", plan_with_block(
        '{"times":100,"blocks":[' * 4 + json.dumps(BLOCK) + "]}" * 4), 422),
    ("20,000 blocks", plan_with_block(",".join(['{"open":1}'] * 20_000)), 422),
    ("20,000 unknown names", plan_with(**{f"n{i}": 1 for i in range(20_000)}), 422),
]  # fmt: skip


@pytest.mark.parametrize(("body", "status"), [o[1:] for o in ODD_BODIES], ids=[o[0] for o in ODD_BODIES])
@pytest.mark.parametrize("path", ["/api/timeline", "/api/shorthand"])
def test_an_odd_body_is_refused(client: FlaskClient, path: str, body: bytes, status: int) -> None:
    answer = post_raw(client, path, body)
    assert answer.status_code == status
    problem_of(answer)


@pytest.mark.parametrize("body", [o[1] for o in ODD_BODIES], ids=[o[0] for o in ODD_BODIES])
def test_an_odd_body_is_refused_without_long_work(client: FlaskClient, body: bytes) -> None:
    """Generous, so that a busy machine passes: without care some of these take minutes."""
    began = time.process_time()
    post_raw(client, "/api/timeline", body)
    assert time.process_time() - began < 2


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({"Content_Type": "text/plain"}, 415),
        ({"Content_Type": "application/x-www-form-urlencoded"}, 415),
        ({"Content_Type": "multipart/form-data; boundary=x"}, 415),
        ({"Content_Type": ""}, 415),
        ({"Content_Type": "application/json; charset=utf-7"}, 400),
        ({"Content_Type": "application/json; charset=utf-16"}, 400),
        ({"Content_Encoding": "gzip"}, 415),
        ({"Content_Encoding": "br"}, 415),
        ({"Content_Type": "application/json; charset=UTF-8"}, 200),
        ({"Content_Encoding": "identity"}, 200),
    ],
)
def test_only_plain_json_is_read(client: FlaskClient, headers: dict[str, str], status: int) -> None:
    assert post(client, "/api/timeline", {"plan": PLAN}, **headers).status_code == status


def test_a_body_at_the_limit_is_read_and_one_byte_more_is_not(client: FlaskClient) -> None:
    body = json.dumps({"plan": PLAN}).encode()
    padded = body + b" " * (BODY_BYTES - len(body))
    assert post_raw(client, "/api/timeline", padded).status_code == 200
    assert post_raw(client, "/api/timeline", padded + b" ").status_code == 413


def test_the_deepest_plan_is_read_and_a_repeat_too_many_has_a_place(client: FlaskClient) -> None:
    def nested(deep: int) -> bytes:
        return plan_with_block('{"times":1,"blocks":[' * deep + json.dumps(BLOCK) + "]}" * deep)

    assert post_raw(client, "/api/timeline", nested(4)).status_code == 200
    (problem,) = problem_of(post_raw(client, "/api/timeline", nested(5)))["problems"]
    assert problem["pointer"] == "/plan/parts/0/blocks/0" + "/blocks/0" * 4
    assert problem["sentence"].startswith("repeats stand more than 4 deep")


def test_brackets_in_text_are_not_counted() -> None:
    text = "[" * 1000 + '"' + "{" * 1000
    assert parse(json.dumps([text]).encode()) == [text]


@pytest.mark.parametrize("deep", [DEPTH, DEPTH + 1])
def test_brackets_are_counted_up_to_the_limit(deep: int) -> None:
    body = b"[" * deep + b"]" * deep + b" "
    if deep > DEPTH:
        with pytest.raises(BadRequest, match=f"character {deep}: brackets stand more than {DEPTH} deep"):
            parse(body)
    else:
        assert parse(body)


@pytest.mark.parametrize(
    ("body", "sentence"),
    [
        (b'{"a":}', "line 1, column 6: expecting value"),
        (b'{"a":1,"a":2}', 'the field "a" stands twice in one object'),
        (b'{"a":NaN}', "NaN is not a number in JSON"),
        (b"\xff", "byte 1 of the body is not UTF-8"),
    ],
)
def test_what_cannot_be_read_is_named_with_its_place(body: bytes, sentence: str) -> None:
    with pytest.raises(BadRequest, match=sentence):
        parse(body)
