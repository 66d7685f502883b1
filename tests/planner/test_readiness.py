"""Readiness at the start line, by gap, with the advice that follows."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.advised_gap import LOST_GAP, RESERVE_WANTED
from planner.athlete import Level, Room
from planner.demand import holdable_share
from planner.plan import Block, Cr10, ForSeconds, Gap, Part, PartKind, Plan, Pressure, Repeat, Rest, TwoKPower
from planner.readiness import GAPS, SERIES_POINTS, Readiness, readiness_of
from planner.timeline import compile_timeline
from tests.builders import main_piece, metres, rower_of_7_42, seconds, warm_up_then

EASY = seconds(900, 20, Pressure.HALF)
RACE = metres(2000, 30, Pressure.RACE)
LEVELS = st.sampled_from(list(Level))
ROOMS = st.sampled_from(list(Room))


def share(percent: int) -> TwoKPower:
    return TwoKPower(Fraction(percent, 100))


def warm_up(*steps: Block | Rest | Repeat) -> Plan:
    return Plan("Warm-up", (Part(PartKind.WARM_UP, steps),))


def ready(plan: Plan, level: Level = Level.CLUB, room: Room = Room.NORMAL) -> Readiness:
    found = readiness_of(compile_timeline(plan), None, level, room)
    assert found is not None
    return found


STEPS = st.lists(
    st.builds(
        lambda length, percent: seconds(length, 24, share(percent)), st.integers(5, 240), st.integers(20, 150)
    ),
    min_size=1,
    max_size=8,
)


@given(STEPS, LEVELS, ROOMS)
def test_a_longer_gap_never_lowers_the_reserve(steps: list[Block], level: Level, room: Room) -> None:
    by_gap = [row.state.reserve for row in ready(warm_up(*steps), level, room).by_gap]
    for sooner, later in pairwise(by_gap):
        assert all(b >= a - 1e-12 for a, b in zip(sooner, later, strict=True))


@given(STEPS, LEVELS, ROOMS)
def test_the_lowest_is_never_above_the_middle_nor_that_above_the_highest(
    steps: list[Block], level: Level, room: Room
) -> None:
    for row in ready(warm_up(*steps), level, room).by_gap:
        for low, middle, high in row.state:
            assert low <= middle <= high


@given(STEPS, LEVELS, ROOMS)
def test_the_advised_gap_keeps_its_promises(steps: list[Block], level: Level, room: Room) -> None:
    """At least 95 % of W' by the median model; at least 2 min before a maximal piece [C]; never lost."""
    plan = warm_up(*steps)
    low, best, high = ready(plan, level, room).advised_gap
    assert 120 <= low <= best <= high <= LOST_GAP
    waited = Plan("Waited", (*plan.parts, Gap(best)))
    assert ready(waited, level, room).at_start.reserve.middle >= RESERVE_WANTED - 1e-9


@given(STEPS, st.integers(1, 7200))
def test_the_advice_does_not_depend_on_the_gap_there_is(steps: list[Block], gap: int) -> None:
    plan = warm_up(*steps)
    assert ready(Plan("Gap", (*plan.parts, Gap(gap)))).advised_gap == ready(plan).advised_gap


@given(STEPS, st.integers(20, 120))
def test_what_follows_the_start_changes_nothing_at_it(steps: list[Block], percent: int) -> None:
    before = warm_up(*steps).parts
    after = Part(PartKind.MAIN, (seconds(600, 28, share(percent)),))
    shorter, longer = (ready(Plan("Plan", (*before, Gap(240), *more))) for more in ((), (after,)))
    assert longer.at_start == shorter.at_start


def test_an_easy_warm_up_before_a_2_km_asks_for_about_five_minutes() -> None:
    """Common practice [C], no source: at least 2 and ideally about 5 minutes."""
    assert ready(warm_up_then(300, EASY, RACE)).advised_gap[:2] == (120, 300)


def test_a_heavy_bout_asks_for_at_least_nine_minutes() -> None:
    """Bailey 2009, J Appl Physiol 107:1743-1756: held on longer with a gap of 9 min, less long with 3."""
    heavy = ready(warm_up(EASY, seconds(240, 30, share(97))))
    assert heavy.advised_gap.low >= 540
    assert any("heavy bout" in note for note in heavy.notes)


