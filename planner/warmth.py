"""How warm the working muscles are: degrees above a rested muscle, rising while rowing, fading after it.

A full warm-up is a rise of 3 degrees (15 min raise the thigh by about that much: Raccuglia 2016, Eur J Appl
Physiol 116:395-404 [S]); harder rowing goes above it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import exp

from planner.athlete import Room
from planner.demand import Run

FULL_RISE = 3.0
"""Degrees C that count as warm through."""

# Quadriceps in steady work at 26, 51 and 69 % of the highest uptake: 37.99, 38.71 and 39.19 degrees
# (Saltin & Hermansen 1966, J Appl Physiol 21:1757 [S]), a straight line through them [=]; 36.0 at rest [M].
DEGREES_AT_NO_WORK, DEGREES_FOR_ALL_UPTAKE, DEGREES_AT_REST = 37.264, 2.798, 36.0


@dataclass(frozen=True, slots=True)
class Course:
    """Time constants in seconds: of the rise while rowing, of the loss while still."""

    rise: float
    loss: float


# Rise: within 3-5 min, level after 10-20 min (Saltin 1968; Bishop 2003 part I, Sports Med 33:439-454 [M]):
# 95 % at 20, 15 and 10 min [=]. Loss: 3.0 degrees lose 1.3 +- 0.3 in 30 min (Raccuglia 2016 [S]): time
# constants of 39.4, 52.8 and 74.0 min [=].
COURSES = (Course(400.0, 39.4 * 60), Course(300.0, 52.8 * 60), Course(200.0, 74.0 * 60))

# What the room does to both time constants: judgement [C]. Heated trousers cut the loss to 0.1-1.1 degrees
# (Raccuglia 2016 [S]), so warmth around the legs matters this much and more.
RISE_IN_ROOM = {Room.COLD: 1.3, Room.NORMAL: 1.0, Room.HOT: 0.8}
LOSS_IN_ROOM = {Room.COLD: 0.75, Room.NORMAL: 1.0, Room.HOT: 1.5}


def course_in(room: Room, course: Course) -> Course:
    """The course as it runs in a room."""
    return Course(course.rise * RISE_IN_ROOM[room], course.loss * LOSS_IN_ROOM[room])


def steady_rise(share: float) -> float:
    """Degrees above rest that rowing at a share of 2 km power leads to; harder than that adds nothing."""
    return DEGREES_AT_NO_WORK - DEGREES_AT_REST + DEGREES_FOR_ALL_UPTAKE * min(share, 1.0)


def degrees(runs: Iterable[Run], course: Course) -> list[float]:
    """Degrees C above a rested muscle after each run, starting from rest."""
    now = 0.0
    after = []
    for share, seconds, _ in runs:
        if share > 0:
            goal = steady_rise(share)
            now = goal + (now - goal) * exp(-seconds / course.rise)
        else:
            now *= exp(-seconds / course.loss)
        after.append(now)
    return after
