"""The figures in a file of their own: all of them, and what the styles say of it."""

from __future__ import annotations

import re
from pathlib import Path

from fontTools.subset import parse_unicodes
from fontTools.ttLib import TTFont

from web.build import FIGURES_FROM
from web.figures_font import FIGURES, write_figures
from web.settings import ROOT

FIGURES_ON_SCREENS = set("0123456789:.,+/%r ms½×–−")


def outline(font: TTFont, glyph: str) -> list[tuple[int, int]]:
    return list(font["glyf"][glyph].getCoordinates(font["glyf"])[0])


def test_figures_are_drawn_as_in_the_whole_font_and_their_file_is_the_same_each_time(tmp_path: Path) -> None:
    for name in ("a.woff2", "b.woff2"):
        write_figures(FIGURES_FROM, tmp_path / name)
    assert (tmp_path / "a.woff2").read_bytes() == (tmp_path / "b.woff2").read_bytes()
    few, whole = TTFont(tmp_path / "a.woff2"), TTFont(FIGURES_FROM)
    assert set(map(ord, FIGURES_ON_SCREENS)) <= set(few.getBestCmap())
    for code, glyph in few.getBestCmap().items():
        other = whole.getBestCmap()[code]
        assert few["hmtx"][glyph] == whole["hmtx"][other]
        assert (
            few["glyf"][glyph].getCoordinates(few["glyf"])[0]
            == whole["glyf"][other].getCoordinates(whole["glyf"])[0]
        )


def test_the_styles_ask_for_the_figures_and_leave_letters_to_the_whole_font() -> None:
    styles = (ROOT / "static" / "styles" / "app.css").read_text()
    (said,) = re.findall(r"unicode-range: ([^;]+);", styles)
    assert parse_unicodes(said) == parse_unicodes(FIGURES)
