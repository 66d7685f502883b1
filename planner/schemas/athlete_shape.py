"""What the JSON of an athlete's standing holds: only described here to the API's users, never read."""

from __future__ import annotations

from marshmallow import fields

from planner.customs import Custom
from planner.plan import Pressure
from planner.schemas.fields import Inside, Strict, about, word
from planner.schemas.finding_schema import FindingShape


class TwoKShape(Strict):
    """The 2 km split that sets all other splits, between the quickest and the slowest it may be."""

    split_s = fields.Float(required=True, **about("seconds per 500 m"))
    low_s = fields.Float(required=True)
    high_s = fields.Float(required=True)
    watts = fields.Float(required=True, **about("as an air machine shows the split"))


class CustomShape(Strict):
    """What one way to predict says: seconds for a piece in metres, metres for one in seconds."""

    custom = word(Custom, "the way to predict")
    seconds_s = fields.Float()
    metres = fields.Integer()
    within_range = fields.Boolean(required=True, **about("whether it is meant for such a result and piece"))


class PredictionShape(Strict):
    """One standard piece: in seconds when it is so many metres, in metres when it is so many seconds."""

    name = fields.String(required=True)
    metres = fields.Integer()
    seconds = fields.Integer()
    low_s = fields.Float(**about("the quickest it may be"))
    likely_s = fields.Float()
    high_s = fields.Float(**about("the slowest it may be"))
    low_metres = fields.Integer(**about("the least it may be"))
    likely_metres = fields.Integer()
    high_metres = fields.Integer(**about("the most it may be"))
    split_s = fields.Float(required=True, **about("seconds per 500 m of the likely"))
    measured = fields.Boolean(required=True, **about("one of the results is this very piece"))
    source = fields.Integer(required=True, **about("index of the result that the customs start from"))
    by = fields.List(Inside("a custom", CustomShape), required=True)


class CriticalPowerShape(Strict):
    """Critical power and the reserve above it, by least squares, each with its standard error."""

    watts = fields.Float(required=True)
    watts_error = fields.Float(required=True)
    reserve_kj = fields.Float(required=True, **about("W', the work that can be done above critical power"))
    reserve_kj_error = fields.Float(required=True)
    split_s = fields.Float(required=True, **about("seconds per 500 m at critical power"))
    metres_per_second = fields.Float(required=True, **about("critical velocity"))
    reserve_metres = fields.Integer(required=True, **about("metres gained on critical velocity over 2 km"))
    form = fields.String(required=True, **about("whose squares of errors are least"))
    time_spread_percent = fields.Float(
        required=True, **about("how far times lie off the curve, and at least a rower's day-to-day spread")
    )
    used = fields.List(fields.Integer(), required=True, **about("indexes of the results behind it"))
    left_out = fields.List(fields.Integer(), required=True, **about("indexes of the others"))


class BandShape(Strict):
    """A trade zone or a pressure: common practice, not a rule. Splits come with a result."""

    name = fields.String(required=True)
    sense = fields.String(required=True)
    pressure = fields.String(**about("only of a pressure", enum=[pressure.value for pressure in Pressure]))
    rate_low = fields.Integer(required=True, **about("strokes a minute"))
    rate_high = fields.Integer(required=True)
    power_low_percent = fields.Integer(**about("percent of 2 km power"))
    power_high_percent = fields.Integer(**about("absent where there is no upper end"))
    split_slow_s = fields.Float()
    split_quick_s = fields.Float()
    heart_rate_low = fields.Integer(**about("beats a minute, by reserve where the resting rate is known"))
    heart_rate_high = fields.Integer()
    heart_rate_low_percent_max = fields.Integer(**about("percent of the highest heart rate"))
    heart_rate_high_percent_max = fields.Integer()
    heart_rate_low_percent_reserve = fields.Integer(**about("percent of heart-rate reserve"))
    heart_rate_high_percent_reserve = fields.Integer()
    cr10_low = fields.Integer(**about("perceived effort from 0 to 10 (Borg)"))
    cr10_high = fields.Integer()
    talk = fields.String(**about("what can still be said aloud"))


class HeartRatesShape(Strict):
    """The limits of the heart rate in beats a minute."""

    max = fields.Integer(required=True)
    rest = fields.Integer()
    max_from = word(["given", "age"], "where the highest comes from")
    error = fields.Integer(required=True, **about("how far one from age may be off; 0 when given"))


class AthleteAnswerShape(Strict):
    """Where an athlete stands. Nothing of it is kept or logged by the server."""

    two_k = Inside("2 km", TwoKShape)
    predictions = fields.List(Inside("a prediction", PredictionShape), required=True)
    critical_power = Inside("critical power", CriticalPowerShape)
    bands = fields.List(Inside("a band", BandShape), required=True)
    heart_rate = Inside("heart rate", HeartRatesShape)
    findings = fields.List(
        Inside("a finding", FindingShape), required=True, **about("with places in the athlete that was sent")
    )
