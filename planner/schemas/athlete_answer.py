"""Where an athlete stands, as JSON.

Its fields are described in `athlete_shape`; a test holds the two together. Times, splits, watts and
kilojoules are rounded to the tenth, distances to the metre, critical velocity to the millimetre a second.
"""

from __future__ import annotations

from fractions import Fraction

from planner.bands import Band, HeartRates
from planner.critical_power import FORM, Examined, Fit
from planner.customs import Length
from planner.pace import power_of_split
from planner.prediction import Piece, Prediction, Said, TwoK, tenths_of
from planner.schemas.block_schema import given
from planner.schemas.fields import number
from planner.schemas.finding_schema import dump_finding
from planner.schemas.timeline_schema import tenth
from planner.standing import Standing


def dump_standing(standing: Standing) -> dict[str, object]:
    """A standing as JSON."""
    fit = standing.examined.fit
    return given(
        two_k=_dump_two_k(standing.two_k) if standing.two_k else None,
        predictions=[_dump_prediction(each) for each in standing.predictions],
        critical_power=_dump_fit(fit, standing.examined) if fit else None,
        bands=[_dump_band(band) for band in standing.bands],
        heart_rate=_dump_heart_rates(standing.heart_rates) if standing.heart_rates else None,
        findings=[dump_finding(finding) for finding in standing.findings],
    )


def _dump_two_k(two_k: TwoK) -> dict[str, object]:
    return {
        "split_s": number(two_k.split),
        "low_s": number(two_k.low),
        "high_s": number(two_k.high),
        "watts": tenth(power_of_split(two_k.split)),
    }


def _dump_prediction(prediction: Prediction) -> dict[str, object]:
    """In seconds where the piece is so many metres, in metres where it is so many seconds."""
    piece = prediction.piece
    quickest, likely, slowest = (
        _measure(piece, length) for length in (prediction.quickest, prediction.likely, prediction.slowest)
    )
    if piece.metres is not None:
        ends = {"low_s": quickest, "likely_s": likely, "high_s": slowest}
    else:
        ends = {"low_metres": slowest, "likely_metres": likely, "high_metres": quickest}
    return {
        **given(name=piece.name, metres=piece.metres, seconds=piece.seconds),
        **ends,
        "split_s": _tenth_of(prediction.split),
        "measured": prediction.measured,
        "source": prediction.source,
        "by": [_dump_said(piece, said) for said in prediction.by],
    }


def _dump_said(piece: Piece, said: Said) -> dict[str, object]:
    name = "seconds_s" if piece.metres is not None else "metres"
    return {
        "custom": said.custom.value,
        name: _measure(piece, said.predicted),
        "within_range": said.within_range,
    }


def _measure(piece: Piece, length: Length) -> int | float:
    return _tenth_of(length.seconds) if piece.metres is not None else round(length.metres)


def _dump_fit(fit: Fit, examined: Examined) -> dict[str, object]:
    return {
        "watts": _tenth_of(fit.watts),
        "watts_error": _tenth_of(fit.watts_error),
        "reserve_kj": _tenth_of(fit.reserve_joules / 1000),
        "reserve_kj_error": _tenth_of(fit.reserve_joules_error / 1000),
        "split_s": _tenth_of(fit.split),
        "metres_per_second": round(fit.metres_per_second, 3),
        "reserve_metres": round(fit.reserve_metres),
        "form": FORM,
        "time_spread_percent": _tenth_of(100 * fit.time_spread),
        "used": list(fit.used),
        "left_out": [each.index for each in examined.left_out],
    }


def _dump_band(band: Band) -> dict[str, object]:
    slow, quick = band.split_slow, band.split_quick
    return given(
        name=band.name,
        sense=band.sense,
        pressure=band.pressure.value if band.pressure else None,
        rate_low=band.rates[0],
        rate_high=band.rates[1],
        power_low_percent=band.power[0],
        power_high_percent=band.power[1],
        split_slow_s=number(slow) if slow is not None else None,
        split_quick_s=number(quick) if quick is not None else None,
        **_ends("heart_rate_{}", band.heart_rate),
        **_ends("heart_rate_{}_percent_max", band.percent_max),
        **_ends("heart_rate_{}_percent_reserve", band.percent_reserve),
        **_ends("cr10_{}", band.cr10),
        talk=band.talk,
    )


def _ends(name: str, ends: tuple[int, int] | None) -> dict[str, int]:
    return {name.format("low"): ends[0], name.format("high"): ends[1]} if ends else {}


def _dump_heart_rates(rates: HeartRates) -> dict[str, object]:
    return given(
        max=rates.highest,
        rest=rates.rest,
        max_from="age" if rates.from_age else "given",
        error=rates.error,
    )


def _tenth_of(value: float) -> int | float:
    exact: Fraction = tenths_of(value)
    return number(exact)
