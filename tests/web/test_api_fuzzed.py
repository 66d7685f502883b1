"""Requests drawn from the API's own description, good and bad: each is answered as the description says."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import schemathesis
from hypothesis import HealthCheck, assume, settings
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi import checks

from tests.web.conftest import built_by_hand
from web.factory import create_app

PROMISES = [
    not_a_server_error,
    checks.status_code_conformance,
    checks.content_type_conformance,
    checks.response_schema_conformance,
]
# Schemathesis makes its tests while they are collected, before there are fixtures.
_FOLDER = TemporaryDirectory()
SCHEMA: Any = schemathesis.openapi.from_wsgi(
    "/api/openapi.json", create_app(built_by_hand(Path(_FOLDER.name)))
)


@SCHEMA.parametrize()  # type: ignore[untyped-decorator]
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
def test_every_answer_is_one_that_the_description_promises(case: Any) -> None:
    # A click track of whatever length would be held whole here; its own tests look at it.
    assume((case.path_parameters or {}).get("kind") != "wav")
    answer = case.call(headers={"Accept-Encoding": "identity"})
    case.validate_response(answer, checks=PROMISES)
