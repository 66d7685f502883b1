"""What is said about an athlete's results, and where."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.athlete import Athlete, Result
from planner.critical_power import Examined, Fit
from planner.findings import Finding, Severity
from planner.result_findings import result_findings
from planner.standing import standing_of
from planner.trials import Doubt
from planner.units import told_metres


def of(*pairs: tuple[int, float], age: int | None = None) -> Athlete:
    return Athlete(tuple(Result(metres, Fraction(str(seconds))) for metres, seconds in pairs), age=age)


def found(*pairs: tuple[int, float], age: int | None = None) -> dict[str, Finding]:
    return {finding.code: finding for finding in standing_of(of(*pairs, age=age)).findings}


GOOD = [(1000, 217.0), (2000, 462.0), (3000, 717.0)]


def test_nothing_is_said_of_good_results() -> None:
    assert found(*GOOD) == {}


def test_nothing_is_said_of_nobody() -> None:
    assert found() == {}


@pytest.mark.parametrize(
    ("code", "severity", "more"),
    [
        ("result-repeated", Severity.NOTE, (2000, 462)),
        ("result-bettered", Severity.NOTE, (2000, 470)),
        ("result-contradicted", Severity.WARNING, (1500, 470)),
        ("result-looks-easy", Severity.ADVICE, (10_000, 3000)),
    ],
)
def test_a_result_beside_good_ones_is_named_at_its_place(
    code: str, severity: Severity, more: tuple[int, float]
) -> None:
    finding = found(*GOOD, more)[code]
    assert (finding.severity, finding.place) == (severity, "/results/3")
    assert finding.sentence.startswith(f"{told_metres(more[0])} in ")


def test_of_many_that_agree_the_odd_one_is_named_with_what_was_expected() -> None:
    """Times of CP 176 W and W' 21.7 kJ, the first 8 % too quick: it contradicts no other alone."""
    finding = found((650, 120.6), (900, 191.8), (1300, 290.6), (2000, 465.1), (3500, 841.0))[
        "result-outlying"
    ]
    assert (finding.severity, finding.place) == (Severity.WARNING, "/results/0")
    assert "(about 2:11)" in finding.sentence


def test_a_result_used_though_outside_the_range_is_named() -> None:
    finding = found((2000, 462), (5000, 1210))["result-outside-critical-power"]
    assert (finding.severity, finding.place) == (Severity.NOTE, "/results/1")
    assert "5000 m in 20:10 counts for want of better" in finding.sentence


def test_results_outside_what_critical_power_describes_have_one_quiet_note_together() -> None:
    more = [(300, 58.0), (6000, 1510.0), (10_000, 2600.0)]
    told = standing_of(of(*GOOD, *more)).findings
    (note,) = told
    assert (note.code, note.severity, note.place) == (
        "result-outside-critical-power",
        Severity.NOTE,
        "/results/3",
    )
    assert all(name in note.sentence for name in ("300 m in 58 s", "6000 m in 25:10", "10 000 m in 43:20"))
    assert note.reason is None


def test_one_result_is_told_what_would_give_critical_power() -> None:
    finding = found((2000, 462))["no-critical-power"]
    assert "3 to 12 minutes" in finding.sentence


def test_results_too_alike_are_told_so() -> None:
    assert "too alike" in found((2000, 420), (2050, 431.5))["no-critical-power"].sentence


def test_results_off_one_curve_are_told_by_how_much() -> None:
    finding = found((1000, 200), (1500, 335), (3000, 680))["results-scatter"]
    assert finding.place == "/results"
    assert "4 % of their time" in finding.sentence


def test_a_loose_reserve_is_told() -> None:
    assert "may well be off" in found((2000, 420), (2500, 533))["critical-power-loose"].sentence


@pytest.mark.parametrize(
    ("code", "change", "told"),
    [
        ("results-scatter", {"time_spread": 0.029}, False),
        ("results-scatter", {"time_spread": 0.031}, True),
        ("critical-power-loose", {"reserve_joules_error": 9_900}, False),
        ("critical-power-loose", {"reserve_joules_error": 10_100}, True),
    ],
)
def test_from_where_a_fit_is_called_scattered_or_loose(
    code: str, change: dict[str, float], told: bool
) -> None:
    """From 3 % of the time, and from half of a reserve of 20 kJ."""
    athlete = of(*GOOD)
    fit = Fit(200, 5, 20_000, 1_000, 0, 0.01, (0, 1, 2))
    examined = Examined(replace(fit, **change), None, ())  # type: ignore[arg-type]
    assert (code in {finding.code for finding in result_findings(athlete, examined)}) == told


def test_a_2_km_split_from_far_away_is_called_a_guess() -> None:
    finding = found((100, 17))["two-k-far-from-result"]
    assert finding.place == "/results/0"


def test_a_heart_rate_from_age_and_youth_are_told_at_the_age() -> None:
    told = found(age=15)
    assert {finding.place for finding in told.values()} == {"/age"}
    assert set(told) == {"heart-rate-from-age", "young-rower"}
    assert set(found(age=40)) == {"heart-rate-from-age"}


RESULTS = st.lists(
    st.builds(
        lambda metres, split: Result(metres, split * metres / 500),
        st.integers(100, 42_195),
        st.fractions(100, 300, max_denominator=10),
    ),
    max_size=8,
)


@given(RESULTS)
def test_every_result_left_out_has_a_finding_at_its_place(results: list[Result]) -> None:
    standing = standing_of(Athlete(tuple(results)))
    places = {finding.place for finding in standing.findings}
    in_range = {each.index for each in standing.examined.left_out if each.doubt is not Doubt.OUTSIDE}
    assert {f"/results/{index}" for index in in_range} <= places
    assert sum(f.code == "result-outside-critical-power" for f in standing.findings) <= 1
    for finding in standing.findings:
        assert finding.sentence.endswith(".")
        assert "nan" not in finding.sentence
