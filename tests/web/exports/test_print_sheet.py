"""The print sheet: read by Python's HTML parser; what people wrote is text in it and nothing else."""

from __future__ import annotations

import base64
import hashlib
import re
from html.parser import HTMLParser

from planner.notation.reader import read as read_plan
from planner.timeline import Timeline, compile_timeline
from tests.web.exports.odd_texts import odd_texts
from tests.web.exports.plans import everything, saying
from web.exports.print_sheet import print_sheet
from web.exports.sheet_fit import POINTS

Tag = tuple[str, tuple[tuple[str, str | None], ...]]


class Reading(HTMLParser):
    """Every tag with its attributes, and every text with blanks joined."""

    def __init__(self, page: bytes) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[Tag] = []
        self.texts: list[str] = []
        self.feed(page.decode())

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, tuple(attributes)))

    def handle_data(self, data: str) -> None:
        self.texts.append(" ".join(data.split()))


def without_size(tags: list[Tag]) -> list[Tag]:
    """The size of the letters depends on the text."""
    return [tag for tag in tags if tag[0] != "body"]


def read(timeline: Timeline) -> Reading:
    return Reading(print_sheet(timeline))


def test_its_policy_lets_in_its_own_style_and_nothing_else() -> None:
    """Content Security Policy Level 3: a style element is let in by the SHA-256 of its text."""
    page = print_sheet(everything()).decode()
    style = re.search(r"<style>(.*?)</style>", page, re.DOTALL)
    policy = dict(part.split(" ", 1) for part in _policy(read(everything())).split("; "))
    assert style
    digest = base64.b64encode(hashlib.sha256(style[1].encode()).digest()).decode()
    assert policy["style-src"] == f"'sha256-{digest}'"
    assert policy["default-src"] == policy["base-uri"] == policy["form-action"] == "'none'"
    assert not {"script-src", "img-src"} & set(policy)


def _policy(page: Reading) -> str:
    (content,) = (
        dict(attributes)["content"]
        for tag, attributes in page.tags
        if ("http-equiv", "Content-Security-Policy") in attributes
    )
    return str(content)


def test_it_fetches_nothing_and_runs_nothing() -> None:
    page = read(everything())
    assert not {"script", "link", "img", "iframe", "a", "form"} & {tag for tag, _ in page.tags}
    assert not [name for _, attributes in page.tags for name, _ in attributes if name.startswith("on")]


def test_every_text_is_shown_unchanged_and_adds_no_tag() -> None:
    plain = without_size(read(compile_timeline(saying("Long arms"))).tags)
    for text in odd_texts():
        page = read(compile_timeline(saying(text)))
        assert without_size(page.tags) == plain, text
        assert page.texts.count(text) == 8, text


def test_it_says_when_to_stop_and_who_comes_first() -> None:
    words = " ".join(read(everything()).texts)
    assert "Stop at once with chest pain" in words
    assert "Your coach and the rules of the place come first." in words


def test_a_short_plan_has_larger_letters_than_a_long_one() -> None:
    def points(lines: int) -> int:
        plan = "title: x\nmain\n" + "2' r20 light\n" * lines
        match = re.search(r'<body class="p(\d+) ', print_sheet(compile_timeline(read_plan(plan))).decode())
        assert match
        return int(match[1])

    sizes = [points(lines) for lines in (1, 20, 40, 90)]
    assert sizes == sorted(sizes, reverse=True)
    assert (sizes[0], sizes[-1]) == (POINTS[0], POINTS[-1])
