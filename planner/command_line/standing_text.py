"""An athlete's standing as lines of text: the numbers of the athlete page without a browser."""

from __future__ import annotations

from collections.abc import Iterator

from planner.bands import Band
from planner.critical_power import Fit
from planner.customs import Length
from planner.prediction import Piece, Prediction, tenths_of
from planner.standing import Standing
from planner.units import clock, split_clock


def standing_lines(standing: Standing) -> Iterator[str]:
    """Predictions, critical power, bands, findings; each part only where there is something to say."""
    if standing.predictions:
        yield f"{'piece':>10} {'likely':>10} {'split':>7}  between"
        yield from map(_prediction, standing.predictions)
    if standing.examined.fit:
        yield _fit(standing.examined.fit)
    yield f"{'band':<22} {'rate':>5} {'2 km power':>10} {'split':>15} {'heart':>7} {'effort':>6}  talk"
    yield from map(_band, standing.bands)
    if standing.heart_rates and standing.heart_rates.from_age:
        rates = standing.heart_rates
        yield f"highest heart rate {rates.highest} is from age and may be {rates.error} off"
    yield from (f"{finding.severity.value}: {finding.sentence}" for finding in standing.findings)


def _prediction(prediction: Prediction) -> str:
    piece = prediction.piece
    likely, quickest, slowest = (
        _measure(piece, length) for length in (prediction.likely, prediction.quickest, prediction.slowest)
    )
    between = "rowed" if prediction.measured else f"{quickest} and {slowest}"
    return f"{piece.name:>10} {likely:>10} {split_clock(tenths_of(prediction.split)):>7}  {between}"


def _measure(piece: Piece, length: Length) -> str:
    return clock(tenths_of(length.seconds)) if piece.metres is not None else f"{length.metres:.0f} m"


def _fit(fit: Fit) -> str:
    return (
        f"critical power {fit.watts:.0f} ± {fit.watts_error:.0f} W "
        f"({split_clock(tenths_of(fit.split))}, {fit.metres_per_second:.2f} m/s), "
        f"reserve {fit.reserve_joules / 1000:.1f} ± {fit.reserve_joules_error / 1000:.1f} kJ"
    )


def _band(band: Band) -> str:
    return (
        f"{band.name:<22} {_range(band.rates):>5} {_power(band.power):>10} {_splits(band):>15} "
        f"{_range(band.heart_rate):>7} {_range(band.cr10):>6}  {band.talk}"
    )


def _range(ends: tuple[int, int] | None) -> str:
    return f"{ends[0]}-{ends[1]}" if ends else ""


def _power(ends: tuple[int, int | None]) -> str:
    low, high = ends
    return f"over {low} %" if high is None else f"{low}-{high} %"


def _splits(band: Band) -> str:
    if band.split_slow is None:
        return ""
    slow = split_clock(band.split_slow)
    return f"under {slow}" if band.split_quick is None else f"{slow}-{split_clock(band.split_quick)}"
