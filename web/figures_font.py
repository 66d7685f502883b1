"""The figures of a font in a file of their own: they are always on screen, other letters now and then."""

from __future__ import annotations

from pathlib import Path

from fontTools import subset

FIGURES = "U+20-3A, U+6D, U+72, U+73, U+A0, U+BD, U+D7, U+2013, U+2212"
"""Digits, signs and the letters of units, as style sheets write a range (CSS Fonts 4, 4.5)."""


def write_figures(font: Path, into: Path) -> None:
    """Write the figures of a font (WOFF2) into another file; the same bytes each time."""
    options = subset.Options(flavor="woff2")
    with subset.load_font(font, options) as whole:
        subsetter = subset.Subsetter(options)
        subsetter.populate(unicodes=subset.parse_unicodes(FIGURES))
        subsetter.subset(whole)
        subset.save_font(whole, into, options)
