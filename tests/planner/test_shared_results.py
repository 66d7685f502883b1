"""The results at the edges that the client is held to are those that the planner takes today."""

from __future__ import annotations

from tests.shared import results_kept


def test_the_kept_edges_are_what_the_planner_takes() -> None:
    assert results_kept.FILE.read_text(encoding="utf-8") == results_kept.text()
