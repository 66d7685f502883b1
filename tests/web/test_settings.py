"""Settings come from the environment, and a bad one is refused before anything starts."""

from __future__ import annotations

import tomllib

import pytest

from web.settings import HELP, ROOT, VERSION, CannotStart, Settings, settings_from


def test_an_empty_environment_gives_the_defaults() -> None:
    settings = settings_from({})
    assert (settings.host, settings.port, settings.https) == ("127.0.0.1", 8000, False)


def test_the_environment_moves_the_address() -> None:
    settings = settings_from({"HOST": "0.0.0.0", "PORT": "9000", "HTTPS": "yes"})
    assert (settings.host, settings.port, settings.https) == ("0.0.0.0", 9000, True)


def test_empty_settings_count_as_not_given() -> None:
    assert settings_from({"HOST": "", "PORT": " ", "HTTPS": ""}) == Settings()


@pytest.mark.parametrize("port", ["0", "65536", "-1", "80.5", "eighty", "\u0661\u0662", "1e3", "123456789"])
def test_a_port_that_is_none_is_refused(port: str) -> None:
    with pytest.raises(CannotStart, match=f'PORT is "{port}": write a number from 1 to 65535'):
        settings_from({"PORT": port})


def test_https_is_yes_or_no() -> None:
    with pytest.raises(CannotStart, match='HTTPS is "maybe": write yes or no'):
        settings_from({"HTTPS": "maybe"})


def test_every_setting_has_one_line_of_help() -> None:
    assert set(HELP) == {"HOST", "PORT", "HTTPS"}
    assert all(0 < len(line) < 100 for line in HELP.values())


def test_the_version_is_that_of_the_project() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    assert project["version"] == VERSION
