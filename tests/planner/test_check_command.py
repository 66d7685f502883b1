"""The command `check`, and plan files in YAML on the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from planner.__main__ import main

PLANS = Path(__file__).resolve().parents[2] / "plans"
RACE = "main\n5 x 500m r30 2k / 2' rest\n"


@pytest.fixture
def race(tmp_path: Path) -> Path:
    path = tmp_path / "race.txt"
    path.write_text(RACE, encoding="utf-8")
    return path


def test_findings_are_listed_with_their_reason_and_their_mend(
    race: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", str(race)]) == 0
    first, why, mend = capsys.readouterr().out.splitlines()
    assert first == "advice: Nothing is rowed before 500m r30 2k, and it is hard from the first stroke."
    assert why.startswith("  why: Muscles take three to five minutes")
    assert mend == "  mend: Put a short warm-up before it"


def test_level_room_and_result_count(race: Path, capsys: pytest.CaptureFixture[str]) -> None:
    options = ["--level", "novice", "--room", "hot", "--result", "100m=0:18", "--json"]
    assert main(["check", str(race), *options]) == 0
    codes = {finding["code"] for finding in json.loads(capsys.readouterr().out)["findings"]}
    assert {"no-warm-up", "novice-maximal", "heat", "prediction-out-of-range"} <= codes


def test_a_built_in_plan_is_read_with_its_readiness_and_nothing_is_found(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["check", str(PLANS / "two-kilometre-test.yaml")]) == 0
    ready, nothing = capsys.readouterr().out.splitlines()
    assert ready.startswith("You come to the start")
    assert nothing == "Nothing was found that would need a second look."


def test_json_holds_what_the_api_answers_beside_the_timeline(capsys: pytest.CaptureFixture[str]) -> None:
    path = str(PLANS / "ten-minutes-before-2k.yaml")
    assert main(["check", path, "--json"]) == 0
    checked = json.loads(capsys.readouterr().out)
    assert main(["timeline", path, "--json"]) == 0
    timeline = json.loads(capsys.readouterr().out)
    assert checked == {name: timeline[name] for name in ("readiness", "findings")}
    assert checked["readiness"]["gap_s"] == 300


@pytest.mark.parametrize("command", ["check", "timeline", "shorthand"])
def test_a_damaged_plan_file_is_one_sentence_with_its_line(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "plan.yaml"
    path.write_text("title: A\nkind: b\nsummary: c\nparts:\n  - main: |\n      3' r62 light\n")
    assert main([command, str(path)]) == 1
    assert capsys.readouterr().err == "line 6: rate 62 is above 50 strokes a minute\n"


def test_a_plan_file_comes_back_as_shorthand(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert main(["shorthand", str(PLANS / "way-down.yaml")]) == 0
    text = capsys.readouterr().out
    again = tmp_path / "again.txt"
    again.write_text(text, encoding="utf-8")
    assert main(["shorthand", str(again)]) == 0
    assert capsys.readouterr().out == text


@pytest.mark.parametrize("content", [b"\xff\xfe", b"main\n3' r62 light"])
def test_what_cannot_be_read_is_status_1(
    content: bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "plan.txt"
    path.write_bytes(content)
    assert main(["check", str(path)]) == 1
    assert capsys.readouterr().err
