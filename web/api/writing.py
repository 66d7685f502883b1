"""Writing an answer: compact JSON, in ASCII, that holds no number JSON does not know."""

from __future__ import annotations

import json

JSON = "application/json"


def json_bytes(document: object) -> bytes:
    """A document as JSON. Raises ValueError rather than write NaN or infinity."""
    return json.dumps(document, separators=(",", ":"), allow_nan=False).encode("ascii")
