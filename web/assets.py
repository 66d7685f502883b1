"""The built client: which file is which, and how they are served. Of static/, only they and the icons are."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from flask import Blueprint, Response, abort, request

from web.settings import CannotStart, Settings
from web.stored import ASK_AGAIN, FOR_EVER, Stored, answer

DIST_URL = "/static/dist/"
ICONS_URL = "/static/icons/"
MANIFEST = "assets.json"
ALONE = "alone.html"
FIGURES = "figures"
"""The file with the figures of the font of code, which count on every screen for rowing."""
ENCODINGS = {"br": ".br", "gzip": ".gz"}
TYPES = {
    ".js": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".woff2": "font/woff2",
    ".svg": "image/svg+xml",
    ".png": "image/png",
}
COMPRESSIBLE = (".js", ".css", ".svg")


@dataclass(frozen=True)
class Assets:
    """The built files by hashed name, those names by entry, the icons, the service worker's source, and the
    page of a one-file download without its plan.

    `at_once` names the chunks that entries import as soon as they run.
    """

    entries: dict[str, str]
    at_once: list[str]
    files: dict[str, Stored]
    icons: dict[str, Stored]
    service_worker: str
    alone: str

    def url(self, entry: str) -> str:
        """The address of an entry, such as main.js."""
        return DIST_URL + self.entries[entry]

    @property
    def chunks(self) -> list[str]:
        """The addresses of the scripts that the page needs besides its entry."""
        return [DIST_URL + name for name in self.at_once]

    @property
    def later(self) -> list[str]:
        """The addresses of what nobody needs to row: scripts imported when first shown, the font of code."""
        first = {*self.entries.values(), *self.at_once}
        scripts = [name for name in self.files if name.endswith(".js") and name not in first]
        return [DIST_URL + name for name in (*scripts, *filter(_is_font_of_code, self.files))]

    @property
    def text_fonts(self) -> list[str]:
        """The addresses of the fonts that every screen shows; figures have one of their own."""
        fonts = [name for name in self.files if name.endswith(".woff2")]
        return [DIST_URL + n for n in fonts if not _is_font_of_code(n) and not n.startswith(FIGURES)]


def _is_font_of_code(name: str) -> bool:
    return name.endswith(".woff2") and "-mono-" in name


def load_assets(settings: Settings) -> Assets:
    """The files of the last build, read into memory: they are few and small. Raises CannotStart."""
    manifest = settings.dist / MANIFEST
    if not manifest.exists():
        raise CannotStart(f"the client is not built ({manifest} is missing): run make client")
    listed = json.loads(manifest.read_text(encoding="utf-8"))
    return Assets(
        entries=listed["entries"],
        at_once=listed["at_once"],
        files={name: _stored(settings.dist / name, FOR_EVER) for name in listed["files"]},
        icons={path.name: _stored(path, ASK_AGAIN) for path in sorted(settings.icons.glob("*.*"))},
        service_worker=(settings.dist / listed["service_worker"]).read_text(encoding="utf-8"),
        alone=(settings.dist / listed["alone"]).read_text(encoding="utf-8"),
    )


def _stored(path: Path, cache: str) -> Stored:
    beside = {coding: path.with_name(path.name + suffix) for coding, suffix in ENCODINGS.items()}
    encoded = {coding: file.read_bytes() for coding, file in beside.items() if file.exists()}
    return Stored(path.read_bytes(), TYPES[path.suffix], cache, path.suffix in COMPRESSIBLE, encoded)


def static_files(assets: Assets) -> Blueprint:
    """The two addresses under which files are served: a look into a list, never into a folder."""
    blueprint = Blueprint("static_files", __name__)

    @blueprint.get(f"{DIST_URL}<name>")
    def dist(name: str) -> Response:
        """A built file, kept by browsers for ever: its name changes with its bytes."""
        return answer(assets.files.get(name) or abort(404), request)

    @blueprint.get(f"{ICONS_URL}<name>")
    def icon(name: str) -> Response:
        """An icon."""
        return answer(assets.icons.get(name) or abort(404), request)

    return blueprint
