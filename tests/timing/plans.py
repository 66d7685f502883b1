"""What is rowed while it is recorded."""

from __future__ import annotations

from functools import cache

from planner.notation.reader import read
from planner.timeline import Timeline, compile_timeline

CHANGING_RATES = """\
title: Three minutes of changing rates
main
30" r18 light
25" r24 half
20" r31 full
15" r36 race
20" r27 half
25" r22 light
15" r33 full
30" r19 light
"""

LONG_RESTS = """\
title: Long rests
main
25" r20 light
rest 2'
25" r28 half
rest 2'
25" r24 half
"""

SEVEN_MINUTES = """\
title: Seven minutes
main
2' r20 light
rest 20"
1'30" r26 half
2' r30 half
1'30" r23 light
"""

SHORT = """\
title: A short one
main
15" r19 light
12" r28 half
13" r34 full
"""

AFTER_A_GAP = """\
title: Started by the clock
warm-up
20" r20 light
gap 2'
main
1' r24 half
30" r30 full
"""


@cache
def timeline_of(text: str) -> Timeline:
    """The timeline of one of these plans."""
    return compile_timeline(read(text))
