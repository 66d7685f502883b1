"""The athlete as JSON: results and a few optional facts, all of them about one person and never kept."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import ValidationError, post_load, validates_schema

from planner import limits
from planner.athlete import Athlete, Level, Result
from planner.schemas.fields import Inside, OneOf, Several, Stepped, Strict, Whole, load


class ResultSchema(Strict):
    """A distance in metres and the time it took in seconds."""

    metres = Whole(limits.RESULT_METRES, required=True)
    seconds = Stepped(limits.RESULT_SECONDS, required=True)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Result:
        result = Result(**data)
        if complaint := result.complaint():
            raise ValidationError(complaint, "seconds")
        return result


class AthleteSchema(Strict):
    """Who rows. Nothing here is needed; of several results one over 2000 m sets the splits."""

    results = Several("results", Inside("a result", ResultSchema), limits.RESULTS)
    age = Whole(limits.AGE)
    mass_kg = Stepped(limits.MASS_KG)
    heart_rate_rest = Whole(limits.HEART_RATE_REST)
    heart_rate_max = Whole(limits.HEART_RATE_MAX)
    level = OneOf("level", Level)

    @validates_schema
    def _rest_is_well_below_highest(self, data: Mapping[str, Any], **_: object) -> None:
        rest, most = data.get("heart_rate_rest"), data.get("heart_rate_max")
        if rest is None or most is None or most - rest >= limits.HEART_RATES_APART:
            return
        apart = f"{most - rest} beats a minute" if rest < most else "not"
        raise ValidationError(
            f"resting heart rate {rest} is {apart} below the highest, {most}: it has to be at least "
            f"{limits.HEART_RATES_APART} beats below it, so look at both again",
            "heart_rate_rest",
        )

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Athlete:
        return Athlete(**{**data, "results": tuple(data.get("results", ()))})


def load_athlete(document: object) -> Athlete:
    """The athlete in a JSON document. Raises InputError with a JSON pointer to each mistake."""
    athlete: Athlete = load(AthleteSchema, document)
    return athlete
