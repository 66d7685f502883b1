"""A random sample of the sessions of `make sweep`, always the same one: each keeps every promise."""

from __future__ import annotations

import random

import pytest

from tests.sweep.cases import every_case
from tests.sweep.promises import outcome_of

SAMPLE, SEED = 400, 20_260
CASES = random.Random(SEED).sample(list(every_case()), SAMPLE)


@pytest.mark.parametrize("start", range(0, SAMPLE, 50))
def test_fifty_sessions_of_the_sample_keep_every_promise(start: int) -> None:
    outcomes = [outcome_of(case) for case in CASES[start : start + 50]]
    assert {str(out.case): out.broken for out in outcomes if out.broken} == {}


def test_the_sample_holds_every_level_and_room() -> None:
    assert len({(case.level, case.room) for case in CASES}) == 9
