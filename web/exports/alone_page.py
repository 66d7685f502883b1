"""One file that holds player and plan: opened from storage, it runs a session with no server and no network.

The build puts the page together with two places left open; a download fills them. Its policy lets in the one
style and the one script by their digests, and nothing else that runs.
"""

from __future__ import annotations

import base64
import hashlib
import html
import json
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from planner.athlete import Athlete
from planner.schemas.athlete_answer import dump_standing
from planner.schemas.fields import number
from planner.schemas.plan_schema import dump_plan
from planner.schemas.timeline_schema import dump_timeline
from planner.standing import standing_of
from planner.timeline import Timeline

TITLE_PLACE, PLAN_PLACE = "%SLIPWAY-TITLE%", "%SLIPWAY-PLAN%"
TEMPLATES = Path(__file__).resolve().parents[2] / "templates"
NOT_INSIDE = ("</script", "<!--", "</style", "<script")
"""What would end a script or a style, or hide its end (HTML standard, 4.12.1.3)."""

POLICY = {
    "default-src": "'none'",
    "script-src": "'sha256-{script}'",
    "style-src": "'sha256-{style}'",
    "font-src": "data:",
    "img-src": "data:",
    "media-src": "data: blob:",
    "worker-src": "data:",
    "base-uri": "'none'",
    "form-action": "'none'",
    "require-trusted-types-for": "'script'",
    "trusted-types": "lit-html slipway",
}


def composed(style: str, script: str) -> str:
    """The page without a plan. Raises ValueError for what would not stay inside its style or script."""
    for text in (style, script):
        if found := [sign for sign in NOT_INSIDE if sign in text.lower()]:
            raise ValueError(f"the one-file page cannot hold {found[0]!r} in its style or script")
    policy = "; ".join(f"{name} {value}" for name, value in POLICY.items())
    environment = Environment(loader=FileSystemLoader(TEMPLATES), autoescape=True, undefined=StrictUndefined)
    return environment.get_template("alone.html").render(
        policy=Markup(policy.format(script=_digest(script), style=_digest(style))),
        style=Markup(style),
        script=Markup(script),
        title_place=Markup(TITLE_PLACE),
        plan_place=Markup(PLAN_PLACE),
    )


def _digest(text: str) -> str:
    return base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()


def alone_page(page: str, for_anybody: Timeline, athlete: Athlete | None) -> bytes:
    """The page with a plan in it, in UTF-8; `athlete` is whose splits it shows, if anybody's."""
    before, _, rest = page.partition(TITLE_PLACE)
    between, _, after = rest.partition(PLAN_PLACE)
    title = html.escape(f"{for_anybody.plan.title} · Slipway")
    return f"{before}{title}{between}{_block(for_anybody, athlete)}{after}".encode()


def _block(for_anybody: Timeline, athlete: Athlete | None) -> str:
    """JSON that nothing can be read out of but JSON: in ASCII, and without any sign of markup."""
    document: dict[str, object] = {
        "plan": dump_plan(for_anybody.plan),
        "timeline": dump_timeline(for_anybody),
        **(_person(athlete) if athlete and athlete.results else {}),
    }
    document["id"] = hashlib.sha256(json.dumps(document).encode()).hexdigest()[:16]
    text = json.dumps(document, separators=(",", ":"), allow_nan=False)
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")


def _person(athlete: Athlete) -> dict[str, object]:
    """Results and level, and what follows from them; no more about a person than splits need."""
    known = Athlete(athlete.results, level=athlete.level)
    results = [{"metres": r.metres, "seconds": number(r.seconds)} for r in known.results]
    return {
        "athlete": {"results": results, "level": known.level.value},
        "answer": dump_standing(standing_of(known)),
    }