@pytest.mark.parametrize(("easy_seconds", "least"), [(0, 540), (120, 420), (300, 240), (600, 120)])
def test_easy_rowing_after_a_heavy_bout_counts_towards_the_nine_minutes(
    easy_seconds: int, least: int
) -> None:
    """Half an hour of easy rowing brings the reserve back, so that only the nine minutes rule."""
    bout = seconds(210, 30, share(97))
    easy = [seconds(easy_seconds, 16, share(20))] if easy_seconds else []
    found = ready(warm_up(EASY, bout, *easy))
    assert found.advised_gap.low == least
    assert any("heavy bout" in note for note in found.notes) == (least > 120)


def test_steady_rowing_may_follow_at_once() -> None:
    plan = Plan(
        "Steady",
        (Part(PartKind.WARM_UP, (EASY,)), Part(PartKind.MAIN, (seconds(1800, 20, Pressure.HALF),))),
    )
    assert ready(plan).advised_gap.low == 0


@pytest.mark.parametrize(("part_of_what_can_be_held", "least"), [(0.97, 120), (0.85, 0)])
def test_a_long_piece_is_maximal_when_it_asks_for_nearly_what_can_be_held(
    part_of_what_can_be_held: float, least: int
) -> None:
    percent = round(100 * part_of_what_can_be_held * holdable_share(2400, 480))
    assert ready(warm_up_then(300, EASY, seconds(2400, 24, share(percent)))).advised_gap.low == least


@pytest.mark.parametrize(("percent", "least"), [(79, 120), (77, 0)])
def test_a_piece_that_starts_at_nearly_the_critical_share_is_maximal(percent: int, least: int) -> None:
    """Nine tenths of a club rower's 0.87 are 0.783; for 10 s the power law alone would allow more."""
    start = seconds(10, 30, share(percent))
    plan = Plan(
        "Start",
        (Part(PartKind.WARM_UP, (EASY,)), Part(PartKind.MAIN, (start, seconds(600, 20, share(30))))),
    )
    assert ready(plan).advised_gap.low == least


def test_a_hard_burst_after_two_minutes_does_not_make_a_piece_maximal() -> None:
    easy_start = (seconds(120, 20, share(40)), seconds(20, 30, share(110)), seconds(600, 20, share(40)))
    plan = Plan("Bursts", (Part(PartKind.WARM_UP, (EASY,)), Part(PartKind.MAIN, easy_start)))
    assert ready(plan).advised_gap.low == 0


@pytest.mark.parametrize(("rate", "least"), [(20, 120), (24, 0)])
def test_a_piece_of_full_strokes_is_hard_whatever_its_rate(rate: int, least: int) -> None:
    """Two thirds of 2 km power are full strokes at r20 for a club rower, who races at r30: facts 6.6 [C]."""
    assert ready(warm_up_then(300, EASY, seconds(1800, rate, share(67)))).advised_gap.low == least


@pytest.mark.parametrize(("rest", "least"), [(60, 120), (1200, 0)])
def test_a_long_set_is_judged_as_the_one_piece_that_it_is_like(rest: int, least: int) -> None:
    """Three times 20 min at 0.70 of 2 km power: of an hour in one go a club rower holds 0.71."""
    long = Repeat(3, (seconds(1200, 24, share(70)),), (Rest(rest),))
    assert ready(warm_up_then(300, EASY, long)).advised_gap.low == least


def test_no_gap_is_advised_that_costs_however_hot_the_room() -> None:
    """15-20 min start to cost: West 2013, J Sci Med Sport 16:172."""
    assert ready(warm_up(EASY), room=Room.HOT).advised_gap.high == 900


@given(STEPS, st.integers(0, 900), st.booleans())
def test_the_start_is_where_the_piece_begins_or_else_where_the_wait_ends(
    steps: list[Block], gap: int, with_piece: bool
) -> None:
    before = Part(PartKind.WARM_UP, tuple(steps))
    wait = (Gap(gap),) if gap else ()
    piece = (Part(PartKind.MAIN, (seconds(60, 30, share(100)),)),) if with_piece else ()
    down = Part(PartKind.COOL_DOWN, (seconds(60, 18, share(40)),))
    lengths = [block.length for block in steps]
    expected = gap + sum(length.seconds for length in lengths if isinstance(length, ForSeconds))
    assert ready(Plan("A piece", (before, *wait, *piece, down))).start_seconds == expected


