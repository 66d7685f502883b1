"""Names of downloaded files: what any title becomes, in ASCII and as people read it."""

from __future__ import annotations

import re
from urllib.parse import unquote

import pytest

from tests.web.exports.odd_texts import odd_texts
from web.exports.file_names import disposition, plain_name, pretty_name


@pytest.mark.parametrize(
    ("title", "plain", "pretty"),
    [
        ("Tuesday before the 2 km", "tuesday-before-the-2-km", "Tuesday before the 2 km"),
        ("6 x 700m / 3' rest: hard?", "6-x-700m-3-rest-hard", "6 x 700m 3' rest hard"),
        ("Été", "ete", "Été"),
        ("漢字", "session", "漢字"),
        ("../../etc/passwd", "etc-passwd", "etc passwd"),
        ("CON", "session", "session"),
        ("...", "session", "session"),
    ],
)
def test_a_title_becomes_two_names(title: str, plain: str, pretty: str) -> None:
    assert (plain_name(title), pretty_name(title)) == (plain, pretty)


NAMES = re.compile(r"attachment; filename=\"([a-z0-9-]+)\.csv\"; filename\*=UTF-8''([\w.~%-]+)", re.ASCII)


def test_whatever_the_title_the_header_is_one_line_of_ascii_and_the_name_a_file_name() -> None:
    """RFC 6266 with the values of RFC 8187."""
    for title in odd_texts():
        match = NAMES.fullmatch(disposition(title, "csv"))
        assert match, title
        name = unquote(match[2])
        assert not re.search(r'[\x00-\x1f<>:"/\\|?*]', name)
        assert len(name.encode()) <= 255
        assert not name.startswith((".", " "))
