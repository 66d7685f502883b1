"""What a session says to the young and the old: their age changes what is wise, whatever they ask for."""

from __future__ import annotations

from planner.athlete import CHILD_BELOW, OLDER_FROM, Athlete
from planner.pieces import IntervalSet, Piece, TestPiece

_CHILD_HARD = (
    f"Under {CHILD_BELOW} not as it stands: it is hard and its targets are of grown-ups. Row it shorter and "
    "easier, with a coach at your side, who has the last word."
)
_CHILD = f"Under {CHILD_BELOW} row short pieces, technique first, with a coach at your side."
_OLDER_HARD = (
    f"From {OLDER_FROM} on go by effort, 7 to 8 of 10, not by a formula of heart rate; take time to get warm "
    "and ask a doctor first in any doubt."
)
_OLDER = f"From {OLDER_FROM} on go by effort, 5 to 6 of 10, and give warm-up and way down their time."


def words_for_age(athlete: Athlete | None, piece: Piece) -> tuple[str, ...]:
    """A word for a child or an older adult before a piece, where it is for one (facts 9.3)."""
    hard = isinstance(piece, TestPiece | IntervalSet)
    if athlete is not None and athlete.is_child:
        return (_CHILD_HARD if hard else _CHILD,)
    if athlete is not None and athlete.is_older:
        return (_OLDER_HARD if hard else _OLDER,)
    return ()
