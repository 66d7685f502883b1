"""Plans compiled to segments with exact starts."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.athlete import Athlete, Result
from planner.errors import InputError
from planner.findings import Severity
from planner.plan import (
    Block,
    Call,
    Change,
    Cr10,
    Drill,
    ForSeconds,
    Gap,
    Part,
    PartKind,
    Plan,
    Pressure,
    Repeat,
    Rest,
    Setting,
    Split,
    SplitOffset,
)
from planner.stretches import Basis, Ends, Kind
from planner.strokes import Fit
from planner.timeline import Timeline, compile_timeline
from tests.builders import main_piece, metres, open_row, rower_of_7_42, seconds, strokes, warm_up_then

TWO_K = SplitOffset(Fraction(0))


def codes(timeline: Timeline) -> list[str]:
    return [finding.code for finding in timeline.findings]


def test_segments_follow_each_other_exactly() -> None:
    timeline = compile_timeline(main_piece(Repeat(3, (strokes(10, 28), seconds(50, 20)))))
    assert [s.start for s in timeline.segments] == [
        0,
        Fraction(150, 7),
        Fraction(500, 7),
        Fraction(650, 7),
        Fraction(1000, 7),
        Fraction(1150, 7),
    ]
    assert timeline.totals.seconds == Fraction(1500, 7)


BLOCKS = st.builds(seconds, st.integers(1, 900), st.integers(10, 50)) | st.builds(
    strokes, st.integers(1, 200), st.integers(10, 50)
)


@given(st.lists(BLOCKS, min_size=1, max_size=30), st.sampled_from(Fit))
def test_every_change_falls_on_a_catch_and_sums_are_conserved(blocks: list[Block], fit: Fit) -> None:
    timeline = compile_timeline(main_piece(*blocks), fit=fit)
    for before, after in zip(timeline.segments, timeline.segments[1:], strict=False):
        assert before.stretch.strokes is not None
        assert before.start + before.stretch.strokes.count * before.stretch.strokes.stroke == after.start
    assert timeline.totals.seconds == sum(s.stretch.duration for s in timeline.segments)
    assert timeline.totals.strokes == sum(p.totals.strokes for p in timeline.parts)


def test_by_the_clock_half_a_minute_stays_half_a_minute() -> None:
    (segment,) = compile_timeline(main_piece(seconds(15, 26))).segments
    assert segment.stretch.duration == 15
    assert segment.stretch.strokes is not None
    assert segment.stretch.strokes.rate == 28


def test_a_paced_rate_far_from_the_one_asked_is_noted_once_for_its_place() -> None:
    timeline = compile_timeline(main_piece(Repeat(4, (seconds(15, 26),))))
    assert codes(timeline) == ["paced-rate"]
    assert timeline.findings[0].place == "/parts/0/blocks/0/blocks/0"


def test_half_a_stroke_a_minute_is_not_worth_a_note() -> None:
    assert codes(compile_timeline(main_piece(seconds(60, 25)))) == []


def test_by_the_rate_the_stroke_is_what_was_asked() -> None:
    (segment,) = compile_timeline(main_piece(seconds(15, 26)), fit=Fit.RATE).segments
    assert segment.stretch.duration == 7 * Fraction(60, 26)


def test_2000_m_at_a_known_split_lasts_what_the_split_says() -> None:
    (segment,) = compile_timeline(main_piece(metres(2000, 30, TWO_K)), rower_of_7_42()).segments
    assert segment.stretch.duration == 462
    assert (segment.stretch.basis, segment.waits, segment.estimated) == (Basis.SPLIT, True, True)


def test_a_distance_without_a_result_rests_on_an_assumption_and_waits() -> None:
    (segment,) = compile_timeline(main_piece(metres(2000, 30, TWO_K))).segments
    assert (segment.stretch.basis, segment.waits) == (Basis.ASSUMED, True)
    assert segment.stretch.strokes is not None
    assert segment.stretch.strokes.stroke == 2


def test_metre_blocks_inside_a_piece_go_on_and_the_last_one_waits() -> None:
    piece = main_piece(metres(500, 26, TWO_K), metres(500, 28, TWO_K), Rest(60), metres(500, 30, TWO_K))
    timeline = compile_timeline(piece, rower_of_7_42())
    assert [s.waits for s in timeline.segments] == [False, True, False, True]


def test_everything_after_an_estimate_is_estimated() -> None:
    timeline = compile_timeline(
        main_piece(seconds(60, 20), metres(500, 26, TWO_K), Rest(60)), rower_of_7_42()
    )
    assert [s.estimated for s in timeline.segments] == [False, True, True]


def test_an_open_block_waits_for_a_tap() -> None:
    (segment,) = compile_timeline(main_piece(open_row(20))).segments
    assert (segment.stretch.ends, segment.waits) == (Ends.TAP, True)


def test_the_gap_waits_for_the_rower_before_the_piece() -> None:
    timeline = compile_timeline(warm_up_then(300, seconds(300, 18), seconds(240, 30)))
    gap = timeline.segments[1]
    assert (gap.stretch.kind, gap.start, gap.waits) == (Kind.GAP, 300, True)


def test_a_gap_with_nothing_after_it_just_ends() -> None:
    assert not compile_timeline(Plan("A wait", (Gap(60),))).segments[0].waits


def test_a_sided_drill_becomes_sides_and_swaps_that_fill_its_length() -> None:
    drill = Drill("One foot", sides=2, side_seconds=20, swap_seconds=10)
    block = Block(ForSeconds(50), 18, drill=drill, calls=(Call("Quiet hands"),))
    stretches = [s.stretch for s in compile_timeline(main_piece(block)).segments]
    assert [(s.kind, s.duration) for s in stretches] == [(Kind.DRILL, 20), (Kind.REST, 10), (Kind.DRILL, 20)]
    assert [s.drill.side if s.drill else None for s in stretches] == [1, 2, 2]
    assert stretches[1].strokes is None
    assert [len(s.calls) for s in stretches] == [1, 0, 0]


def test_changes_add_up_over_the_expanded_timeline() -> None:
    ladder = main_piece(
        seconds(60, 20, Split(Fraction(130))), Repeat(3, (seconds(60, 20, Change(Fraction(-2))),))
    )
    splits = [s.stretch.target.split for s in compile_timeline(ladder).segments if s.stretch.target]
    assert splits == [130, 128, 126, 124]


def test_a_change_looks_past_rest_and_drill_to_the_last_rowed_target() -> None:
    drill = Block(ForSeconds(60), 18, Split(Fraction(150)), Drill("Feet out"))
    piece = main_piece(
        seconds(60, 20, Split(Fraction(130))), drill, Rest(30), seconds(60, 20, Change(Fraction(-2)))
    )
    target = compile_timeline(piece).segments[-1].stretch.target
    assert target is not None
    assert target.split == 128


def test_a_change_after_an_unknown_split_stays_unknown() -> None:
    piece = main_piece(
        seconds(60, 20, Split(Fraction(130))),
        seconds(60, 20, Cr10(Fraction(3))),
        seconds(60, 20, Change(Fraction(-2))),
    )
    target = compile_timeline(piece).segments[-1].stretch.target
    assert target is not None
    assert target.split is None


def test_a_change_of_nothing_is_a_finding() -> None:
    assert codes(compile_timeline(main_piece(seconds(60, 20, Change(Fraction(-2)))))) == [
        "change-without-target"
    ]


def test_changes_that_add_up_to_the_impossible_are_a_finding() -> None:
    plunge = main_piece(
        seconds(60, 20, Split(Fraction(90))), Repeat(2, (seconds(60, 20, Change(Fraction(-20))),))
    )
    assert codes(compile_timeline(plunge)) == ["split-out-of-range"]


def test_of_splits_out_of_reach_it_is_said_once_and_quietly() -> None:
    """Easy rowing of a very slow rower comes to more than 6:00 per 500 m in every block."""
    slow = Athlete((Result(2000, Fraction(1200)),))
    easy = main_piece(*(seconds(60, 18 + 2 * (number % 2), Pressure.LIGHT) for number in range(15)))
    (finding,) = compile_timeline(easy, slow).findings
    assert (finding.code, finding.severity) == ("split-out-of-range", Severity.NOTE)
    assert finding.place == "/parts/0/blocks/0"


def test_a_call_that_does_not_fit_is_a_finding_and_not_in_the_segment() -> None:
    block = Block(ForSeconds(60), 20, calls=(Call("Too late", stroke=40),))
    timeline = compile_timeline(main_piece(block))
    assert codes(timeline) == ["call-does-not-fit"]
    assert timeline.segments[0].stretch.calls == ()


def test_a_setting_is_shown_where_it_changes() -> None:
    plan = Plan(
        "Starts",
        (
            Part(
                PartKind.MAIN,
                (
                    seconds(60, 20),
                    Block(ForSeconds(60), 20, setting=Setting(lever=6)),
                    Rest(60),
                    seconds(60, 20),
                ),
            ),
        ),
        setting=Setting(lever=4),
    )
    settings = [s.setting for s in compile_timeline(plan).segments]
    assert settings == [None, Setting(lever=6), None, Setting(lever=4)]


def test_distance_and_work_are_known_only_when_every_split_is() -> None:
    piece = main_piece(seconds(60, 20, Split(Fraction(120))), seconds(60, 20, Pressure.LIGHT))
    assert compile_timeline(piece).totals.metres is None
    assert compile_timeline(piece, rower_of_7_42()).totals.metres is not None


def test_a_sessions_split_and_watts_are_each_averaged_in_their_own_right() -> None:
    piece = main_piece(seconds(60, None, Split(Fraction(100))), seconds(60, None, Split(Fraction(150))))
    totals = compile_timeline(piece).totals
    assert totals.metres == 300 + 200
    assert totals.split == 120
    # 350 W and 103.70 W (fact sheet 1.1) average to 226.85 W, not to the 202.55 W of a 2:00 split.
    assert float(totals.watts or 0) == pytest.approx((350 + 103.7037) / 2, abs=0.001)


def test_a_plan_too_large_is_refused_before_it_is_expanded() -> None:
    with pytest.raises(InputError, match="rolled out"):
        compile_timeline(main_piece(Repeat(100, (Repeat(100, (seconds(1, 20),)),))))


def test_a_change_after_nothing_but_a_drill_says_so() -> None:
    drilled = Block(ForSeconds(180), 20, Split(Fraction(120)), Drill("arms only"))
    timeline = compile_timeline(main_piece(drilled, seconds(360, 20, Change(Fraction(-2)))))
    assert codes(timeline) == ["change-without-target"]
    assert "other than a drill" in timeline.findings[0].sentence


def test_metres_count_towards_the_longest_plan_at_the_split_written_for_them() -> None:
    slow = [metres(100_000, 20, Split(Fraction(360))), metres(44_000, 20, Split(Fraction(360)))]
    with pytest.raises(InputError, match=r"lasts about 28:48:00, more than 12:00:00"):
        compile_timeline(main_piece(*slow))
