"""Where an athlete stands: everything that results, age and heart rate say, worked out at once."""

from __future__ import annotations

from dataclasses import dataclass

from planner.athlete import Athlete
from planner.bands import Band, HeartRates, bands_of, heart_rates_of
from planner.critical_power import Examined
from planner.findings import Finding
from planner.prediction import Prediction, TwoK, examined_of, predictions_of, two_k_by
from planner.result_findings import result_findings


@dataclass(frozen=True, slots=True)
class Standing:
    """The 2 km split, every standard piece, critical power, bands, heart rates, and what was noticed."""

    two_k: TwoK | None
    predictions: tuple[Prediction, ...]
    examined: Examined
    bands: tuple[Band, ...]
    heart_rates: HeartRates | None
    findings: tuple[Finding, ...]


def standing_of(athlete: Athlete) -> Standing:
    """All of it for one athlete; without a result bands only, in shares, rates and words."""
    results = athlete.results
    examined = examined_of(results)
    return Standing(
        two_k=two_k_by(results, examined) if results else None,
        predictions=predictions_of(results, examined),
        examined=examined,
        bands=bands_of(athlete),
        heart_rates=heart_rates_of(athlete),
        findings=result_findings(athlete, examined),
    )
