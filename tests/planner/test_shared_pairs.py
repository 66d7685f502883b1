"""The compiled pairs that the client is held to are what the planner compiles today."""

from __future__ import annotations

import pytest

from tests.shared.pairs import FOLDER, RESULTS, TEXTS, text_of


@pytest.mark.parametrize("name", TEXTS)
def test_a_pair_is_what_is_compiled(name: str) -> None:
    assert (FOLDER / f"{name}.json").read_text(encoding="utf-8") == text_of(name)


def test_no_pair_is_left_over() -> None:
    assert {path.stem for path in FOLDER.glob("*.json")} == TEXTS.keys() == RESULTS.keys()
