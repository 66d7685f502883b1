"""The same numbers without a browser."""

from __future__ import annotations

import argparse
import json
import re
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.__main__ import main
from planner.command_line.pieces import (
    read_gap,
    read_goal,
    read_intervals,
    read_pacing,
    read_piece,
    read_target,
)
from planner.notation.reader import read
from planner.notation.writer import write
from planner.plan import Gap


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "plan.txt"
    path.write_text("3 min light r18\n2000m r30 2k\n", encoding="utf-8")
    return path


def test_shorthand_comes_back_in_canonical_form(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["shorthand", str(plan)]) == 0
    assert capsys.readouterr().out == "title: My session\n\nmain\n3' r18 light\n2000m r30 2k\n"


def test_a_timeline_is_listed_for_a_result(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["timeline", str(plan), "--result", "2000m=7:42"]) == 0
    _, first, second = capsys.readouterr().out.splitlines()
    assert first.split()[:5] == ["0:00", "3:00", "18", "54", "2:52.5"]
    assert second.split()[:5] == ["3:00", "7:42", "30", "231", "1:55.5"]


def test_json_is_the_timeline_of_the_api(plan: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["timeline", str(plan), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["segments"][0]["stroke"] == [10, 3]


def test_a_mistake_is_one_sentence_and_status_1(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "plan.txt"
    path.write_text("3' r62 light", encoding="utf-8")
    assert main(["shorthand", str(path)]) == 1
    assert capsys.readouterr().err == "line 1, column 4: rate 62 is above 50 strokes a minute\n"


def test_a_missing_file_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["shorthand", str(tmp_path / "none.txt")]) == 1
    assert "none.txt cannot be read" in capsys.readouterr().err


def test_calls_are_placed_for_the_voice_that_is_asked_for(
    plan: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    plan.write_text("1' r20 light\n  call: one two three four five\n", encoding="utf-8")
    assert main(["timeline", str(plan), "--json", "--words-a-minute", "100"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert document["words_a_minute"] == 100
    assert document["segments"][0]["calls"][0]["seconds"] == 3.0


@pytest.mark.parametrize("words", ["79", "241", "-1", "quick"])
def test_an_impossible_voice_is_refused(plan: Path, words: str) -> None:
    with pytest.raises(SystemExit):
        main(["timeline", str(plan), f"--words-a-minute={words}"])


@pytest.mark.parametrize("result", ["2000=7:42", "2000m=180", "50m=10", "2000m=soon"])
def test_an_impossible_result_is_refused(plan: Path, result: str) -> None:
    with pytest.raises(SystemExit):
        main(["timeline", str(plan), "--result", result])


def test_a_session_is_its_reasons_what_is_said_of_it_and_its_shorthand(
    capsys: pytest.CaptureFixture[str],
) -> None:
    asked = ["session", "2000m", "--warm-up", "15", "--level", "club", "--room", "cold"]
    assert main([*asked, "--result", "2000m=7:42", "--gap", "5:00"]) == 0
    reasons, said, text = capsys.readouterr().out.split("\n\n", 2)
    assert reasons.startswith("reasons\n  ")
    assert said.startswith("readiness and findings\n  You come to the start ")
    plan = read(text)
    assert write(plan) == text
    assert Gap(300) in plan.parts


@pytest.mark.parametrize(
    ("piece", "kind"),
    [
        ("2 km", {"test": {"metres": 2000}}),
        ("30 min r20", {"test": {"seconds": 1800, "rate_cap": 20}}),
        ("6 x 500m / 2:00", {"intervals": {"times": 6, "metres": 500, "rest_seconds": 120}}),
        ("8 x 40 s / 1:00", {"intervals": {"times": 8, "seconds": 40, "rest_seconds": 60}}),
        ("steady 40 min", {"steady": {"seconds": 2400}}),
        ("Technique 20 min", {"technique": {"seconds": 1200}}),
    ],
)
def test_a_piece_is_read_as_a_coach_writes_it(piece: str, kind: dict[str, object]) -> None:
    assert read_piece(piece) == kind


def test_a_session_that_cannot_be_made_is_one_sentence_and_status_1(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["session", "2000m", "--goal", "3:00"]) == 1
    said = capsys.readouterr().err
    assert said.startswith("--goal: ")
    assert "2000 m take from 4:00 to 24:00" in said


def made(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    assert main(["session", *arguments]) == 0
    return capsys.readouterr().out


def test_the_findings_are_those_of_the_check_of_the_same_session(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    options = ["--level", "novice", "--room", "hot", "--result", "2000m=9:00"]
    said, text = made(capsys, "6 x 500m / 2:00", *options).split("\n\n", 2)[1:]
    path = tmp_path / "session.txt"
    path.write_text(text, encoding="utf-8")
    assert main(["check", str(path), *options]) == 0
    checked = capsys.readouterr().out.splitlines()
    assert any("why: " in line for line in checked)
    assert said.splitlines()[1:] == [f"  {line}" for line in checked]


def test_a_mass_tells_the_energy_by_the_tables(capsys: pytest.CaptureFixture[str]) -> None:
    asked = ["2000m", "--result", "2000m=7:42"]
    assert "by the table of 2024" in made(capsys, *asked, "--mass", "75.5")
    assert "by the table" not in made(capsys, *asked)


def test_ones_own_pacing_by_quarters_is_heeded(capsys: pytest.CaptureFixture[str]) -> None:
    text = made(capsys, "2000m", "--result", "2000m=7:42", "--pacing", "own=-2,+1,1.5,-0.5")
    assert [split in text for split in ("@1:53.5", "@1:56.5", "@1:57", "@1:55")] == [True] * 4


def test_leaving_more_of_the_reserve_makes_easier_repetitions(capsys: pytest.CaptureFixture[str]) -> None:
    def asked(percent: str) -> str:
        return made(capsys, "6 x 500m / 2:00", "--result", "2000m=7:42", "--leave", percent)

    assert "leaves about 60 % of your reserve" in asked("60")
    assert asked("60") != asked("5")


@pytest.mark.parametrize(
    ("arguments", "start"),
    [
        (["2000m", "--goal", "8000m"], "--goal: a piece over metres has its goal in time"),
        (["30 min", "--goal", "7:00"], "--goal: a piece on the clock has its goal in metres"),
        (["2000m", "--goal", "0:05"], "--goal: goal 5 is below 10 seconds"),
        (["steady 40 min", "--goal", "7:00"], "--goal: only a test piece has a goal"),
        (["steady 40 min", "--pacing", "even"], "--pacing: only a test piece has a goal and a pacing"),
        (["2000m", "--pacing", "own=1,1,1,1"], "--pacing: the offsets sum to +4 s"),
        (["2000m", "--pacing", "own=1,-1"], "--pacing: own pacing has 2 offsets"),
        (["2000m", "--leave", "20"], "--leave: only an interval set leaves a share of the reserve"),
        (["6 x 500m / 2:00", "--leave", "95"], "--leave: share of the reserve to leave 95 is above 90"),
        (["2000m", "--mass", "-5"], "--mass: mass -5 is below 20 kg"),
        (["2000m", "--warm-up", "40"], "--warm-up: "),
        (["2000m", "--gap", "0:07"], "--gap: gap 7 is not in steps of 5 seconds"),
    ],
)
def test_what_cannot_be_made_is_told_in_the_words_of_the_options(
    arguments: list[str], start: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["session", *arguments]) == 1
    said = capsys.readouterr().err
    assert said.startswith(start)
    assert not re.search(r"goal_|_seconds|_metres|gap_", said)


@pytest.mark.parametrize(
    ("arguments", "remedy"),
    [
        (["session", "7:75"], '"7:75": write 2000m'),
        (["session", "2000m", "--level", "expert"], '"expert": write one of novice, club, trained'),
        (["session", "2000m", "--room", "damp"], '"damp": write one of cold, normal, hot'),
        (["session", "2000m", "--warm-up", "long"], '"long": write a whole number'),
        (["session", "2000m", "--leave", "1.5"], '"1.5": write a whole number'),
        (["session", "2000m", "--mass", "heavy"], '"heavy": write a number, such as 75'),
        (["session", "2000m", "--goal", "7:75"], '"7:75": write a time such as 7:35, or metres'),
        (["session", "2000m", "--pacing", "own=1,x"], '"own=1,x": write even, quick-start, negative'),
        (["session", "2000m", "--gap", "5:75"], '"5:75": write it as 5:00'),
        (["athlete", "--age", "old"], '"old": write a whole number'),
        (["check", "plan.txt", "--level", "expert"], '"expert": write one of novice, club, trained'),
        (["timeline", "plan.txt", "--fit", "loose"], '"loose": write one of clock, rate'),
        (["timeline", "plan.txt", "--rhythm", "odd"], '"odd": write one of '),
        (["hold", "2000m", "1:48"], '"2000m": write "6 x 500m / 2:00"'),
        (["hold", "6 x 500m / 2:00", "quick"], '"quick": write a split such as 1:48.5'),
    ],
)
def test_what_cannot_be_read_is_told_back_with_what_would_do(
    arguments: list[str], remedy: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit):
        main(arguments)
    said = " ".join(capsys.readouterr().err.split())
    assert remedy in said
    assert " invalid " not in said


READERS = (read_gap, read_goal, read_intervals, read_pacing, read_piece, read_target)


@pytest.mark.parametrize("reader", READERS)
@given(st.text("0123456789:.,-+=%xmrks /min owe", max_size=24))
def test_no_text_makes_a_reader_stumble(reader: Callable[[str], object], text: str) -> None:
    """Anything but ArgumentTypeError would have argparse name a function."""
    with suppress(argparse.ArgumentTypeError):
        reader(text)


def test_a_target_that_does_not_hold_is_told_its_place(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["hold", "8 x 500m / 3:00", "1:45", "--result", "2000m=7:42"]) == 0
    sentence, after = capsys.readouterr().out.splitlines()
    assert "the reserve is gone in repetition" in sentence
    assert len(after.removeprefix("reserve in percent after each: ").split()) == 8


def test_a_target_that_holds_is_told_so_and_json_is_the_answer_of_the_api(
    capsys: pytest.CaptureFixture[str],
) -> None:
    asked = ["hold", "8 x 1:00 / 1:00", "95%", "--level", "trained"]
    assert main(asked) == 0
    assert capsys.readouterr().out.startswith("95 % of 2 km power holds to the end")
    assert main([*asked, "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert (document["holds"], document["target"]) == (True, {"two_k_power_fraction": 0.95})


def test_a_target_beyond_anybody_is_one_sentence_and_status_1(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["hold", "8 x 500m / 3:00", "1:05"]) == 1
    assert "beyond the hardest half minute there is" in capsys.readouterr().err


@pytest.mark.parametrize("piece", ["fast", "2000", "6 x 500m", "steady"])
def test_a_piece_that_cannot_be_read_is_refused_with_examples(
    piece: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit):
        main(["session", piece])
    assert "steady 40 min" in " ".join(capsys.readouterr().err.split())


def test_a_week_is_told_by_its_load(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["load", "6x45", "rest", "3x60", "5x40+2.5x40", "rest", "7x60", "2.5x60"]) == 0
    assert capsys.readouterr().out == (
        "effort x minutes: 270  0  180  300  0  420  150\n"
        "week 1320, 188.6 a day\n"
        "monotony 1.21, strain 1600 (sample deviation)\n"
        "monotony 1.31, strain 1728 (population deviation)\n"
    )


def test_a_week_of_six_days_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["load", *["rest"] * 6]) == 1
    assert "6 days are not a week" in capsys.readouterr().err
