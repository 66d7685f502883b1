"""The build: hashed names, nothing left behind when it fails, and an exit that tells."""

from __future__ import annotations

import gzip
import json
import re
from pathlib import Path

import brotli
import pytest

from web import build as building
from web.assets import load_assets
from web.build import BuildError, build
from web.settings import Settings

CLIENT = {
    "src/main.ts": 'import { word } from "./word.js";\ndocument.title = word + TICKER_WORKER_URL;\n',
    "src/alone.ts": 'import { word } from "./word.js";\ndocument.title = word + TICKER_WORKER_URL;\n',
    "src/word.ts": 'export const word: string = "rowing";\n',
    "src/first-paint.ts": 'document.title = "first";\n',
    "src/audio/ticker-worker.ts": "self.onmessage = () => self.postMessage(1);\n",
    "src/offline/service-worker.ts": "console.log(self.__SLIPWAY_PRECACHE);\n",
    "styles/app.css": '@import "./base.css";\n',
    "styles/base.css": (
        'body { & p { color: oklch(0.5 0.1 250) } }\n@font-face { font-family: A; src: url("./a.woff2") }\n'
    ),
    "styles/a.woff2": "a font",
}


@pytest.fixture
def sources(tmp_path: Path) -> Path:
    """A small client of our own."""
    for name, text in CLIENT.items():
        path = tmp_path / "client" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    return tmp_path / "client"


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """Where the build goes."""
    return Settings(dist=tmp_path / "dist")


def test_it_gives_hashed_files_that_the_app_can_load(sources: Path, settings: Settings) -> None:
    build(settings, sources)
    assets = load_assets(settings)
    assert set(assets.entries) == {"main.js", "app.css", "first-paint.js", "ticker-worker.js"}
    assert set(assets.files) >= set(assets.entries.values())
    assert all(re.fullmatch(r"[a-z-]+-[A-Z0-9]{8}\.(js|css|woff2)", name) for name in assets.files)


def scripts(settings: Settings) -> list[str]:
    """The names of the built scripts, without their hashes."""
    names = [name for name in load_assets(settings).files if name.endswith(".js")]
    return sorted(name.rpartition("-")[0] for name in names)


def test_the_page_is_one_bundle(sources: Path, settings: Settings) -> None:
    build(settings, sources)
    assert scripts(settings) == ["first-paint", "main", "ticker-worker"]
    assert load_assets(settings).chunks == []


def test_what_is_imported_later_is_a_file_of_its_own_and_what_both_need_is_loaded_at_once(
    sources: Path, settings: Settings
) -> None:
    (sources / "src" / "later.ts").write_text('import { word } from "./word.js";\nconsole.log(word);\n')
    main = sources / "src" / "main.ts"
    main.write_text(main.read_text() + 'void import("./later.js");\n')
    build(settings, sources)
    assert scripts(settings) == ["chunk", "first-paint", "later", "main", "ticker-worker"]
    assert [Path(address).name.partition("-")[0] for address in load_assets(settings).chunks] == ["chunk"]


def test_the_page_knows_where_its_worker_is(sources: Path, settings: Settings) -> None:
    build(settings, sources)
    assets = load_assets(settings)
    assert assets.url("ticker-worker.js").encode() in assets.files[assets.entries["main.js"]].body


def test_fonts_get_hashed_names_which_the_styles_use(sources: Path, settings: Settings) -> None:
    build(settings, sources)
    assets = load_assets(settings)
    (font,) = assets.text_fonts
    assert Path(font).name in assets.files[assets.entries["app.css"]].body.decode()


def test_the_service_worker_is_not_among_the_files_and_still_asks_for_its_list(
    sources: Path, settings: Settings
) -> None:
    build(settings, sources)
    assets = load_assets(settings)
    assert "self.__SLIPWAY_PRECACHE" in assets.service_worker
    assert not [name for name in assets.files if "service" in name]


def test_compressed_forms_lie_beside_each_file_of_text(sources: Path, settings: Settings) -> None:
    build(settings, sources)
    for path in settings.dist.glob("*-*.js"):
        assert brotli.decompress(path.with_name(path.name + ".br").read_bytes()) == path.read_bytes()
        assert gzip.decompress(path.with_name(path.name + ".gz").read_bytes()) == path.read_bytes()


def test_the_same_sources_give_the_same_bytes(sources: Path, settings: Settings) -> None:
    build(settings, sources)
    first = {path.name: path.read_bytes() for path in settings.dist.iterdir()}
    build(settings, sources)
    assert {path.name: path.read_bytes() for path in settings.dist.iterdir()} == first


def test_a_change_gives_another_name(sources: Path, settings: Settings) -> None:
    build(settings, sources)
    before = load_assets(settings).entries["main.js"]
    (sources / "src" / "word.ts").write_text('export const word = "sculling";\n')
    build(settings, sources)
    assert load_assets(settings).entries["main.js"] != before


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("src/main.ts", "import './gone.js';", "Could not resolve"),
        ("src/main.ts", "const a = ;", "Unexpected"),
        ("src/offline/service-worker.ts", "const a = ;", "Unexpected"),
        ("src/audio/ticker-worker.ts", "const a = ;", "Unexpected"),
        ("styles/base.css", "body { color: }}", "Unexpected"),
        ("styles/base.css", '@font-face { src: url("./gone.woff2") }', "Could not resolve"),
    ],
)
def test_a_mistake_fails_it_and_leaves_the_last_build_in_place(
    sources: Path, settings: Settings, name: str, text: str, said: str
) -> None:
    build(settings, sources)
    before = {path.name for path in settings.dist.iterdir()}
    (sources / name).write_text(text)
    with pytest.raises(BuildError, match=said):
        build(settings, sources)
    assert {path.name for path in settings.dist.parent.iterdir()} == {"client", "dist"}
    assert {path.name for path in settings.dist.iterdir()} == before


def test_a_mistake_ends_the_command_with_status_1(
    sources: Path, settings: Settings, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def failing(_: Settings) -> dict[str, int]:
        raise BuildError("src/main.ts:1:1: what esbuild said")

    monkeypatch.setattr(building, "build", failing)
    assert building.main() == 1
    assert "what esbuild said" in capsys.readouterr().err


def test_it_reports_the_bytes_over_the_wire(sources: Path, settings: Settings) -> None:
    sizes = build(settings, sources)
    main = json.loads((settings.dist / "assets.json").read_text())["entries"]["main.js"]
    assert sizes[main] == (settings.dist / f"{main}.br").stat().st_size
