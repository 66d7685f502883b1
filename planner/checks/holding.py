"""Whether what is asked can be held: hard work against the reserve, splits against their result."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import ceil, floor

from planner import reserve
from planner.capacity import Capacity, CapacityBasis, Purse
from planner.checks.scene import Row, Scene
from planner.demand import Run
from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.limits import SPLIT, SPLIT_OFFSET, TWO_K_POWER
from planner.plan import Effort, PartKind, Split, SplitOffset, TwoKPower
from planner.prediction import TWO_K, examined_of, predict
from planner.stretches import Ends
from planner.units import clock, split_clock

OVERDRAWN = {CapacityBasis.FIT: -0.05, CapacityBasis.RESULT: -0.2, CapacityBasis.LEVEL: -0.2}
"""How far below an empty reserve the median model goes before a word is said, as a share of W': a fitted one
is not known better (one more trial moved it by 29 %: Hill 2003, facts 3.2), and one assumed for the level may
be off by a third; judgement [C]."""
_BISECTIONS = 24

_HELD = (
    "All models of the reserve come from cycling and differ; this is the middle one, with what is known of "
    "the rower. Who has held it before knows better."
)


def cannot_be_held(scene: Scene) -> Iterator[Finding]:
    """The first block in which more is spent than there is, by the median model or in the end by the kindest.

    Of a warm-up `warm-up-spends-too-much` speaks.
    """
    middle, kindest = _balances(scene.runs, scene.capacity)
    least = OVERDRAWN[scene.capacity.basis]
    for row in scene.rows:
        index = row.segment.index
        if not _may_overdraw(scene, row) or (middle[index] >= least and kindest[index] >= 0):
            continue
        never = any(kindest[s.index] < 0 for s in scene.at(row.segment.place))
        yield Finding(
            "cannot-be-held",
            Severity.WARNING if never else Severity.ADVICE,
            row.segment.place,
            f"{scene.named(row)} asks for more than there is: {_when(row)} the reserve for hard work is gone"
            f"{', and even the kindest model has none left at its end' if never else ''}.",
            _HELD,
            _mend(scene, row),
        )
        return


def _may_overdraw(scene: Scene, row: Row) -> bool:
    if row.share is None or row.guessed or row.segment.part == PartKind.WARM_UP:
        return False
    return row.share > scene.capacity.critical


def _balances(runs: Sequence[Run], capacity: Capacity) -> tuple[list[float], list[float]]:
    """After each run the share of W' left by the median model, and by the kindest model and capacity."""
    middle = reserve.medians(_models(runs, capacity.middle, capacity))
    kindest = [max(row) for row in zip(*_every_model(runs, capacity), strict=True)]
    return middle, kindest


def _models(runs: Sequence[Run], purse: Purse, capacity: Capacity) -> tuple[list[float], ...]:
    return reserve.by_every_model(runs, purse, reserve.tau_for(runs, purse, capacity))


def _every_model(runs: Sequence[Run], capacity: Capacity) -> list[list[float]]:
    return [
        model for purse in (capacity.middle, *capacity.corners) for model in _models(runs, purse, capacity)
    ]


def _when(row: Row) -> str:
    round_ = row.segment.repetition
    if round_ and round_.times > 1:
        return f"in repetition {round_.number} of {round_.times}"
    return f"before its end, {clock(round(float(row.segment.end)))} into the session,"


def _mend(scene: Scene, row: Row) -> Mend | None:
    """The hardest effort at that place which leaves the median model something to the last stroke."""
    place = row.segment.place
    high, low = row.share or 0.0, scene.capacity.critical
    if not _lasts(scene, place, low):
        return None
    for _ in range(_BISECTIONS):
        middle = (low + high) / 2
        low, high = (middle, high) if _lasts(scene, place, middle) else (low, middle)
    effort = _effort_at(scene, place, low)
    if effort is None:
        return None
    op = Op.ADD if scene.block(place).effort is None else Op.REPLACE
    return Mend(f"Row it at {_told(effort)}", (Edit(op, f"{place}/effort", effort),))


def _lasts(scene: Scene, place: str, share: float) -> bool:
    """Whether the reserve outlasts all that is rowed at a place, if it is rowed at this share."""
    pairs = list(zip(scene.rows, scene.runs, strict=True))
    runs = [_at_share(row, run, share) if row.segment.place == place else run for row, run in pairs]
    left = reserve.medians(_models(runs, scene.capacity.middle, scene.capacity))
    return all(
        balance >= 0 for (row, _), balance in zip(pairs, left, strict=True) if row.segment.place == place
    )


def _at_share(row: Row, run: Run, share: float) -> Run:
    """The run at another share: metres take longer in proportion to the cube root."""
    if run.share == 0:
        return run
    by_metres = row.segment.stretch.ends is Ends.METRES
    return Run(share, run.seconds * (run.share / share) ** (1 / 3) if by_metres else run.seconds)


def _effort_at(scene: Scene, place: str, share: float) -> Effort | None:
    """The effort at a share or just below it, in the words of the block where it names a split."""
    two_k = scene.timeline.two_k
    effort = scene.block(place).effort
    if two_k and isinstance(effort, Split | SplitOffset):
        tenths = ceil(float(two_k.split) * share ** (-1 / 3) * 10 + 1e-6)
        split = Fraction(tenths, 10)
        if isinstance(effort, Split):
            return Split(split) if SPLIT.complaint(split) is None else None
        offset = split - two_k.split
        return SplitOffset(offset) if SPLIT_OFFSET.complaint(offset) is None else None
    fraction = Fraction(floor(share * 100), 100)
    return TwoKPower(fraction) if TWO_K_POWER.complaint(fraction) is None else None


def _told(effort: Effort) -> str:
    match effort:
        case Split(seconds):
            return f"{split_clock(seconds)} per 500 m"
        case SplitOffset(seconds):
            return f"2 km split {float(seconds):+.1f} s"
        case TwoKPower(fraction):
            return f"{round(fraction * 100)} % of 2 km power"
        case _:
            return "less"


def prediction_out_of_range(scene: Scene) -> Iterator[Finding]:
    """Splits that rest on a result from which no custom reaches as far as 2 km."""
    results = scene.athlete.results if scene.athlete else ()
    if not results:
        return
    found = predict(TWO_K, results, examined_of(results))
    if found.measured or any(said.within_range for said in found.by):
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
        f"The splits rest on {source.metres} m in {clock(source.seconds)}, too far from 2 km to say much: "
        f"a 2 km split between {low} and {high}.",
        "Predictions hold from about 500 m or three and a half minutes up; a result over 2 km says most.",
    )


def _rests_on_two_k(row: Row) -> bool:
    target = row.segment.stretch.target
    if target is None or target.split is None:
        return False
    return target.split_offset is not None or target.two_k_power_fraction is not None
