"""The same numbers without a browser."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from planner.__main__ import main
from planner.command_line.session import read_piece
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


def test_a_session_is_its_reasons_and_then_its_shorthand(capsys: pytest.CaptureFixture[str]) -> None:
    asked = ["session", "2000m", "--warm-up", "15", "--level", "club", "--room", "cold"]
    assert main([*asked, "--result", "2000m=7:42", "--gap", "5:00"]) == 0
    reasons, text = capsys.readouterr().out.split("\n\n", 1)
    assert reasons.startswith("reasons\n  ")
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
    assert "2000 m take from 4:00 to 24:00" in capsys.readouterr().err


@pytest.mark.parametrize("piece", ["fast", "2000", "6 x 500m", "steady"])
def test_a_piece_that_cannot_be_read_is_refused_with_examples(
    piece: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit):
        main(["session", piece])
    assert "steady 40 min" in " ".join(capsys.readouterr().err.split())
