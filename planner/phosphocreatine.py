"""Phosphocreatine left in the muscle: spent on what oxygen does not pay, back in two phases.

Recovery follows two exponentials through the points of Bogdanis 1995, J Physiol 482:467-480 [S]: 19.7 % of
rest after 30 s all-out, 65.0 % at 1.5 min, 85.5 % at 6 min. One exponential would be clearly wrong.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import exp, log

from planner.demand import Run

ALL_OUT_SECONDS = 30.0
LEFT_AFTER_ALL_OUT = 0.197

# The curve through both points with a fast half-time of 22 s (Harris 1976, Pflugers Arch 367:137-142 [M])
# has this fast share and slow half-time [=].
FAST_SHARE = 0.4634
FAST_TAU = 22 / log(2)
SLOW_TAU = 229.1 / log(2)

ALL_OUT_SHARES = (1.6, 1.8, 2.0)
"""Mean power of 30 s all-out, in 2 km power: judgement [C]; the lowest makes work cost the most."""


def cost_of_debt(all_out_share: float, rise: float) -> float:
    """The part of the store that goes for each second of 2 km power that oxygen does not pay.

    Set so that 30 s all-out from rest leaves 19.7 %; `rise` is the time constant of uptake in seconds.
    """
    debt = (all_out_share - 1) * ALL_OUT_SECONDS + rise * (1 - exp(-ALL_OUT_SECONDS / rise))
    return (1 - LEFT_AFTER_ALL_OUT) / debt


def remaining(
    runs: Iterable[Run], uptakes: Iterable[float], rise: float, all_out_share: float
) -> list[float]:
    """The share left after each run; `uptakes` is the oxygen uptake after each of them.

    While uptake rises, the unpaid work empties the store, never beyond empty. Once oxygen covers the work,
    the store refills towards the level that steady work at that power keeps: full, at rest.
    """
    cost = cost_of_debt(all_out_share, rise)
    fast = slow = before = 0.0
    left = []
    for (share, seconds, _), now in zip(runs, uptakes, strict=True):
        goal = min(share, 1.0)
        if share > before:
            debt = cost * ((share - goal) * seconds + rise * (now - before))
            paid = min(debt, 1 - fast - slow)
            fast += FAST_SHARE * paid
            slow += (1 - FAST_SHARE) * paid
        else:
            kept = cost * rise * goal
            fast = _towards(fast, FAST_SHARE * kept, seconds / FAST_TAU)
            slow = _towards(slow, (1 - FAST_SHARE) * kept, seconds / SLOW_TAU)
        before = now
        left.append(1 - fast - slow)
    return left


def _towards(missing: float, kept: float, times_tau: float) -> float:
    return kept + (missing - kept) * exp(-times_tau) if missing > kept else missing
