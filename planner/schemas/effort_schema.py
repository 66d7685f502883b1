"""How hard, as JSON: an object with exactly one key, such as {"pressure": "light"} or {"split": 115.5}."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from marshmallow import post_load

from planner import limits
from planner.plan import (
    Change,
    Cr10,
    Effort,
    HeartRate,
    HeartRateUnit,
    Pressure,
    Split,
    SplitOffset,
    TwoKPower,
)
from planner.schemas.fields import Inside, OneKey, OneOf, Stepped, Whole, number


class HeartRateSchema(OneKey):
    """A heart rate in beats a minute, or in percent of the highest or of the reserve."""

    bpm = Whole(limits.HEART_BPM)
    percent_max = Whole(limits.HEART_PERCENT)
    percent_reserve = Whole(limits.HEART_PERCENT)

    @post_load
    def _make(self, data: Mapping[str, int], **_: object) -> HeartRate:
        ((unit, value),) = data.items()
        return HeartRate(HeartRateUnit(unit), value)


class EffortSchema(OneKey):
    """How hard a block is to be rowed: exactly one of these."""

    pressure = OneOf("pressure", Pressure)
    split = Stepped(limits.SPLIT)
    split_offset = Stepped(limits.SPLIT_OFFSET)
    change = Stepped(limits.CHANGE)
    two_k_power_fraction = Stepped(limits.TWO_K_POWER)
    cr10 = Stepped(limits.CR10)
    heart_rate = Inside("heart rate", HeartRateSchema)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Effort:
        ((key, value),) = data.items()
        effort: Effort = _MADE[key](value) if key in _MADE else value
        return effort


_MADE: dict[str, Callable[[Fraction], Effort]] = {
    "split": Split,
    "split_offset": SplitOffset,
    "change": Change,
    "two_k_power_fraction": TwoKPower,
    "cr10": Cr10,
}


def dump_effort(effort: Effort) -> dict[str, object]:
    """An effort as JSON."""
    match effort:
        case Pressure():
            return {"pressure": effort.value}
        case Split(seconds):
            return {"split": number(seconds)}
        case SplitOffset(seconds):
            return {"split_offset": number(seconds)}
        case Change(seconds):
            return {"change": number(seconds)}
        case TwoKPower(fraction):
            return {"two_k_power_fraction": number(fraction)}
        case Cr10(value):
            return {"cr10": number(value)}
        case HeartRate(unit, beats):
            return {"heart_rate": {unit.value: beats}}
