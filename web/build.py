"""Builds the client: one esbuild run for each kind of code, by way of Flask-Assets, into static/dist.

`python -m web.build` ends with status 1 when anything fails. The row screen, and whatever leads to it, is in
the main bundle without lazy imports, so that nothing has to be fetched while somebody rows. What nobody needs
to row comes in chunks of its own, imported when it is first shown; phones keep them after all the rest.
"""

from __future__ import annotations

import base64
import gzip
import json
import shutil
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, TextIO

import brotli
from flask import Flask
from flask_assets import Bundle, Environment
from webassets.filter import Filter

from web.assets import ALONE, COMPRESSIBLE, DIST_URL, ENCODINGS, FIGURES, MANIFEST
from web.exports.alone_page import composed
from web.figures_font import write_figures
from web.settings import ROOT, Settings

ESBUILD = ROOT / "node_modules" / ".bin" / "esbuild"
TICKER = "src/audio/ticker-worker.ts"
FIRST_PAINT = "src/first-paint.ts"
SERVICE_WORKER = "src/offline/service-worker.ts"
FIGURES_FROM = (
    ROOT
    / "node_modules/@fontsource/atkinson-hyperlegible-mono/files"
    / "atkinson-hyperlegible-mono-latin-700-normal.woff2"
)
PAGE = ("src/main.ts", "styles/app.css")
ONE_FILE = ("src/alone.ts", "styles/app.css")
# The least browsers, which DEVELOPERS.md names with what they are needed for.
TARGET = "es2022,chrome111,firefox121,safari16.4"
COMMON = [
    "--bundle",
    "--minify",
    f"--target={TARGET}",
    "--loader:.woff2=file",
    "--asset-names=[name]-[hash]",
    '--define:process.env.NODE_ENV="production"',
    "--log-level=warning",
    "--log-override:css-syntax-error=error",
    "--color=false",
]


class BuildError(RuntimeError):
    """The client cannot be built; holds what the bundler said."""


class EsbuildFilter(Filter):
    """Bundles all entries at once; what webassets keeps as its output is the list of what came out."""

    name = "esbuild"  # type: ignore[assignment]
    max_debug_level = None  # type: ignore[assignment]

    def __init__(self, sources: Path, dist: Path) -> None:
        super().__init__()  # type: ignore[no-untyped-call]
        self.sources, self.dist = sources, dist

    def concat(self, out: TextIO, hunks: Any, **_: Any) -> None:
        """Write the files into the folder and their list into `out`."""
        out.write(json.dumps(bundle(self.sources, self.dist), indent=2))


def bundle(sources: Path, dist: Path) -> dict[str, Any]:
    """Bundle the client in `sources` into `dist`; the names of what came out. Raises BuildError."""
    worker, _ = _esbuild(sources, dist, [SERVICE_WORKER], "--format=iife", "--entry-names=[name]")
    small, _ = _esbuild(sources, dist, [FIRST_PAINT, TICKER], "--format=iife", "--entry-names=[name]-[hash]")
    ticker_url = json.dumps(DIST_URL + small["ticker-worker.js"])
    with TemporaryDirectory() as folder:
        figures = Path(folder) / f"{FIGURES}.woff2"
        write_figures(FIGURES_FROM, figures)
        fonts = f"--alias:{figures.name}={figures}"
        page, at_once = _esbuild(
            sources,
            dist,
            PAGE,
            "--format=esm",
            "--splitting",
            "--entry-names=[name]-[hash]",
            "--chunk-names=[name]-[hash]",
            f"--define:TICKER_WORKER_URL={ticker_url}",
            fonts,
        )
        alone = _one_file(sources, dist, dist / small["ticker-worker.js"], fonts)
    entries = {**page, **small}
    names = sorted(path.name for path in dist.iterdir() if path.name not in {*worker.values(), alone})
    return {
        "entries": entries,
        "at_once": at_once,
        "files": names,
        "service_worker": worker["service-worker.js"],
        "alone": alone,
    }


def _one_file(sources: Path, dist: Path, ticker: Path, fonts: str) -> str:
    """Write the page that holds everything, all but a plan; its name. Nothing in it has an address."""
    ticker_url = f"data:text/javascript;base64,{base64.b64encode(ticker.read_bytes()).decode()}"
    with TemporaryDirectory(dir=dist) as folder:
        parts = Path(folder)
        define = f"--define:TICKER_WORKER_URL={json.dumps(ticker_url)}"
        inlined = ("--format=esm", "--loader:.woff2=dataurl", "--entry-names=[name]", define, fonts)
        names, _ = _esbuild(sources, parts, ONE_FILE, *inlined)
        script = (parts / names["alone.js"]).read_text(encoding="utf-8")
        style = (parts / names["app.css"]).read_text(encoding="utf-8")
    try:
        (dist / ALONE).write_text(composed(style, script), encoding="utf-8")
    except ValueError as error:
        raise BuildError(str(error)) from None
    return ALONE


