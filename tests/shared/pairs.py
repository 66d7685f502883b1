"""Plans with the timelines Python compiles from them, for anybody and for one result: read by TypeScript too.

`python -m tests.shared.pairs` writes the files again after a wanted change; look at the difference before you
commit it.
"""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import Any

from planner import calls
from planner.athlete import Athlete, Level, Result
from planner.notation.reader import read
from planner.plan import Plan
from planner.schemas.plan_schema import dump_plan
from planner.schemas.timeline_schema import dump_timeline
from planner.strokes import Fit
from planner.timeline import compile_timeline

FOLDER = Path(__file__).parent

TEXTS = {
    "every-effort": """\
title: Every effort
setting: lever 4
3' r18 light
2' r20 half
1' r24 three-quarter
45" r28 full
30" r30 race
2' r20 @2:05
2' r20 2k+12
2' r20 -1.5"
2' r20 65% power
2' r20 effort 5
2' r20 hr 80% max
1' r20 -2"
2' light
1' r22
""",
    "metres": """\
title: Metres in all their forms
500m r26 2k+3
500m r28 2k+1
  focus: longer
  call: Up two
  call at 20: Half way
  call last 10: Ten to go
1' rest
3 x 700m r30 2k / 2' rest
1000m r24 @2:10
750m r20 full
2000m light
250m r36
5' r18 light
""",
    "drills-and-setting": """\
title: Drills and settings
setting: drag factor 110
warm-up
each side 2 x 20" swap 10" r18 light
  drill: one foot
  call: Short and light
  call last 3: Three more
1' r20 light
  drill: arms only
  setting: drag factor 90
1' r22 -2"
open r20 half
gap 5'
main
2 x (2 x (15" r26 full, 45" r18 light) / 1' rest, 20 strokes r33 race)
cool-down
4' r18 light
""",
    "ladder": """\
title: A ladder down by seconds
main
4' r18 2k+20
5 x 1' r22 -1.5"
1' r24 full
4 x (30" r26 -20", 30" r20 +20")
3 x 1' r30 -30"
""",
    "another-voice": """\
title: A slower voice than the usual
500m r26 2k+3
  call: Longer
  call at 20: Half way, and it still has to feel easy
  call last 4: Four to go
2 x 250m r30 2k / 1' rest
  call at 4: Legs before anything else
""",
    "calls-in-turn": """\
title: Calls that take turns over the repetitions of a set
2' r18 light
4 x 500m r28 2k / 1' rest
  call at 4: Long arms
  call at 4: Quick hands
  call at 4: Loose jaw
  call last 10: Ten to go
2 x 1' r24 @2:05 / 30" rest
  call: Sit tall
  call at 1: Breathe
  call: Too many for two
""",
}

WORDS_A_MINUTE = {"another-voice": 100}

LEVELS = {"metres": Level.NOVICE, "ladder": Level.TRAINED}
"""Pairs compiled for a level too, with the result and without: pressure and rough lengths rest on it."""

RESULTS = {
    "every-effort": (Result(2000, Fraction(462)), Fit.CLOCK),
    "metres": (Result(5000, Fraction(12_345, 10)), Fit.CLOCK),
    "drills-and-setting": (Result(500, Fraction(981, 10)), Fit.RATE),
    "ladder": (Result(10_000, Fraction(2401)), Fit.RATE),
    "calls-in-turn": (Result(2000, Fraction(462)), Fit.CLOCK),
    "another-voice": (Result(2000, Fraction(420)), Fit.CLOCK),
}


def document(name: str) -> dict[str, Any]:
    """One pair, as its file holds it."""
    plan = read(TEXTS[name])
    result, fit = RESULTS[name]
    words = WORDS_A_MINUTE.get(name, calls.WORDS_A_MINUTE)
    return {
        "plan": dump_plan(plan),
        "result": {"metres": result.metres, "seconds": float(result.seconds)},
        "timeline_plain": dump_timeline(compile_timeline(plan, fit=fit, words_a_minute=words)),
        "timeline_scaled": dump_timeline(
            compile_timeline(plan, Athlete((result,)), fit, words_a_minute=words)
        ),
        **(_at_level(plan, result, fit, LEVELS[name]) if name in LEVELS else {}),
    }


def _at_level(plan: Plan, result: Result, fit: Fit, level: Level) -> dict[str, Any]:
    unknown, known = (
        dump_timeline(compile_timeline(plan, Athlete(results, level=level), fit))
        for results in ((), (result,))
    )
    return {"level": level.value, "timeline_at_level": unknown, "timeline_scaled_at_level": known}


def text_of(name: str) -> str:
    """The text of a pair's file."""
    return json.dumps(document(name), ensure_ascii=False, indent=1) + "\n"


if __name__ == "__main__":
    for each in TEXTS:
        (FOLDER / f"{each}.json").write_text(text_of(each), encoding="utf-8")
