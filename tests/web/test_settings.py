"""Settings come from the environment, and a bad one is refused before anything starts."""

from __future__ import annotations

import tomllib

import pytest

from web.settings import HELP, ROOT, VERSION, CannotStart, Settings, missing_from, settings_from


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
    read: set[str] = set()

    class Noting(dict[str, str]):
        def get(self, name: str, default: str = "") -> str:  # type: ignore[override]
            read.add(name)
            return default

    settings_from(Noting())
    assert set(HELP) == read
    assert all(0 < len(line) < 100 for line in HELP.values())


def test_the_version_is_that_of_the_project() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    assert project["version"] == VERSION


@pytest.mark.parametrize(
    ("given", "rule"),
    [
        ({}, "open"),
        ({"HOST": "localhost"}, "open"),
        ({"HOST": "::1"}, "open"),
        ({"PUBLIC_URL": "http://localhost:8000"}, "open"),
        ({"HOST": "0.0.0.0"}, "closed"),
        ({"HTTPS": "yes"}, "closed"),
        ({"PROXY": "127.0.0.1"}, "closed"),
        ({"PUBLIC_URL": "https://row.example"}, "closed"),
        ({"HTTPS": "yes", "PUBLIC_URL": "https://row.example", "PUBLISH": "open"}, "open"),
        ({"HOST": "row.example"}, "closed"),
        ({"HOST": "0.0.0.0", "PUBLISH": "Open"}, "open"),
        ({"PUBLISH": "closed"}, "closed"),
        ({"HOST": "0.0.0.0", "PUBLISH_KEY": "sixteen letters!"}, "key"),
    ],
)
def test_publishing_is_open_on_this_machine_alone_unless_it_is_said_otherwise(
    given: dict[str, str], rule: str
) -> None:
    assert settings_from(given).publish == rule


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, ""),
        ({"HTTPS": "yes", "PROXY": "127.0.0.1"}, ""),
        ({"HOST": "0.0.0.0", "PUBLIC_URL": "http://row.example:8000"}, ""),
        ({"PUBLIC_URL": "http://127.0.0.1:8000"}, ""),
        ({"HTTPS": "yes"}, "HTTPS is yes, so people come through a proxy, but PROXY is not set"),
        ({"PUBLIC_URL": "https://row.example"}, "PUBLIC_URL is https://row.example, so people come"),
    ],
)
def test_what_is_missing_beside_a_proxy_is_told(given: dict[str, str], told: str) -> None:
    missing = missing_from(settings_from(given))
    assert missing.startswith(told)
    assert bool(missing) == bool(told)


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"PUBLISH": "everybody"}, 'PUBLISH is "everybody": write open or closed'),
        ({"PUBLISH_KEY": "short"}, "PUBLISH_KEY has 5 characters: give it 16 or more"),
        ({"PUBLISH": "open", "PUBLISH_KEY": "sixteen letters!"}, "give one of the two"),
        ({"PUBLIC_URL": "row.example"}, 'PUBLIC_URL is "row.example": write how people reach the app'),
        ({"PUBLIC_URL": "https://row.example/app"}, "PUBLIC_URL"),
        ({"PUBLIC_URL": "javascript://row.example"}, "PUBLIC_URL"),
    ],
)
def test_a_bad_rule_for_publishing_is_refused(given: dict[str, str], told: str) -> None:
    with pytest.raises(CannotStart, match=told):
        settings_from(given)


def test_everything_is_stored_in_one_folder_unless_another_place_is_given() -> None:
    assert settings_from({"DATA_DIR": "/somewhere"}).database == "sqlite:////somewhere/slipway.db"
    assert settings_from({"DATABASE_URL": "postgresql://row@db/row"}).database == "postgresql://row@db/row"
    assert settings_from({"PUBLIC_URL": "https://row.example/"}).public_url == "https://row.example"
