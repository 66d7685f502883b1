"""Reading a request: JSON and nothing else, of bounded size and depth, with nothing said twice."""

from __future__ import annotations

import json
import re
from collections import Counter
from typing import Any, NoReturn

from flask import Request
from werkzeug.exceptions import BadRequest, UnsupportedMediaType

BODY_BYTES = 256 * 1024
DEPTH = 20
"""Room for the deepest plan that is allowed (16), and for a repeat too many, refused by its place."""

# A string, even one that never ends, or a bracket: one pass over the text, whatever it holds.
_STRING_OR_BRACKET = re.compile(r'"[^"\\]*+(?:\\.[^"\\]*+)*+"?|[\[{]|[\]}]', re.DOTALL)


def json_body(request: Request) -> bytes:
    """The raw body of a request that says it is plain JSON. Raises 400, 413 or 415."""
    if request.headers.get("Content-Encoding", "identity").lower() != "identity":
        raise UnsupportedMediaType("the body is compressed: send it as it is")
    if request.mimetype != "application/json":
        raise UnsupportedMediaType("send JSON, with Content-Type: application/json")
    charset = request.mimetype_params.get("charset", "utf-8").lower()
    if charset not in ("utf-8", "utf8"):
        raise BadRequest("the text is not in UTF-8: send JSON in UTF-8")
    return request.get_data(cache=False)


def parse(body: bytes) -> Any:
    """What a JSON text says. Raises 400, saying where, for anything that could be read in two ways."""
    if body.startswith(b"\xef\xbb\xbf"):
        raise BadRequest("the body begins with a byte order mark: leave it out")
    try:
        text = body.decode("utf-8")
    except UnicodeDecodeError as error:
        raise BadRequest(f"byte {error.start + 1} of the body is not UTF-8") from None
    _check_depth(text)
    try:
        return json.loads(text, object_pairs_hook=_no_name_twice, parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        raise BadRequest(
            f"line {error.lineno}, column {error.colno}: {error.msg[0].lower()}{error.msg[1:]}"
        ) from None
    except ValueError:
        raise BadRequest("a number in the body has thousands of digits: write a shorter one") from None


def _check_depth(text: str) -> None:
    if text.count("[") + text.count("{") <= DEPTH:
        return
    depth = 0
    for match in _STRING_OR_BRACKET.finditer(text):
        first = match[0][0]
        depth += (first in "[{") - (first in "]}")
        if depth > DEPTH:
            raise BadRequest(
                f"character {match.start() + 1}: brackets stand more than {DEPTH} deep in each other"
            )


def _no_name_twice(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    read = dict(pairs)
    if len(read) != len(pairs):
        twice, _ = Counter(name for name, _ in pairs).most_common(1)[0]
        raise BadRequest(f"the field {json.dumps(twice[:40])} stands twice in one object")
    return read


def _no_constant(name: str) -> NoReturn:
    raise BadRequest(f"{name} is not a number in JSON")
