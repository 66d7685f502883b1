"""What the screen has to show at a moment of a session by the model, and what it shows, both as words."""

from __future__ import annotations

import copy
from fractions import Fraction
from math import ceil, floor
from typing import Any

from tests.browser.engines import Browser
from tests.browser.targets import QUERY
from tests.chaos.model import Block, Going, Held, Over, Session

PART_NAMES = {"warm-up": "Warm-up", "main": "Main piece", "cool-down": "Cool-down"}
BLUR = Fraction(1, 20)
"""Clocks are read to the millisecond and rounded: so near to a change, either side of it is right."""

SHOWN = f"""() => {{
  const query = {QUERY};
  const line = (found) => query.visibleText(found).replaceAll("\\n", " ").trim();
  const text = (css) => query.find({{ css }}).map(line).join(" ").trim();
  const screens = ["row", "gap", "end"].map((name) => `${{name}}-screen`);
  const screen = [...screens, "other-tab", "session-before", "unsound-session"]
    .find((name) => query.find({{ css: name }}).length);
  return {{
    screen, asks: text("dialog[open] h2"), heading: text("h1:not(.heard-only)"), where: text(".where"),
    big: text(".time .digits, .time.digits"), strokes: text(".strokes"), count: text(".count > .digits"),
    held: query.find({{ role: "button", name: "Go on" }}).length > 0,
    rowed: text("dl div:first-child dd"), kept: text("saved-mark"),
  }};
}}"""


def shown(browser: Browser) -> dict[str, Any]:
    """What the screen shows, in the terms of `faces`, and more beside."""
    told = browser.wait_for(f"() => {{ const told = ({SHOWN})(); return told.screen ? told : null; }}")
    return dict(told)


def agrees(face: dict[str, Any], wanted: dict[str, Any]) -> bool:
    """Whether what is shown is what is wanted."""
    return all(face[key] == value for key, value in wanted.items())


def rounded(seconds: Fraction) -> int:
    """The nearest whole second, a tie up."""
    return floor(seconds + Fraction(1, 2))


def faces(session: Session, now: Fraction) -> list[dict[str, Any]]:
    """What may be on the screen at a moment: more than one only where something changes within a blink."""
    found: list[dict[str, Any]] = []
    for moment in (now - BLUR, now, now + BLUR):
        then = copy.deepcopy(session)
        moment = max(moment, then.last)
        then.to(moment)
        face = _face(then, moment)
        if face not in found:
            found.append(face)
    return found


def clock(seconds: int) -> str:
    """A length of time as people read it: 0:30, 7:42, 1:05:00."""
    hours, minutes = divmod(seconds // 60, 60)
    return f"{hours}:{minutes:02}:{seconds % 60:02}" if hours else f"{minutes}:{seconds % 60:02}"


def _face(session: Session, now: Fraction) -> dict[str, Any]:
    state = session.state
    if isinstance(state, Over):
        return {"screen": "end-screen", "heading": "Rowed to the end" if session.whole else "Ended here"}
    block = session.blocks[state.index]
    held = isinstance(state, Held)
    counting = isinstance(state, Going) and now < state.begins
    elapsed = state.elapsed if isinstance(state, Held) else state.elapsed(now)
    if block.kind == "gap" and not counting:
        big = clock(max(0, ceil(block.seconds - elapsed)))
        return {"screen": "gap-screen", "heading": "Gap, held" if held else "Gap", "big": big, "held": held}
    counted = "repetition" if block.in_set else "block"
    where = f"{PART_NAMES[block.part]} {counted} {block.number} of {block.count}"
    row = {"screen": "row-screen", "where": where, "held": held}
    if counting:
        assert isinstance(state, Going)
        return {**row, "count": str(ceil(state.begins - now))}
    return {**row, "count": "", "big": _big(block, elapsed), "strokes": _strokes(block, elapsed)}


def _big(block: Block, elapsed: Fraction) -> str:
    """The time left, rounded up; where no end is known, the time gone or the metres to be reached."""
    if block.ends == "tap":
        return clock(floor(elapsed))
    if _is_unknown(block, elapsed):
        return f"{block.metres}m"
    return clock(max(0, ceil(block.seconds - elapsed)))


def _strokes(block: Block, elapsed: Fraction) -> str:
    if block.stroke is None or block.strokes is None:
        return ""
    gone = floor(elapsed / block.stroke)
    if not block.waits:
        gone = min(gone, block.strokes)
    if _is_unknown(block, elapsed):
        return f"{gone} {'stroke' if gone == 1 else 'strokes'} done"
    left = max(0, block.strokes - gone)
    return f"{left} {'stroke' if left == 1 else 'strokes'} left"


def _is_unknown(block: Block, elapsed: Fraction) -> bool:
    """No end can be counted down to: it is only assumed, or lies behind while the beat runs on."""
    return not block.known or (block.waits and block.stroke is not None and elapsed >= block.seconds)
