"""Sizes known before anything is expanded, and the order in which repeats roll out."""

from __future__ import annotations

import pytest

from planner.expansion import Repetition, check, expand, size_of
from planner.plan import Block, ForMetres, Gap, Part, PartKind, Plan, Repeat, Rest, Step
from tests.builders import main_piece, seconds, strokes

TEN = strokes(10, 28)
EASY = seconds(50, 20)


def nested(depth: int) -> Step:
    """A block inside so many repeats."""
    step: Step = EASY
    for _ in range(depth):
        step = Repeat(2, (step,))
    return step


def test_between_comes_between_repetitions_and_not_after_the_last() -> None:
    steps = [p.step for p in expand((Repeat(3, (EASY,), (Rest(60),)),), "/b")]
    assert steps == [EASY, Rest(60), EASY, Rest(60), EASY]


def test_each_step_knows_its_place_and_its_innermost_repetition() -> None:
    placed = list(expand((Repeat(2, (TEN, EASY)),), "/parts/0/blocks"))
    assert [p.place for p in placed] == [
        "/parts/0/blocks/0/blocks/0",
        "/parts/0/blocks/0/blocks/1",
    ] * 2
    assert [p.repetition for p in placed] == [Repetition(1, 2)] * 2 + [Repetition(2, 2)] * 2


@pytest.mark.parametrize(
    "steps",
    [(EASY,), (Repeat(3, (TEN, EASY), (Rest(60),)),), (nested(4), TEN), (Repeat(1, (TEN,), (EASY,)),)],
)
def test_the_size_found_beforehand_is_the_size_expanded(steps: tuple[Step, ...]) -> None:
    assert size_of(steps).segments == len(list(expand(steps, "")))


def test_a_thousand_million_repetitions_cost_one_look() -> None:
    huge = main_piece(Repeat(1000, (Repeat(1000, (Repeat(1000, (EASY,)),)),)))
    (problem,) = check(huge)
    assert problem.pointer == "/parts/0"
    assert "1000000000 blocks" in problem.sentence


def test_a_plan_that_would_last_too_long_is_refused_with_its_length() -> None:
    (problem,) = check(main_piece(Repeat(10, (seconds(14_400, 20),))))
    assert "lasts about 40:00:00, more than 12:00:00" in problem.sentence


def test_repeats_four_deep_are_taken_and_five_are_not() -> None:
    assert check(main_piece(nested(4))) == ()
    (problem,) = check(main_piece(nested(5)))
    assert problem.pointer.startswith("/parts/0/blocks/0")


def test_a_very_deep_plan_is_refused_without_following_it_down() -> None:
    (problem,) = check(main_piece(nested(900)))
    assert "more than 4 deep" in problem.sentence


@pytest.mark.parametrize(
    ("plan", "place"),
    [
        (Plan("Nothing", ()), "/parts"),
        (main_piece(), "/parts/0/blocks"),
        (main_piece(Repeat(3, ())), "/parts/0/blocks/0/blocks"),
        (main_piece(*[EASY] * 101), "/parts/0/blocks"),
        (Plan("Gaps", (Gap(60),) * 13), "/parts"),
    ],
)
def test_empty_and_crowded_places_are_named(plan: Plan, place: str) -> None:
    (problem,) = check(plan)
    assert problem.pointer == place


def test_a_gap_alone_and_a_part_alone_will_do() -> None:
    assert check(Plan("A wait", (Gap(300),))) == ()
    assert check(Plan("A way down", (Part(PartKind.COOL_DOWN, (EASY,)),))) == ()


def test_long_metre_blocks_count_against_the_longest_session() -> None:
    far = Repeat(2, (Block(ForMetres(100_000), 20),))
    (problem,) = check(main_piece(far))
    assert "more than 12:00:00" in problem.sentence
