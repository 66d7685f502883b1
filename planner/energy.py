"""Energy: the mechanical work shown, and what the body pays for it, always as a range.

Everything rests on displayed watts, which may read several percent low against the handle (see `pace`). Only
rowing is counted, not rests and gaps.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from fractions import Fraction

from planner.athlete import Athlete
from planner.stretches import ROWED, Stretch
from planner.timeline import Timeline

KILOJOULES_PER_KCAL = 4.184

GROSS_EFFICIENCY = (0.175, 0.22)
"""Work over all energy spent. 17.5 %: Fukunaga 1986, Eur J Appl Physiol 55:471-475 [S]. The oxygen costs of
Ingham 2007, Med Sci Sports Exerc 39(5) [S], come to 18.4-23.7 % [=]; 22 % is a plausible upper end [C]."""

MILLILITRES_PER_MET = 3.5
"""Oxygen for each kg and minute in 1 MET [S]."""
KCAL_PER_LITRE = 5
"""Of oxygen, as in kcal/min = MET x 3.5 x kg / 200 [M]."""


class Edition(IntEnum):
    """Which edition of the table of energy costs."""

    OF_2011 = 2011
    OF_2024 = 2024


# MET of stationary rowing from so many watts up. 2011: Ainsworth, Med Sci Sports Exerc 43:1575-1581; 2024:
# Herrmann, J Sport Health Sci 13:6-12, adults of 19-59 [S2]. The 2011 list names single powers; they are read
# as lower ends, as the 2024 list writes its own [C]. The two differ by up to 29 % at 150 W.
MET = {
    Edition.OF_2011: ((200, 12.0), (150, 8.5), (100, 7.0), (0, 4.8)),
    Edition.OF_2024: ((200, 14.0), (150, 11.0), (100, 7.5), (0, 5.0)),
}


@dataclass(frozen=True, slots=True)
class Spent:
    """Kilocalories, the least and the most."""

    low: float
    high: float


@dataclass(frozen=True, slots=True)
class TableCost:
    """Kilocalories by one edition of the table."""

    edition: Edition
    kcal: float


@dataclass(frozen=True, slots=True)
class Energy:
    """Work in kilojoules, what it costs by gross efficiency, and by the table where a mass is known."""

    work_kj: float
    by_efficiency: Spent
    by_table: tuple[TableCost, ...]


def energy_of(timeline: Timeline, athlete: Athlete | None) -> Energy | None:
    """The energy of a session, or None where the power of some of its rowing is not known."""
    work = timeline.totals.work_joules
    if work is None:
        return None
    mass = athlete.mass_kg if athlete else None
    rowed = [segment.stretch for segment in timeline.segments if segment.stretch.kind in ROWED]
    return Energy(
        work_kj=float(work) / 1000,
        by_efficiency=by_efficiency(float(work) / 1000),
        by_table=tuple(TableCost(edition, _by_table(rowed, mass, edition)) for edition in Edition)
        if mass is not None
        else (),
    )


def by_efficiency(work_kj: float) -> Spent:
    """Kilocalories of metabolic energy behind some kilojoules of work: kJ / 4.184 / efficiency [M]."""
    low, high = GROSS_EFFICIENCY
    kcal = work_kj / KILOJOULES_PER_KCAL
    return Spent(kcal / high, kcal / low)


def met_at(watts: float, edition: Edition) -> float:
    """The energy cost of rowing at a power, in multiples of rest."""
    return next(met for least, met in MET[edition] if watts >= least)


def kcal_a_minute(met: float, mass_kg: float) -> float:
    """Kilocalories a minute at an energy cost, for a mass in kg."""
    return met * MILLILITRES_PER_MET * mass_kg / 1000 * KCAL_PER_LITRE


def _by_table(rowed: list[Stretch], mass_kg: Fraction, edition: Edition) -> float:
    return sum(
        kcal_a_minute(met_at(float(watts), edition), float(mass_kg)) * float(stretch.duration) / 60
        for stretch in rowed
        if stretch.target and (watts := stretch.target.watts) is not None
    )
