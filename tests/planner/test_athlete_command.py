"""The command `athlete`: the numbers of the athlete page without a browser."""

from __future__ import annotations

import json

import pytest

from planner.__main__ import main


def said(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    assert main(["athlete", *arguments]) == 0
    return capsys.readouterr().out


def test_two_results_are_predicted_from(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "--result", "2000m=7:42", "--result", "5000m=20:10").splitlines()
    assert lines[4].split() == ["2", "km", "7:42", "1:55.5", "rowed"]
    assert any(line.startswith("critical power 179 ± 10 W (2:05.0, 4.00 m/s)") for line in lines)
    assert any("AT" in line and "2:07.1-2:01.9" in line for line in lines)
    assert lines[-1].startswith("note: Critical power describes efforts of about 2 to 15 minutes: 5000 m")


def test_a_time_may_come_first(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "--result", "30:00=7500m").splitlines()
    assert any(line.split() == ["30", "min", "7500", "m", "2:00.0", "rowed"] for line in lines)


def test_nobody_in_particular_gets_bands(capsys: pytest.CaptureFixture[str]) -> None:
    out = said(capsys)
    assert "UT2" in out
    assert "critical power" not in out
    assert "nan" not in out


def test_an_estimated_heart_rate_is_called_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert "highest heart rate 180 is from age and may be 11 off" in said(capsys, "--age", "40")
    assert "from age" not in said(capsys, "--age", "40", "--heart-rate-max", "190")


def test_json_is_the_answer_of_the_api(capsys: pytest.CaptureFixture[str]) -> None:
    answer = json.loads(said(capsys, "--result", "2000m=7:42", "--level", "trained", "--json"))
    assert answer["two_k"]["split_s"] == 115.5
    race = next(band for band in answer["bands"] if band.get("pressure") == "race")
    assert (race["rate_low"], race["rate_high"]) == (30, 34)


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["--heart-rate-rest", "20"], "resting heart rate 20 is below 25 beats a minute\n"),
        (["--heart-rate-max", "300"], "highest heart rate 300 is above 230 beats a minute\n"),
        (["--age", "2"], "age 2 is below 8 years\n"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(
    capsys: pytest.CaptureFixture[str], arguments: list[str], sentence: str
) -> None:
    assert main(["athlete", *arguments]) == 1
    assert capsys.readouterr().err == sentence


def test_an_impossible_result_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(["athlete", "--result", "2000m=3:00"])
    assert "quicker than anybody rows that far" in capsys.readouterr().err
