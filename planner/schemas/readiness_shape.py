"""What the JSON of readiness, energy and a week's load holds: described to the API's users, never read."""

from __future__ import annotations

from marshmallow import fields

from planner.capacity import CapacityBasis
from planner.energy import Edition
from planner.load import Deviation
from planner.readiness import GAPS, SERIES_POINTS
from planner.schemas.fields import Inside, Several, Strict, about, word

_PERCENT = "in percent, a whole number"


class RangeShape(Strict):
    """An estimate in whole percent with the least and the most that the models give."""

    low = fields.Integer(required=True)
    middle = fields.Integer(required=True)
    high = fields.Integer(required=True)


class StateShape(Strict):
    """What is there at the start line, each as a range in percent."""

    reserve = Inside("reserve", RangeShape, required=True)
    phosphocreatine = Inside("phosphocreatine", RangeShape, required=True)
    oxygen = Inside("oxygen", RangeShape, required=True)
    warmth = Inside("warmth", RangeShape, required=True)


class GapStateShape(StateShape):
    """What is there after a gap."""

    gap_s = fields.Integer(required=True)


class AdvisedGapShape(Strict):
    """Seconds to leave between warm-up and piece."""

    low_s = fields.Integer(required=True)
    best_s = fields.Integer(required=True)
    high_s = fields.Integer(required=True)


def _line(text: str) -> fields.List[int]:
    inner: fields.Integer = fields.Integer()
    return fields.List(inner, required=True, **about(f"{text}, {_PERCENT}", maxItems=SERIES_POINTS))


class ReadinessSeriesShape(Strict):
    """The session as written, in equal steps from its beginning."""

    step_s = fields.Integer(required=True, **about("seconds from one value to the next; the first is at 0"))
    reserve = _line("W' left, by the median model; below 0 the model is asked for more than it holds")
    reserve_low = _line("W' left, the least of all models")
    reserve_high = _line("W' left, the most of all models")
    oxygen = _line("oxygen uptake against that at 2 km power")
    warmth = _line("warmth of the muscles against a full warm-up's 3 degrees; more is possible")


class CapacityShape(Strict):
    """Critical power and W', where a result is known."""

    watts = fields.Integer(required=True)
    watts_low = fields.Integer(required=True)
    watts_high = fields.Integer(required=True)
    reserve_kj = fields.Float(required=True)
    reserve_kj_low = fields.Float(required=True)
    reserve_kj_high = fields.Float(required=True)


class ReadinessShape(Strict):
    """What is left at the start line, and the gap to leave: estimates, never a promise."""

    basis = word(CapacityBasis, "two results or more, one, or only the level")
    start_s = fields.Float(
        required=True,
        **about("the start line: the first main block, else the end of the gap or warm-up"),
    )
    gap_s = fields.Float(required=True, allow_none=True, **about("the gap that the plan has; null for none"))
    advised_gap = Inside("advised gap", AdvisedGapShape, required=True)
    at_start = Inside("state at the start", StateShape, required=True)
    by_gap = Several("states by gap", Inside("a state", GapStateShape), len(GAPS), required=True)
    series = Inside("series", ReadinessSeriesShape, required=True)
    sentence = fields.String(required=True, **about("what a coach would say"))
    notes = fields.List(fields.String(), required=True, **about("what is not sure, and why"))
    capacity = Inside("capacity", CapacityShape)


class SpentShape(Strict):
    """Kilocalories, the least and the most."""

    low = fields.Integer(required=True)
    high = fields.Integer(required=True)


class TableCostShape(Strict):
    """Kilocalories by one edition of the table of energy costs."""

    edition = fields.Integer(required=True, **about("the year", enum=[edition.value for edition in Edition]))
    kcal = fields.Integer(required=True)


class EnergyShape(Strict):
    """The work shown and what the body pays for it: estimates."""

    work_kj = fields.Float(required=True)
    kcal = Inside("kilocalories", SpentShape, required=True)
    by_table = Several("costs by table", Inside("a cost", TableCostShape), len(Edition), required=True)


class EvennessShape(Strict):
    """How even a week is; absent figures cannot be told for days that are all alike."""

    deviation = word(Deviation, "which standard deviation")
    monotony = fields.Float()
    strain = fields.Integer()


class WeekShape(Strict):
    """The load of seven days, effort times minutes."""

    total = fields.Integer(required=True)
    mean = fields.Float(required=True)
    evenness = Several("kinds of evenness", Inside("an evenness", EvennessShape), 2, required=True)
