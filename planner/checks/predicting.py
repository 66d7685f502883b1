"""Whether what is asked rests on a prediction that no custom reaches."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from planner.checks.maximal import maximal_bouts
from planner.checks.scene import Row, Scene
from planner.findings import Finding, Severity
from planner.prediction import TWO_K, examined_of, predict
from planner.result_findings import named
from planner.units import split_clock

NEAR_PREDICTED = 0.9
"""From this share of the predicted power on a target looks as if it came from the prediction: judgement
[C]."""


def prediction_out_of_range(scene: Scene) -> Iterator[Finding]:
    """Splits that rest on a result from which no custom reaches as far as 2 km."""
    results = scene.athlete.results if scene.athlete else ()
    if not results:
        return
    found = predict(TWO_K, results, examined_of(results))
    if found.within_range:
        return
    rests = next((row for row in scene.rows if _rests_on_two_k(row)), None)
    if rests is None:
        return
    source = results[found.source]
    low, high = (split_clock(Fraction(each.seconds / 4)) for each in (found.quickest, found.slowest))
    yield Finding(
        "prediction-out-of-range",
        Severity.ADVICE,
        rests.segment.place,
        f"The splits rest on {named(source)}, too far from 2 km to say much: "
        f"a 2 km split between {low} and {high}.",
        "Predictions hold from about 500 m or three and a half minutes up; a result over 2 km says most.",
    )


def piece_out_of_range(scene: Scene) -> Iterator[Finding]:
    """A piece at what is predicted for it, where no custom reaches so far; once a part."""
    endurance, told = scene.endurance, set[int]()
    for bout in maximal_bouts(scene) if endurance.known else ():
        part = bout.rows[0].segment.part_index
        found = endurance.piece(bout.seconds, bout.metres)
        if (
            part in told
            or found.within_range
            or bout.share < NEAR_PREDICTED * endurance.share_at(found.split)
        ):
            continue
        told.add(part)
        yield Finding(
            "piece-out-of-range",
            Severity.NOTE,
            f"/parts/{part}",
            f"{named(endurance.results[found.source])} is too far from this piece to say how quick it can "
            "be: take its target for a guess.",
            "Predictions hold from about 500 m or three and a half minutes up; a result over it says most.",
        )


def _rests_on_two_k(row: Row) -> bool:
    target = row.segment.stretch.target
    if target is None or target.split is None:
        return False
    return target.split_offset is not None or target.two_k_power_fraction is not None
