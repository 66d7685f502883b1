"""Whether a target for intervals holds, as JSON: what is asked, and what is answered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from marshmallow import fields, post_load

from planner.athlete import Athlete, Level
from planner.capacity import CapacityBasis, capacity_of
from planner.holding import Holding, Target, holding_of
from planner.intervals import Intervals
from planner.limits import SPLIT, TWO_K_POWER
from planner.plan import ForMetres, ForSeconds, Split, TwoKPower
from planner.schemas.athlete_schema import AthleteSchema
from planner.schemas.block_schema import given
from planner.schemas.fields import Inside, OneKey, OneOf, Stepped, Strict, about, load, number, word
from planner.schemas.readiness_schema import dump_range, percent
from planner.schemas.readiness_shape import RangeShape
from planner.schemas.session_schema import RepetitionsSchema


@dataclass(frozen=True, slots=True)
class HoldingRequest:
    """A set, the target for its repetitions, and who rows it. Without a level the athlete's counts."""

    intervals: Intervals
    target: Split | TwoKPower
    athlete: Athlete | None = None
    level: Level | None = None


class RepetitionSetSchema(RepetitionsSchema):
    """Repetitions of hard rowing with rests between them."""

    @post_load
    def _make(self, data: Mapping[str, int], **_: object) -> Intervals:
        length = ForMetres(data["metres"]) if "metres" in data else ForSeconds(data["seconds"])
        return Intervals(data["times"], length, data["rest_seconds"])


class AskedTargetSchema(OneKey):
    """What each repetition is to be rowed at: a split, or a share of 2 km power."""

    split = Stepped(SPLIT)
    two_k_power_fraction = Stepped(TWO_K_POWER)

    @post_load
    def _make(self, data: Mapping[str, Fraction], **_: object) -> Split | TwoKPower:
        return Split(data["split"]) if "split" in data else TwoKPower(data["two_k_power_fraction"])


class HoldingRequestSchema(Strict):
    """A set and a target for it, of which it is asked whether it holds to the end."""

    intervals = Inside("interval set", RepetitionSetSchema, required=True)
    target = Inside("target", AskedTargetSchema, required=True)
    athlete = Inside("athlete", AthleteSchema)
    level = OneOf("level", Level)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> HoldingRequest:
        return HoldingRequest(**data)


class BreakShape(Strict):
    """Where the reserve is gone."""

    repetition = fields.Integer(required=True, **about("the first is 1"))
    second = fields.Integer(required=True, **about("the second of it, from 1, in which that happens"))


class RowedTargetShape(Strict):
    """What repetitions are rowed at."""

    two_k_power_fraction = fields.Float(required=True, **about("share of 2 km power, to the thousandth"))
    split_s = fields.Float(**about("seconds per 500 m, where a split is asked for or a result is known"))


class HoldingShape(Strict):
    """Whether a target holds to the end by the middle of three models: an estimate, never a promise.

    `breaks` says where it does not; `lasting` is the hardest that would, absent where none is too hard.
    """

    target = Inside("target", RowedTargetShape, required=True)
    holds = fields.Boolean(required=True)
    breaks = Inside("break", BreakShape)
    left = Inside("reserve left", RangeShape, required=True)
    after_each_percent = fields.List(
        fields.Integer(), required=True, **about("of the reserve, by the middle model, after each repetition")
    )
    lasting = Inside("lasting target", RowedTargetShape)
    basis = word(CapacityBasis, "two results or more, one, or only the level")
    sentence = fields.String(required=True, **about("what a coach would say"))


def holding_answer(document: object) -> dict[str, object]:
    """Whether the target in a JSON document holds. Raises InputError with a JSON pointer to each mistake."""
    asked: HoldingRequest = load(HoldingRequestSchema, document)
    level = asked.level or (asked.athlete.level if asked.athlete else Level.CLUB)
    return dump_holding(holding_of(asked.intervals, asked.target, capacity_of(asked.athlete, level)))


def dump_holding(holding: Holding) -> dict[str, object]:
    """Whether a target holds, as JSON."""
    breaks = holding.breaks
    return given(
        target=_dump_target(holding.target),
        holds=breaks is None,
        breaks={"repetition": breaks.repetition, "second": breaks.second} if breaks else None,
        left=dump_range(holding.left),
        after_each_percent=[percent(share) for share in holding.after_each],
        lasting=_dump_target(holding.lasting) if holding.lasting else None,
        basis=holding.basis.value,
        sentence=holding.sentence,
    )


def _dump_target(target: Target) -> dict[str, object]:
    return given(
        two_k_power_fraction=round(target.share, 3),
        split_s=number(target.split) if target.split is not None else None,
    )
