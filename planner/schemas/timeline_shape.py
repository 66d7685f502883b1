"""What the JSON of a timeline holds: only described here to the API's users, as it is never read."""

from __future__ import annotations

from typing import Any

from marshmallow import fields

from planner.plan import PartKind, Pressure
from planner.schemas.block_schema import SettingSchema
from planner.schemas.fields import Inside, Several, Strict, about, word
from planner.schemas.finding_schema import FindingShape
from planner.schemas.plan_schema import PlanSchema
from planner.schemas.readiness_shape import ReadinessShape
from planner.stretches import Basis, Ends, Kind
from planner.strokes import Fit

PARTS = [*(kind.value for kind in PartKind), "gap"]


class Pair(fields.Field[Any]):
    """Exact seconds as [numerator, denominator]."""

    def __init__(self, text: str, **options: Any) -> None:
        whole = {"type": "integer"}
        super().__init__(
            metadata={
                "description": f"{text}: exact seconds as [numerator, denominator], in lowest terms",
                "type": "array",
                "prefixItems": [whole, {**whole, "minimum": 1}],
                "minItems": 2,
                "maxItems": 2,
            },
            **options,
        )


class ClockMarkShape(Strict):
    """Every so many strokes last a whole number of seconds."""

    strokes = fields.Integer(required=True)
    seconds = fields.Integer(required=True)


class HeartRateTargetShape(Strict):
    """A heart rate as asked, and in beats a minute where the athlete's limits are known."""

    bpm = fields.Integer()
    percent_max = fields.Integer()
    percent_reserve = fields.Integer()


class TargetShape(Strict):
    """What a segment asks for, in every form that is known."""

    pressure = fields.String(metadata={"enum": [pressure.value for pressure in Pressure]})
    split_s = fields.Float(**about("seconds per 500 m, to the tenth"))
    watts = fields.Float(**about("as an air machine shows the split, to the tenth"))
    two_k_power_fraction = fields.Float(**about("share of the athlete's 2 km power, to the thousandth"))
    split_offset_s = fields.Float(**about("seconds on the 2 km split; less is quicker"))
    change_s = fields.Float(**about("seconds on the split of the last rowed segment with a target"))
    cr10 = fields.Float(**about("perceived effort from 0 to 10"))
    talk = fields.String(**about("what can still be said aloud"))
    heart_rate = Inside("heart rate", HeartRateTargetShape)


class TurnShape(Strict):
    """A drill in one segment: which of its sides, or the swap between two."""

    name = fields.String(required=True)
    side = fields.Integer()
    sides = fields.Integer()
    swap = fields.Boolean(**about("true while swapping sides, else absent"))


class PlacedCallShape(Strict):
    """What the coach says, and when."""

    stroke = fields.Integer(**about("the stroke at whose catch it begins; the first is 1"))
    at_s = fields.Float(required=True, **about("seconds from the segment's start"))
    text = fields.String(required=True)
    seconds = fields.Float(required=True, **about("how long it takes to say"))
    rank = fields.Integer(required=True, **about("a lower rank goes first when two calls meet"))


class RepetitionShape(Strict):
    """Which time round of the innermost repeat."""

    number = fields.Integer(required=True)
    times = fields.Integer(required=True)


class SegmentShape(Strict):
    """One stretch of the session. Beat k, from 0, is at start + k x stroke."""

    index = fields.Integer(required=True)
    part = word(PARTS, "the kind of the part it belongs to")
    part_index = fields.Integer(required=True)
    place = fields.String(required=True, **about("JSON pointer to the block in the plan"))
    repetition = Inside("repetition", RepetitionShape)
    kind = word(Kind, "what is done")
    start = Pair("from the session's beginning", required=True)
    start_s = fields.Float(required=True)
    duration = Pair("its length", required=True)
    duration_s = fields.Float(required=True)
    rate = fields.Integer(**about("strokes a minute, as asked"))
    paced_rate = fields.Float(**about("strokes a minute, so that whole strokes fill the length"))
    strokes = fields.Integer()
    stroke = Pair("one stroke")
    stroke_s = fields.Float()
    drive_s = fields.Float(**about("how long the drive of each stroke lasts"))
    clock_mark = Inside("clock mark", ClockMarkShape)
    target = Inside("target", TargetShape)
    metres = fields.Float(**about("known or predicted distance, to the tenth"))
    metres_asked = fields.Integer(**about("only where the length was asked for in metres"))
    focus = fields.String()
    drill = Inside("drill", TurnShape)
    calls = Several("calls", Inside("a call", PlacedCallShape), 20, required=True)
    ends = word(Ends, "what ends it")
    waits = fields.Boolean(required=True, **about("it does not go on by itself at its end"))
    basis = word(Basis, "how its length is known: exactly, by its split, or only assumed")
    estimated = fields.Boolean(required=True, **about("its start or its length is an estimate"))
    setting = Inside("setting", SettingSchema)


class SumsShape(Strict):
    """Sums over some segments; what is not known of all the rowing is absent."""

    seconds = Pair("their length", required=True)
    seconds_s = fields.Float(required=True)
    strokes = fields.Integer(required=True)
    metres = fields.Float()
    work_kj = fields.Float(**about("mechanical work as an air machine shows it"))
    split_s = fields.Float(**about("rowing time over distance, per 500 m"))
    watts = fields.Float(**about("work over rowing time"))
    estimated = fields.Boolean(required=True)


class PartTotalsShape(SumsShape):
    """The sums of one part."""

    part = word(PARTS, "the kind of the part")
    part_index = fields.Integer(required=True)


class TotalsShape(SumsShape):
    """The sums of the session, and of each of its parts."""

    parts = Several("parts", Inside("a part", PartTotalsShape), 12, required=True)


class PaceShape(Strict):
    """What was predicted from the athlete's results; nothing else about the athlete comes back."""

    two_k_split_s = fields.Float(required=True)
    two_k_split_low_s = fields.Float(required=True)
    two_k_split_high_s = fields.Float(required=True)
    two_k_watts = fields.Float(required=True)


class TimelineShape(Strict):
    """What is rowed: flat segments with exact starts, their sums, and what was found; and the readiness that
    what comes before the piece leaves, where there is anything before it."""

    plan = Inside("plan", PlanSchema, required=True)
    fit = word(Fit, "what gives way when a length does not hold whole strokes")
    words_a_minute = fields.Integer(
        **about("the speed of the voice that speaks the calls, where it is not 150")
    )
    athlete = Inside("athlete", PaceShape)
    segments = Several("segments", Inside("a segment", SegmentShape), 500, required=True)
    totals = Inside("totals", TotalsShape, required=True)
    readiness = Inside("readiness", ReadinessShape)
    findings = fields.List(Inside("a finding", FindingShape), required=True)
