"""Mechanical work and metabolic energy, against the fact sheet's check values."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from planner.energy import Edition, by_efficiency, energy_of, kcal_a_minute, met_at
from planner.plan import Cr10, Rest, Split
from planner.timeline import compile_timeline
from tests.builders import main_piece, rower_of_7_42, seconds

SPLIT_OF_ABOUT_200_W = Split(Fraction(1205, 10))
"""2:00.5 is 200.04 W by the cubic."""


def test_half_an_hour_at_200_watts_costs_the_tabled_range() -> None:
    """Fact sheet 7.3 [=]: 360 kJ are 491.7 kcal at 17.5 % (Fukunaga 1986) and 391.1 kcal at 22 %."""
    spent = by_efficiency(360)
    assert spent.high == pytest.approx(491.7, abs=0.05)
    assert spent.low == pytest.approx(391.1, abs=0.05)


@pytest.mark.parametrize(
    ("watts", "edition", "met", "kcal"),
    [(150, Edition.OF_2024, 11.0, 14.438), (150, Edition.OF_2011, 8.5, 11.156)],
)
def test_75_kg_at_150_watts_cost_the_tabled_kilocalories_a_minute(
    watts: float, edition: Edition, met: float, kcal: float
) -> None:
    """Fact sheet 7.3 [=], from the lists of Herrmann 2024 and Ainsworth 2011."""
    assert met_at(watts, edition) == met
    assert kcal_a_minute(met, 75) == pytest.approx(kcal, abs=0.0006)


# Ainsworth 2011, Med Sci Sports Exerc 43:1575-1581 and Herrmann 2024, J Sport Health Sci 13:6-12, rowing,
# stationary: codes 02071 to 02074.
@pytest.mark.parametrize(
    ("watts", "of_2011", "of_2024"),
    [
        (0, 4.8, 5.0),
        (99, 4.8, 5.0),
        (100, 7.0, 7.5),
        (149, 7.0, 7.5),
        (150, 8.5, 11.0),
        (199, 8.5, 11.0),
        (200, 12, 14),
    ],
)
def test_each_band_of_the_table_has_its_own_cost(watts: float, of_2011: float, of_2024: float) -> None:
    assert (met_at(watts, Edition.OF_2011), met_at(watts, Edition.OF_2024)) == (of_2011, of_2024)


def test_a_session_sums_its_blocks_and_leaves_its_rests_out() -> None:
    plan = main_piece(
        seconds(900, 20, SPLIT_OF_ABOUT_200_W), Rest(300), seconds(900, 20, SPLIT_OF_ABOUT_200_W)
    )
    athlete = replace(rower_of_7_42(), mass_kg=Fraction(75))
    energy = energy_of(compile_timeline(plan, athlete), athlete)
    assert energy is not None
    assert energy.work_kj == pytest.approx(200.037 * 1.8, abs=0.01)  # 3.5e8 / 120.5^3 W for 1800 s
    costs = {cost.edition: cost.kcal for cost in energy.by_table}
    assert costs[Edition.OF_2011] == pytest.approx(30 * 12 * 3.5 * 75 / 200)
    assert costs[Edition.OF_2024] == pytest.approx(30 * 14 * 3.5 * 75 / 200)


def test_twice_as_long_costs_twice_as_much() -> None:
    athlete = replace(rower_of_7_42(), mass_kg=Fraction(80))
    one, two = (
        energy_of(compile_timeline(main_piece(seconds(n, 20, SPLIT_OF_ABOUT_200_W))), athlete)
        for n in (600, 1200)
    )
    assert one is not None
    assert two is not None
    assert two.by_efficiency.low == pytest.approx(2 * one.by_efficiency.low)
    assert [c.kcal for c in two.by_table] == pytest.approx([2 * c.kcal for c in one.by_table])


def test_without_a_mass_the_table_stays_shut() -> None:
    plan = main_piece(seconds(600, 20, SPLIT_OF_ABOUT_200_W))
    energy = energy_of(compile_timeline(plan), None)
    assert energy is not None
    assert energy.by_table == ()


def test_where_a_power_is_not_known_there_is_no_energy() -> None:
    plan = main_piece(seconds(600, 20, SPLIT_OF_ABOUT_200_W), seconds(60, 20, Cr10(Fraction(3))))
    assert energy_of(compile_timeline(plan), None) is None
