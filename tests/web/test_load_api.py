"""POST /api/load: the load of a week, answered and forgotten."""

from __future__ import annotations

import pytest
from flask.testing import FlaskClient

from tests.web.asking import post, problem_of


def day(*sessions: tuple[float, int]) -> list[dict[str, float]]:
    return [{"cr10": cr10, "minutes": minutes} for cr10, minutes in sessions]


def test_a_week_has_its_daily_loads_and_how_even_it_was(client: FlaskClient) -> None:
    """Effort 6 for 45 min is 270; monotony 1.21 by the sample deviation, 1.31 by the population's: recomputed
    by hand from Foster's definitions [=]."""
    days = [day((6, 45)), [], day((3, 60)), day((5, 40), (2.5, 40)), [], day((7, 60)), day((2.5, 60))]
    answer = post(client, "/api/load", {"days": days})
    assert answer.status_code == 200
    assert answer.headers["Cache-Control"] == "no-store"
    assert answer.get_json() == {
        "daily": [270, 0, 180, 300, 0, 420, 150],
        "total": 1320,
        "mean": 188.6,
        "evenness": [
            {"deviation": "sample", "monotony": 1.21, "strain": 1600},
            {"deviation": "population", "monotony": 1.31, "strain": 1728},
        ],
    }


@pytest.mark.parametrize(
    ("days", "pointer", "sentence"),
    [
        ([[]] * 6, "/days", "6 days are not a week: give 7, a day of rest as 0"),
        ([day((11, 45)), *[[]] * 6], "/days/0/0/cr10", "effort on the 0 to 10 scale 11 is above 10"),
        ([[], day((5, 0)), *[[]] * 5], "/days/1/0/minutes", "length of the session 0 is below 1 minute"),
    ],
)
def test_a_week_that_cannot_be_is_refused_by_its_place(
    client: FlaskClient, days: object, pointer: str, sentence: str
) -> None:
    document = problem_of(post(client, "/api/load", {"days": days}))
    assert document["problems"] == [{"pointer": pointer, "sentence": sentence}]
