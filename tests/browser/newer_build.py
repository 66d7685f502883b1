"""Serves the app as a later build of it: the main script has another name, and the old one is gone."""

from __future__ import annotations

import dataclasses
import json
import os
import shutil
import tempfile
from pathlib import Path

from web.assets import MANIFEST
from web.factory import create_app
from web.serving import serve
from web.settings import settings_from


def later_build(of: Path, to: Path) -> Path:
    """A copy of a build, in which the main script is another one."""
    dist = Path(shutil.copytree(of, to, ignore=shutil.ignore_patterns("*.br", "*.gz")))
    old = json.loads((dist / MANIFEST).read_text())["entries"]["main.js"]
    new = "main-NEWER.js"
    (dist / old).rename(dist / new)
    for path in [dist / MANIFEST, *dist.glob("*.js")]:
        path.write_text(path.read_text().replace(old, new))
    with (dist / new).open("a") as script:
        script.write("\nwindow.isNewerBuild = true;\n")
    return dist


if __name__ == "__main__":
    settings = settings_from(os.environ)
    with tempfile.TemporaryDirectory() as folder:
        settings = dataclasses.replace(settings, dist=later_build(settings.dist, Path(folder) / "dist"))
        serve(create_app(settings), settings)
