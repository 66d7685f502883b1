"""The client's wire types are those of the API as it is now."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

from web.api.document import api_document
from web.settings import ROOT

WIRE = ROOT / "static" / "src" / "plan" / "wire.ts"
TOOL = ROOT / "node_modules" / ".bin" / "openapi-typescript"


def test_the_types_in_the_tree_are_what_the_description_gives(tmp_path: Path) -> None:
    """When this fails: make wire."""
    description, types = tmp_path / "openapi.json", tmp_path / "wire.ts"
    description.write_text(json.dumps(api_document(), indent=2, sort_keys=True))
    options = ["--output", str(types), "--root-types", "--root-types-no-schema-prefix"]
    subprocess.run([TOOL, description, *options], check=True, capture_output=True)
    assert types.read_text() == WIRE.read_text()
