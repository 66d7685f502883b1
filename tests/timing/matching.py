"""Heard sounds against expected ones: one offset and one linear rate are taken out, what is left is error."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Moments = NDArray[np.float64]

NEAR_SECONDS = 0.1
"""Expected sounds are further apart than that; half as far off, it is another sound."""
VOTE_SECONDS = 0.03


@dataclass(frozen=True, slots=True)
class Matched:
    """Which sounds were heard, and how far each was from its place.

    `expected` and `heard` are pairs, in seconds; the heard clock shows `offset` + `rate` x the expected one.
    """

    expected: Moments
    heard: Moments
    missed: Moments
    extra: Moments
    offset: float
    rate: float

    @property
    def errors_ms(self) -> Moments:
        """How much later than expected each sound began, in milliseconds."""
        errors: Moments = (self.heard - self.offset - self.rate * self.expected) * 1000
        return errors

    def error_ms(self, share: float) -> float:
        """The size of error that this share of the sounds stay within."""
        return float(np.quantile(np.abs(self.errors_ms), share))

    def worst(self) -> float:
        """The expected moment of the sound that was furthest off."""
        return float(self.expected[np.argmax(np.abs(self.errors_ms))])


def match(expected: Moments, heard: Moments, fitted_until: float = np.inf) -> Matched:
    """Pairs each expected sound with the one heard nearest to its place.

    Offset and rate are those of least squares, over the sounds expected before `fitted_until`. Raises
    ValueError when hardly anything was heard.
    """
    offset, rate = _offset(expected, heard), 1.0
    for _ in range(2):
        pairs = _pairs(offset + rate * expected, heard)
        here = np.array([pair for pair in pairs if expected[pair[0]] < fitted_until])
        if len(here) < 3:
            raise ValueError(f"of {len(expected)} sounds {len(pairs)} were heard: too few to say when")
        rate, offset = np.polyfit(expected[here[:, 0]], heard[here[:, 1]], 1)
    which, where = np.array(pairs).T
    return Matched(
        expected[which],
        heard[where],
        np.delete(expected, which),
        np.delete(heard, where),
        float(offset),
        float(rate),
    )


def _offset(expected: Moments, heard: Moments) -> float:
    """What most pairs of sounds lie apart, to some milliseconds: the true pairs agree, the others scatter."""
    apart = np.sort((heard[:, None] - expected[None, :]).ravel())
    votes = np.searchsorted(apart, apart + VOTE_SECONDS) - np.arange(len(apart))
    first = int(np.argmax(votes))
    return float(np.median(apart[first : first + votes[first]]))


def _pairs(places: Moments, heard: Moments) -> list[tuple[int, int]]:
    """Index of each expected sound with that of the heard one next to it, if that is near and no other's."""
    nearest = np.array([int(np.argmin(np.abs(heard - place))) for place in places])
    far = np.abs(heard[nearest] - places)
    pairs = []
    for index in np.flatnonzero(far < NEAR_SECONDS / 2):
        rivals = np.flatnonzero(nearest == nearest[index])
        if index == rivals[np.argmin(far[rivals])]:
            pairs.append((int(index), int(nearest[index])))
    return pairs
