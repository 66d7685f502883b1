"""The phone writes shorthand as the planner does: both are held to one list."""

from __future__ import annotations

from tests.shared import texts


def test_the_kept_texts_are_what_the_planner_writes() -> None:
    """When this fails: python -m tests.shared.texts, and look at the change first."""
    assert list(texts.texts()) == texts.kept()
