"""The one-file page: what is in it, what its policy lets in, and that a plan can break out of none of it."""

from __future__ import annotations

import json
import re
from html.parser import HTMLParser
from typing import Any

import pytest

from planner.athlete import Athlete, Result
from planner.plan import Plan
from planner.schemas.plan_schema import dump_plan, load_plan
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import compile_timeline
from tests.builders import rower_of_7_42
from tests.web.exports.odd_texts import odd_texts
from tests.web.exports.plans import everything, saying
from web.exports.alone_page import NOT_INSIDE, PLAN_PLACE, TITLE_PLACE, alone_page, composed

PAGE = composed("body{margin:0}", "console.log(1)")


class Reading(HTMLParser):
    """Tags with their attributes, and the text of each script and of the title."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.inside: dict[str, str] = {}
        self._at = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attributes)))
        self._at = dict(attributes).get("id") or tag

    def handle_endtag(self, tag: str) -> None:
        self._at = ""

    def handle_data(self, data: str) -> None:
        self.inside[self._at] = self.inside.get(self._at, "") + data


def page_of(plan: Plan, athlete: Athlete | None = None) -> Reading:
    return Reading(alone_page(PAGE, compile_timeline(plan), athlete).decode())


def brought(page: Reading) -> Any:
    return json.loads(page.inside["slipway-alone"])


def test_it_brings_the_plan_and_its_timeline_for_anybody() -> None:
    plan = everything().plan
    document = brought(page_of(plan, rower_of_7_42()))
    assert load_plan(document["plan"]) == plan
    assert document["timeline"] == json.loads(json.dumps(dump_timeline(compile_timeline(plan))))


def test_of_a_person_it_brings_what_splits_need_and_no_more() -> None:
    athlete = Athlete(
        (Result(2000, 462),),  # type: ignore[arg-type]
        age=40,
        heart_rate_rest=50,
        heart_rate_max=180,
    )
    document = brought(page_of(everything().plan, athlete))
    assert document["athlete"] == {"results": [{"metres": 2000, "seconds": 462}], "level": "club"}
    assert document["answer"]["two_k"]["split_s"] == 115.5
    assert "heart_rate" not in document["answer"]
    assert not {"athlete", "answer"} & set(brought(page_of(everything().plan)))


def test_two_plans_have_two_names_and_one_plan_has_one() -> None:
    names = [brought(page_of(plan))["id"] for plan in (saying("a"), saying("b"), saying("a"))]
    assert names[0] == names[2] != names[1]
    assert re.fullmatch(r"[0-9a-f]{16}", names[0])


def test_it_has_no_address_of_anything() -> None:
    page = page_of(everything().plan)
    attributes = [pair for _, given in page.tags for pair in given.items()]
    addresses = [value for name, value in attributes if name in ("src", "href")]
    assert addresses == ["data:,"]
    policy = next(a["content"] for _, a in page.tags if a.get("http-equiv") == "Content-Security-Policy")
    rules = dict(rule.split(" ", 1) for rule in str(policy).split("; "))
    assert rules["default-src"] == "'none'"
    assert "connect-src" not in rules
    assert re.fullmatch(r"'sha256-[\w+/]{43}='", rules["script-src"])
    assert re.fullmatch(r"'sha256-[\w+/]{43}='", rules["style-src"])


def test_no_text_breaks_out_of_the_title_or_the_plan() -> None:
    plain = page_of(saying("Long arms")).tags
    for text in odd_texts():
        page = page_of(saying(text))
        assert page.tags == plain, text
        assert page.inside["title"] == f"{text} · Slipway"
        assert brought(page)["plan"] == dump_plan(saying(text))
        assert not set(page.inside["slipway-alone"]) & set("<>&\u2028\u2029")


def test_a_title_that_names_a_place_of_the_page_fills_no_place() -> None:
    for text in (PLAN_PLACE, TITLE_PLACE):
        page = page_of(saying(text))
        assert brought(page)["plan"]["title"] == text
        assert page.inside["title"] == f"{text} · Slipway"


@pytest.mark.parametrize("sign", NOT_INSIDE)
def test_a_build_that_would_end_its_own_script_is_refused(sign: str) -> None:
    with pytest.raises(ValueError, match=re.escape(repr(sign))):
        composed("body{}", f"console.log('{sign.upper()}')")