def test_the_start_line_is_the_same_in_the_state_the_gaps_and_the_series() -> None:
    plan = warm_up_then(300, seconds(600, 30, share(105)), RACE)
    found = ready(plan)
    assert found.gap_seconds == 300
    assert found.at_start == found.by_gap[5].state
    step = found.series.step_seconds
    assert 900 % step == 0
    assert found.series.reserve[900 // step] == pytest.approx(found.at_start.reserve.middle, abs=1e-12)


def test_without_a_main_part_and_a_gap_the_start_comes_after_the_advised_one() -> None:
    found = ready(warm_up(EASY))
    assert found.gap_seconds is None
    assert found.at_start == found.by_gap[found.advised_gap.best // 60].state


@pytest.mark.parametrize(
    "plan",
    [
        main_piece(RACE),
        Plan("Way down", (Part(PartKind.COOL_DOWN, (EASY,)),)),
        Plan("Gap first", (Gap(60), Part(PartKind.MAIN, (RACE,)))),
    ],
)
def test_without_rowing_before_the_start_there_is_nothing_to_be_ready_from(plan: Plan) -> None:
    assert readiness_of(compile_timeline(plan), None, Level.CLUB) is None


def test_the_gaps_are_0_to_30_minutes_and_the_series_has_at_most_120_points() -> None:
    found = ready(warm_up_then(240, EASY, seconds(14_400, 20, Pressure.LIGHT)))
    assert [row.gap_seconds for row in found.by_gap] == list(GAPS) == [60 * m for m in range(31)]
    series = found.series
    assert {len(line) for line in (series.reserve, series.oxygen, series.warmth)} == {len(series.reserve_low)}
    assert len(series.reserve) <= SERIES_POINTS
    assert series.step_seconds * (len(series.reserve) - 1) <= 900 + 240 + 14_400


def test_a_cold_room_leaves_less_warmth_and_a_shorter_wait() -> None:
    cold, normal, hot = (ready(warm_up(EASY), room=room) for room in (Room.COLD, Room.NORMAL, Room.HOT))
    assert cold.advised_gap.high < normal.advised_gap.high < hot.advised_gap.high
    ten = [found.by_gap[10].state.warmth.middle for found in (cold, normal, hot)]
    assert ten == sorted(ten)


def test_one_result_narrows_the_range_and_two_say_so() -> None:
    plan = warm_up_then(120, seconds(300, 30, share(105)), RACE)
    without = ready(plan)
    with_one = readiness_of(compile_timeline(plan, rower_of_7_42()), rower_of_7_42(), Level.CLUB)
    assert with_one is not None
    assert (without.basis, with_one.basis) == ("level", "result")
    widths = [r.at_start.reserve.high - r.at_start.reserve.low for r in (without, with_one)]
    assert widths[1] < widths[0]


def test_the_sentence_says_when_a_gap_is_short_right_or_long() -> None:
    gaps = {60: "short", 300: "right", 1800: "long"}
    for gap, word in gaps.items():
        assert word in ready(warm_up_then(gap, EASY, RACE)).sentence


def test_a_warm_up_that_spends_everything_many_times_over_is_told_so() -> None:
    spent = ready(warm_up(*[seconds(3600, 30, share(200))] * 4))
    assert "row it easier" in spent.sentence
    assert spent.at_start.reserve.low < 0


def test_what_is_guessed_is_said() -> None:
    plan = warm_up_then(300, Block(ForSeconds(600), 20, Cr10(Fraction(3))), RACE)
    assert any("10:00 of rowing name no power" in note for note in ready(plan).notes)


def test_conflicting_reports_on_heavy_priming_are_said_before_a_hard_piece() -> None:
    assert any("Reports conflict" in note for note in ready(warm_up_then(300, EASY, RACE)).notes)


@pytest.mark.parametrize(
    ("plan", "start", "advice"),
    [
        (
            warm_up(EASY),
            "warm and with nearly all of your reserve",
            "Leave about 5 minutes before the piece: anything from 2 minutes to 11:30 will do.",
        ),
        (
            warm_up_then(60, EASY, RACE),
            "warm and with nearly all of your reserve",
            "A gap of 1 minute is short: make it about 5 minutes; anything from 2 minutes to 11:30 will do.",
        ),
        (
            warm_up_then(1800, EASY, RACE),
            "cool and with nearly all of your reserve",
            "A gap of 30 minutes is long: you cool down. Start after 5 minutes, or at most 11:30.",
        ),
        (
            warm_up_then(30, seconds(240, 30, share(105)), RACE),
            "warm and with part of your reserve already spent",
            "It takes 12:30 until nearly all of it is back: row it easier.",
        ),
        (
            warm_up_then(60, seconds(180, 18, Pressure.LIGHT), seconds(1800, 20, Pressure.HALF)),
            "cool and with nearly all of your reserve",
            "The gap of 1 minute is right: anything up to 11:30 will do.",
        ),
    ],
)
def test_it_speaks_as_a_coach_would(plan: Plan, start: str, advice: str) -> None:
    assert ready(plan).sentence == f"You come to the start {start}. {advice}"
