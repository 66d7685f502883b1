"""The reference model itself, against examples worked by hand from the words of the design."""

from __future__ import annotations

from fractions import Fraction

import pytest

from planner.notation.reader import read
from planner.timeline import compile_timeline
from tests.chaos.faces import faces
from tests.chaos.model import Going, Held, Over, Session, blocks_of

PLAN = """\
title: By hand
main
30" r24
20" rest
100m r30 @2:00
gap 1'
main
open r20
"""


@pytest.fixture
def session() -> Session:
    """First catch at 10 s, 12 strokes of 2.5 s, a rest to 60 s, 100 m for 24 s, a gap, an open block."""
    return Session(blocks_of(compile_timeline(read(PLAN))))


def at(*parts: str) -> Fraction:
    return Fraction("".join(parts))


def face(session: Session, now: str) -> dict[str, object]:
    [only] = faces(session, at(now))
    return only


def test_time_goes_by(session: Session) -> None:
    assert face(session, "4.5")["count"] == "6"
    assert face(session, "17.1")["big"] == "0:23"
    assert face(session, "17.1")["strokes"] == "10 strokes left"
    assert face(session, "44.1")["where"] == "Main piece block 2 of 3"
    assert face(session, "44.1")["big"] == "0:16"
    assert face(session, "44.1")["strokes"] == ""


def test_in_a_set_repetitions_are_counted() -> None:
    plan = read('title: Set\nmain\n2 x 30" r24 / 20" rest\n30" r24\n')
    set_of_two = Session(blocks_of(compile_timeline(plan)))
    assert face(set_of_two, "70.1")["where"] == "Main piece repetition 2 of 2"
    assert face(set_of_two, "100.1")["where"] == "Main piece block 4 of 4"


def test_a_hold_goes_on_from_the_catch_of_its_stroke(session: Session) -> None:
    session.hold(at("16"))
    session.go_on(at("100"))
    assert session.state == Going(0, zero=at("100"), begins=at("105")), (
        "the catch at 5 s, after 5 s to count in"
    )
    session.to(at("130"))
    assert session.state == Going(1, zero=at("130"), begins=at("130"))
    assert session.gone_through == 6 + 25


def test_metres_wait_for_a_tap_which_can_be_dated_back_and_taken_back(session: Session) -> None:
    session.to(at("120"))
    assert face(session, "120.1")["big"] == "100m"
    session.done(at("121"), ago=5)
    assert session.state == Going(3, zero=at("116"), begins=at("116"))
    session.back(at("131"))
    assert session.state == Going(2, zero=at("60"), begins=at("60"))
    session.done(at("140"))
    session.back(at("150.5"))
    assert session.state == Going(3, zero=at("150.5"), begins=at("150.5")), (
        "a tap is not taken back after 10 s"
    )


def test_the_gap_waits_and_what_follows_is_counted_in(session: Session) -> None:
    session.done(at("80"))
    session.done(at("400"))
    assert session.state == Going(4, zero=at("410"), begins=at("410"))
    session.done(at("500"))
    assert session.state == Over(4, by_plan=True)
    assert session.whole
    assert session.gone_through == 30 + 20 + 20 + 320 + 90


def test_a_gap_that_has_just_begun_is_a_gap(session: Session) -> None:
    session.done(at("80"))
    assert face(session, "80")["screen"] == "gap-screen"
    assert face(session, "80")["big"] == "1:00"


def test_back_goes_to_the_start_or_near_it_to_the_block_before(session: Session) -> None:
    session.back(at("42.9"))
    assert session.state == Going(0, zero=at("42.9"), begins=at("42.9"))
    session.back(at("45.9"))
    assert session.state == Going(0, zero=at("45.9"), begins=at("45.9"))
    session.hold(at("60"))
    session.skip(at("61"))
    assert session.state == Held(1, Fraction(0))


def test_one_more_minute_is_so_many_whole_strokes_and_never_more_than_ten(session: Session) -> None:
    session.extend(at("20"))
    assert (session.blocks[0].seconds, session.blocks[0].strokes) == (90, 36)
    for _ in range(12):
        session.extend(at("21"))
    assert session.blocks[0].seconds == 630


def test_an_absence_is_answered_by_the_clock_or_from_where_it_began(session: Session) -> None:
    session.returned(at("500"), since=at("21"), by_clock=False)
    assert session.state == Going(0, zero=at("495"), begins=at("505")), "the catch at 10 s"
    session.end(at("506"))
    assert session.gone_through == 11 + 1
    assert session.log == ["started", "returned", "ended"]


def test_in_a_hold_and_within_the_gap_both_answers_lead_to_one_place(session: Session) -> None:
    assert not session.same_either_way(at("20"), at("300"))
    session.done(at("70"))
    assert session.same_either_way(at("80"), at("900"))
    session.hold(at("900"))
    assert session.same_either_way(at("901"), at("9000"))
