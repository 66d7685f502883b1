"""The drills: enough of them, each said whole, and found as coaches write their names.

The bounds are common practice of coaches, without a published source.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from planner import limits
from planner.athlete import Level
from planner.drills import DRILLS, KnownDrill, Phase, drill_named, drills_for, plain
from planner.plan import Block, Part, Repeat, Step
from tests.shared import drill_names
from web.builtin_plans import load_library

ROOT = Path(__file__).resolve().parents[2]
POSES = ROOT / "static" / "src" / "components" / "figure-poses.ts"
LONGEST_HOW = 2

every_drill = pytest.mark.parametrize("drill", DRILLS, ids=lambda drill: drill.name)


def written_in_plans() -> set[str]:
    plans = load_library(ROOT / "plans").plans.values()
    parts = [part for builtin in plans for part in builtin.plan.parts if isinstance(part, Part)]
    return {name for part in parts for step in part.blocks for name in names_in(step)}


def names_in(step: Step) -> set[str]:
    if isinstance(step, Repeat):
        return {name for inner in step.blocks + step.between for name in names_in(inner)}
    return {step.drill.name} if isinstance(step, Block) and step.drill else set()


def test_there_are_at_least_sixteen_drills() -> None:
    assert len(DRILLS) >= 16


def test_every_phase_of_the_stroke_has_a_drill() -> None:
    assert {drill.phase for drill in DRILLS} == set(Phase)


def test_no_name_means_two_drills() -> None:
    names = [plain(name) for drill in DRILLS for name in (drill.name, *drill.other_names)]
    assert len(set(names)) == len(names)


def test_no_sentence_stands_twice() -> None:
    for texts in zip(*((d.mends, d.how, d.caution) for d in DRILLS), strict=True):
        assert len(set(texts)) == len(texts)


@every_drill
def test_it_says_what_it_mends_how_and_what_to_beware_of_in_whole_sentences(drill: KnownDrill) -> None:
    for text in (drill.mends, drill.how, drill.caution):
        assert text[0].isupper()
        assert text.endswith(".")


@every_drill
def test_it_is_told_in_one_or_two_sentences(drill: KnownDrill) -> None:
    assert 1 <= len(re.findall(r"\.(?: |$)", drill.how)) <= LONGEST_HOW


@every_drill
def test_its_rates_are_easy_ones_that_a_plan_may_have(drill: KnownDrill) -> None:
    low, high = drill.rates
    assert limits.RATE.low <= low < high <= 30


@every_drill
def test_a_drill_that_stops_in_the_stroke_is_rowed_at_no_more_than_twenty(drill: KnownDrill) -> None:
    if "pause" in drill.name:
        assert drill.rates[1] <= 20


@every_drill
def test_a_drill_on_one_side_is_short_and_not_for_novices(drill: KnownDrill) -> None:
    """Fifteen to twenty seconds a side [C]."""
    if drill.sides:
        assert (drill.sides.least_seconds, drill.sides.most_seconds) == (15, 20)
        assert drill.rates[1] <= 20
        assert drill.level is not Level.NOVICE


@pytest.mark.parametrize("name", ["single foot", "single arm"])
def test_drills_of_one_limb_have_sides(name: str) -> None:
    drill = drill_named(name)
    assert drill
    assert drill.sides


@every_drill
def test_it_begins_at_a_rate_of_its_own_that_its_words_allow(drill: KnownDrill) -> None:
    assert drill.rates[0] <= drill.first_rate <= drill.rates[1]
    slow = ("pause" in drill.name, "slow" in drill.name, "low rate" in drill.caution, drill.sides is not None)
    assert drill.first_rate == 18 if any(slow) else drill.first_rate in {18, 20}


@pytest.mark.parametrize(("name", "parts"), [("pick drill", 4), ("reverse pick drill", 3)])
def test_a_drill_of_ten_strokes_each_has_as_many_strokes_as_its_words_come_to(name: str, parts: int) -> None:
    drill = drill_named(name)
    assert drill
    assert drill.how.startswith("Ten strokes each of ")
    assert drill.strokes == 10 * parts


@every_drill
def test_a_drill_whose_words_count_strokes_is_counted_in_strokes(drill: KnownDrill) -> None:
    assert (drill.strokes is not None) == ("strokes each" in drill.how)


@every_drill
def test_a_drill_needs_time_at_the_straps_when_a_foot_leaves_them(drill: KnownDrill) -> None:
    assert drill.straps == any(words in drill.how for words in ("without straps", "One foot strapped"))


@every_drill
def test_its_name_may_stand_in_a_plan(drill: KnownDrill) -> None:
    assert all(len(name) <= limits.WORD_LENGTH for name in (drill.name, *drill.other_names))


@pytest.mark.parametrize("name", sorted(written_in_plans()))
def test_the_drills_of_the_built_in_plans_are_all_known(name: str) -> None:
    assert drill_named(name)


@pytest.mark.parametrize(
    ("written", "found"),
    [
        ("Arms only", "arms only"),
        ("the single-foot drill", "single foot"),
        ("arms only, hands level", "arms only"),
        ("Pause at hands away", "pause at hands away"),
        ("1/2 slide", "half slide"),
        ("  FEET  OUT ", "feet out"),
        ("Pick drill", "pick drill"),
    ],
)
def test_a_drill_is_found_as_coaches_write_it(written: str, found: str) -> None:
    drill = drill_named(written)
    assert drill
    assert drill.name == found


@pytest.mark.parametrize("written", ["", ",", "drill", "headstands", "only arms and a hat"])
def test_an_unknown_drill_is_not_found(written: str) -> None:
    assert drill_named(written) is None


def test_a_higher_level_has_every_drill_of_the_lower_ones() -> None:
    novice, club, trained = (set(drills_for(level)) for level in Level)
    assert novice < club <= trained == set(DRILLS)


def test_drills_can_be_asked_for_by_phase() -> None:
    assert {drill.phase for drill in drills_for(Level.TRAINED, Phase.CATCH)} == {Phase.CATCH}


def test_the_names_that_the_phone_is_held_to_are_found_here_as_well() -> None:
    assert drill_names.FILE.read_text(encoding="utf-8") == drill_names.text()


def test_every_drill_and_position_has_a_drawing_and_no_drawing_is_left_over() -> None:
    drawn = set(re.findall(r'^  "?([a-z ]+)"?: [{\[]', POSES.read_text(encoding="utf-8"), re.MULTILINE))
    positions = {phase.value for phase in Phase} - {"whole"}
    assert drawn == {drill.name for drill in DRILLS} | positions
