"""What a rower can spend: from a fit, from one result, from a level."""

from __future__ import annotations

from fractions import Fraction

import pytest

from planner.athlete import Athlete, Level, Result
from planner.capacity import CRITICAL_SHARE, CapacityBasis, capacity_of
from planner.critical_power import examine
from tests.builders import rower_of_7_42

OTHERS = (Result(1000, Fraction(212)), Result(5000, Fraction(1245)))
OF_THREE = Athlete((Result(2000, Fraction(462)), *OTHERS))


@pytest.mark.parametrize("level", list(Level))
@pytest.mark.parametrize("athlete", [None, Athlete(), rower_of_7_42()])
def test_2_km_at_2_km_power_spends_the_reserve_exactly(level: Level, athlete: Athlete | None) -> None:
    capacity = capacity_of(athlete, level)
    assert (1 - capacity.critical) * capacity.two_k_seconds == pytest.approx(capacity.reserve_seconds)


def test_without_a_result_there_are_no_watts_and_the_level_says_so() -> None:
    capacity = capacity_of(None, Level.CLUB)
    assert capacity.basis is CapacityBasis.LEVEL
    assert capacity.two_k_watts is None
    assert capacity.watts_in_formulas == pytest.approx(202.546, abs=0.001)  # 2:00.0, fact sheet 1.1 [=]


@pytest.mark.parametrize(
    ("level", "seconds", "reserve", "least", "most"),
    [
        (Level.NOVICE, 540, 81.0, 0.10 * 486, 0.20 * 594),
        (Level.CLUB, 480, 62.4, 0.08 * 432, 0.18 * 528),
        (Level.TRAINED, 420, 46.2, 0.06 * 378, 0.16 * 462),
    ],
)
def test_each_level_has_its_stated_defaults(
    level: Level, seconds: float, reserve: float, least: float, most: float
) -> None:
    """Judgement [C]: the level's 2 km time give or take 10 %, its critical share give or take 0.05."""
    capacity = capacity_of(None, level)
    assert capacity.two_k_seconds == seconds
    assert capacity.reserve_seconds == pytest.approx(reserve)
    assert (capacity.reserve_seconds_low, capacity.reserve_seconds_high) == pytest.approx((least, most))


def test_one_result_sets_the_time_and_the_watts() -> None:
    """2 km in 7:42.0 is 227.2 W (fact sheet 6.6 [=])."""
    capacity = capacity_of(rower_of_7_42(), Level.CLUB)
    assert capacity.basis is CapacityBasis.RESULT
    assert capacity.two_k_seconds == 462
    assert capacity.two_k_watts == pytest.approx(227.2, abs=0.06)


def test_two_results_or_more_are_fitted() -> None:
    fit = examine(OF_THREE.results).fit
    assert fit is not None
    capacity = capacity_of(OF_THREE, Level.CLUB)
    watts = capacity.two_k_watts
    assert watts is not None
    assert capacity.basis is CapacityBasis.FIT
    assert capacity.critical * watts == pytest.approx(fit.watts)
    assert capacity.reserve_seconds * watts == pytest.approx(fit.reserve_joules)
    assert (capacity.critical_high - capacity.critical) * watts == pytest.approx(fit.watts_error)


def test_an_exact_rower_comes_back_as_the_tabled_shares() -> None:
    """Fact sheet 3.2 [=]: CP 250 W and W' 15 kJ row 2 km at 285.019 W."""
    results = (Result(metres, Fraction(round(_seconds(metres), 4))) for metres in (2000, 1500, 1000))
    capacity = capacity_of(Athlete(tuple(results)), Level.TRAINED)
    assert capacity.critical == pytest.approx(250 / 285.019, abs=0.001)
    assert capacity.reserve_seconds == pytest.approx(15_000 / 285.019, abs=0.3)


def _seconds(metres: float) -> float:
    """When P t = CP t + W' on the cubic, by halving."""
    low, high = 60.0, 2000.0
    for _ in range(80):
        middle = (low + high) / 2
        watts = 2.8 * (metres / middle) ** 3
        low, high = (middle, high) if (watts - 250) * middle > 15_000 else (low, middle)
    return low


def test_a_fit_above_the_likely_2_km_is_set_aside() -> None:
    """Two sprints: a critical power above 2 km power cannot be a share of it."""
    sprinter = Athlete((Result(400, Fraction(70)), Result(500, Fraction(89))))
    assert examine(sprinter.results).fit is not None
    capacity = capacity_of(sprinter, Level.CLUB)
    assert capacity.basis is CapacityBasis.RESULT
    assert capacity.fit_set_aside


@pytest.mark.parametrize("athlete", [None, rower_of_7_42(), OF_THREE])
def test_each_estimate_lies_within_its_range(athlete: Athlete | None) -> None:
    c = capacity_of(athlete, Level.CLUB)
    assert c.critical_low < c.critical < c.critical_high
    assert 0 < c.reserve_seconds_low < c.reserve_seconds < c.reserve_seconds_high


def test_the_range_without_a_result_is_wider() -> None:
    without, with_one = (capacity_of(athlete, Level.CLUB) for athlete in (None, rower_of_7_42()))
    assert without.critical_high - without.critical_low > with_one.critical_high - with_one.critical_low


def test_the_assumed_shares_lie_about_those_of_known_rowers() -> None:
    """Shares of 2 km power [=] from fact sheet 3.2: 0.877 (CP 250 W, W' 15 kJ), 0.920 and 0.897 (the rower of
    Hill, Alain & Kennedy 2003, Med Sci Sports Exerc 35:2098-2105): within the range for a trained rower."""
    trained = capacity_of(None, Level.TRAINED)
    hill = [(speed * time / 2000) ** 3 for speed, time in ((5.08, 382.874), (4.99, 386.573))]
    for share in (250 / 285.019, *hill):
        assert trained.critical_low < share < trained.critical_high


def test_a_higher_level_has_a_higher_critical_share() -> None:
    shares = [CRITICAL_SHARE[level] for level in (Level.NOVICE, Level.CLUB, Level.TRAINED)]
    assert shares == sorted(shares)
