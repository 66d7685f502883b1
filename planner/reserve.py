"""The balance of W', the reserve above critical power, by three published models.

Each model takes runs of constant power and gives the share of W' that is left after each run: 1 is all of
it, 0 none; below 0 the model has been asked for more than it holds, and says so by the sign. The steps are
exact solutions for constant power, so runs of one second and longer ones end at the same place.

All constants come from cycling; none for rowing were found. At rest, 15 min after exhaustion, all three lie
above the 86 % that was observed (Ferguson 2010, J Appl Physiol 108:866-874 [S]).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import exp

from planner.capacity import Capacity, Purse
from planner.demand import Run

# Recovered share after time t: 0.5067 (1 - exp(-t/21.5)) + 0.4933 (1 - exp(-t/388)), t in seconds
# (Chorley 2022, Eur J Appl Physiol 122 [S]).
FAST_SHARE, FAST_TAU = 0.5067, 21.5
SLOW_SHARE, SLOW_TAU = 0.4933, 388.0


def tau_2012(watts_below: float) -> float:
    """Seconds: 546 exp(-0.01 D) + 316, with D in watts (Skiba 2012, Med Sci Sports Exerc 44:1526 [S2])."""
    return 546 * exp(-0.01 * watts_below) + 316


def mean_below(runs: Iterable[Run], critical: float) -> float:
    """How far the mean of all power below the critical share lies under it, as a share of 2 km power.

    It is a mean over the whole session, not the instant's value; 0 where nothing lies below.
    """
    seconds = work = 0.0
    for share, length, _ in runs:
        if share < critical:
            seconds += length
            work += share * length
    return critical - work / seconds if seconds else 0.0


def integral_2012(runs: Iterable[Run], purse: Purse, tau: float) -> list[float]:
    """What was spent above the critical share fades away with one time constant, also during work.

    Wbal(t) = W' - sum of Wexp(u) exp(-(t - u)/tau), in its recursive form (Skiba 2012, Med Sci Sports
    Exerc 44:1526-1532 [S] abstract).
    """
    critical, reserve = purse
    spent, lasting, keep = 0.0, -1.0, 1.0
    left = []
    for share, seconds, _ in runs:
        if seconds != lasting:
            lasting, keep = seconds, exp(-seconds / tau)
        spent *= keep
        if share > critical:
            spent += (share - critical) / reserve * tau * (1 - keep)
        left.append(1 - spent)
    return left


def differential_2015(runs: Iterable[Run], purse: Purse) -> list[float]:
    """Above the critical share W' is spent evenly; below it what is missing fades with tau = W'/D.

    dW/dt = -(P - CP) above, (1 - W/W')(CP - P) below (Skiba 2015, Eur J Appl Physiol 115:703-713; equation
    [M]).
    """
    critical, reserve = purse
    spent = 0.0
    left = []
    for share, seconds, _ in runs:
        over = (share - critical) / reserve * seconds
        spent = spent + over if over > 0 else spent * exp(over)
        left.append(1 - spent)
    return left


def two_speed_2022(runs: Iterable[Run], purse: Purse) -> list[float]:
    """Half of what was spent comes back quickly and half slowly (Chorley 2022, Eur J Appl Physiol 122 [S]).

    The curve was measured at next to rest. Rowing below the critical share slows both halves in proportion
    to how far below it is: judgement [C], so that nothing comes back at the critical share itself.
    """
    critical, reserve = purse
    fast = slow = 0.0
    left = []
    for share, seconds, _ in runs:
        if share > critical:
            spent = (share - critical) / reserve * seconds
            fast += FAST_SHARE * spent
            slow += SLOW_SHARE * spent
        else:
            ease = seconds * (critical - share) / critical
            fast *= exp(-ease / FAST_TAU)
            slow *= exp(-ease / SLOW_TAU)
        left.append(1 - fast - slow)
    return left


def by_every_model(runs: Sequence[Run], purse: Purse, tau: float) -> tuple[list[float], ...]:
    """The balance after each run by the three models, always in the same order."""
    return (integral_2012(runs, purse, tau), differential_2015(runs, purse), two_speed_2022(runs, purse))


def tau_for(session: Iterable[Run], purse: Purse, capacity: Capacity) -> float:
    """The 2012 time constant of a session, in seconds. It needs watts: the result's, else the level's."""
    return tau_2012(mean_below(session, purse.critical) * capacity.watts_in_formulas)


def medians(models: tuple[list[float], ...]) -> list[float]:
    """The median of three models after each run."""
    return [sorted(row)[1] for row in zip(*models, strict=True)]