def _esbuild(
    sources: Path, dist: Path, entries: tuple[str, ...] | list[str], *options: str
) -> tuple[dict[str, str], list[str]]:
    """The output's name by the entry's name, such as main.js; and the chunks that entries import at once."""
    meta = dist / "meta.json"
    command = [str(ESBUILD), *entries, *COMMON, *options, f"--outdir={dist}", f"--metafile={meta}"]
    done = subprocess.run(command, cwd=sources, capture_output=True, text=True, check=False)
    if done.returncode or done.stderr:
        # Where Node starts esbuild, its own report of that failure follows esbuild's words.
        said = done.stderr.partition("\nnode:")[0].strip()
        raise BuildError(said or f"esbuild ended with status {done.returncode}")
    outputs = json.loads(meta.read_text(encoding="utf-8"))["outputs"]
    meta.unlink()
    made = {
        output["entryPoint"]: Path(path)
        for path, output in outputs.items()
        if output.get("entryPoint") in entries
    }
    at_once = _needed_by(map(str, made.values()), outputs) - {str(path) for path in made.values()}
    names = {Path(entry).stem + path.suffix: path.name for entry, path in made.items()}
    return names, sorted(Path(path).name for path in at_once)


def _needed_by(paths: Iterable[str], outputs: dict[str, Any]) -> set[str]:
    """These outputs, and all that they and those they need import as soon as they run."""
    found: set[str] = set()
    waiting = list(paths)
    while waiting:
        path = waiting.pop()
        if path not in found:
            found.add(path)
            waiting += [i["path"] for i in outputs[path]["imports"] if i["kind"] == "import-statement"]
    return found


def build(settings: Settings, sources: Path = ROOT / "static") -> dict[str, int]:
    """Build into a folder beside the real one and then swap them; bytes over the wire by file name."""
    making = settings.dist.with_name(settings.dist.name + ".making")
    shutil.rmtree(making, ignore_errors=True)
    making.mkdir(parents=True)
    try:
        _run_flask_assets(sources, making)
        sizes = {path.name: _compress(path) for path in _for_the_app(making)}
        shutil.rmtree(settings.dist, ignore_errors=True)
        making.rename(settings.dist)
    finally:
        shutil.rmtree(making, ignore_errors=True)
    return sizes


def _for_the_app(made: Path) -> list[Path]:
    """What goes over the wire to the app; not its list, nor the page that downloads are made from."""
    return [path for path in sorted(made.iterdir()) if path.name not in (MANIFEST, ALONE)]


def _run_flask_assets(sources: Path, dist: Path) -> None:
    app = Flask(__name__, static_folder=str(sources))
    app.config.update(ASSETS_CACHE=False, ASSETS_MANIFEST=False, ASSETS_URL_EXPIRE=False, ASSETS_DEBUG=False)
    environment = Environment(app)
    environment.directory = str(dist)
    environment.append_path(str(sources))
    client = Bundle(
        *PAGE, FIRST_PAINT, SERVICE_WORKER, TICKER, filters=EsbuildFilter(sources, dist), output=MANIFEST
    )
    with app.app_context():
        environment.register("client", client)
        client.build(force=True)


def _compress(path: Path) -> int:
    """Write the compressed forms beside a file of text; bytes over the wire of the smallest form."""
    body = path.read_bytes()
    if path.suffix not in COMPRESSIBLE:
        return len(body)
    forms = {"br": bytes(brotli.compress(body, quality=11)), "gzip": gzip.compress(body, 9, mtime=0)}
    for coding, form in forms.items():
        path.with_name(path.name + ENCODINGS[coding]).write_bytes(form)
    return min(map(len, forms.values()))


def main() -> int:
    """Build, and say what came out; 1 when it failed."""
    try:
        sizes = build(Settings())
    except BuildError as error:
        print(f"The client cannot be built:\n{error}", file=sys.stderr)
        return 1
    for name, size in sizes.items():
        print(f"  {size / 1000:7.1f} kB  {name}")
    print(f"  {sum(sizes.values()) / 1000:7.1f} kB  over the wire in all")
    return 0


if __name__ == "__main__":
    sys.exit(main())
