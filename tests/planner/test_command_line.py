"""The same numbers without a browser."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from planner.__main__ import main


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
