"""The plan on one page, for the wall: HTML that stands by itself, black and white, with a style for paper.

It holds no script, and its policy lets none in; the one style is let in by its digest.
"""

from __future__ import annotations

import base64
import hashlib
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from planner.athlete import Athlete
from planner.timeline import Timeline
from web.exports.sheet import Sheet, legend_of, sheet_of
from web.exports.sheet_fit import POINTS, deepest, digits_wide, fit_of
from web.exports.words import held_together

TEMPLATES = Path(__file__).resolve().parents[2] / "templates" / "print"


def print_sheet(timeline: Timeline, athlete: Athlete | None = None) -> bytes:
    """The whole page in UTF-8; `athlete` is whose splits it shows, if anybody's."""
    sheet = sheet_of(timeline, athlete)
    style, fit = _style() + _columns(sheet), fit_of(sheet)
    page = (
        _environment()
        .get_template("sheet.html")
        .render(
            sheet=sheet,
            legend=" ".join(legend_of(sheet)),
            style=Markup(style),
            policy=_policy(style),
            size=f"p{fit.points}",
            columns="two" if fit.columns == 2 else "one",
            one_page=fit.one_page,
        )
    )
    return page.encode()


@cache
def _environment() -> Environment:
    made = Environment(loader=FileSystemLoader(TEMPLATES), autoescape=True, undefined=StrictUndefined)
    made.filters["held_together"] = held_together
    return made


@cache
def _style() -> str:
    sizes = "".join(f".p{points} .parts{{font-size:{points}pt}}\n" for points in POINTS)
    return (TEMPLATES / "sheet.css").read_text(encoding="utf-8") + sizes


def _columns(sheet: Sheet) -> str:
    """Every part has its columns in the same places."""
    beside_em = {"length": 0.4 * deepest(sheet) + 0.5, "rate": 0.4, "split": 0.4, "strokes": 0.0}
    return "".join(
        f".{name}{{min-width:calc({digits:.2f}ch + {beside_em[name]:.1f}em)}}\n"
        for name, digits in digits_wide(sheet).items()
    )


def _policy(style: str) -> str:
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    return f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
