"""Plans as documents, drawn at random within the limits."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from planner import limits
from planner.limits import Bounds
from planner.plan import Drill, Pressure
from planner.text import clean


def whole(bounds: Bounds) -> st.SearchStrategy[int]:
    steps = st.integers(int(bounds.low / bounds.step), int(bounds.high / bounds.step))
    return steps.map(lambda n: int(n * bounds.step))


def stepped(bounds: Bounds) -> st.SearchStrategy[int | float]:
    """Numbers as JSON writes them: whole ones without a point."""
    steps = st.integers(int(bounds.low / bounds.step), int(bounds.high / bounds.step))
    exact = steps.map(lambda n: n * bounds.step)
    return exact.map(lambda f: int(f) if f == int(f) else float(f))


def one(key: str, values: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    return values.map(lambda value: {key: value})


def is_kept(text: str) -> bool:
    """True for a text that the plan document takes exactly as it is."""
    try:
        return clean(text, limits.WORD_LENGTH) == text
    except ValueError:
        return False


ODD_LETTERS = st.text(
    st.sampled_from("ab Z9äß漢字かけ한글עברעربيةหิหा'’\"”,:;\\/()@%+-–×½¾…#🙂👍🏽\u200d♀\ufe0f\u0301\u0327"),
    min_size=1,
    max_size=20,
)
LIKE_SHORTHAND = st.sampled_from(
    [
        "at 10: now",
        "last 5",
        ": x",
        "focus: y",
        "title:",
        ") / (",
        "3' rest",
        "main",
        "lever 4",
        "r18",
        "/",
        "x" * 60,
    ]
)
LINES = (ODD_LETTERS | LIKE_SHORTHAND).filter(is_kept)
SETTINGS = one("lever", whole(limits.LEVER)) | one("drag_factor", whole(limits.DRAG_FACTOR))
HEART_RATES = st.one_of(
    one("bpm", whole(limits.HEART_BPM)),
    one("percent_max", whole(limits.HEART_PERCENT)),
    one("percent_reserve", whole(limits.HEART_PERCENT)),
)
EFFORTS = st.one_of(
    one("pressure", st.sampled_from([pressure.value for pressure in Pressure])),
    one("split", stepped(limits.SPLIT)),
    one("split_offset", stepped(limits.SPLIT_OFFSET)),
    one("change", stepped(limits.CHANGE)),
    one("two_k_power_fraction", stepped(limits.TWO_K_POWER)),
    one("cr10", stepped(limits.CR10)),
    one("heart_rate", HEART_RATES),
)
STROKE = whole(limits.BLOCK_STROKES)
EARLY_CALLS = st.fixed_dictionaries({"text": LINES}, optional={"stroke": STROKE})
CALLS = EARLY_CALLS | st.fixed_dictionaries({"text": LINES, "strokes_left": STROKE})
OPEN_ASKED = {
    "rate": whole(limits.RATE),
    "effort": EFFORTS,
    "drill": one("name", LINES),
    "focus": LINES,
    "calls": st.lists(EARLY_CALLS, min_size=1, max_size=3),
    "setting": SETTINGS,
}
ASKED = {**OPEN_ASKED, "calls": st.lists(CALLS, min_size=1, max_size=3)}
TIMED = one("seconds", whole(Bounds("", 1, 600))) | one("metres", whole(Bounds("", 50, 5000)))
COUNTED = one("strokes", STROKE)
SIDED = st.fixed_dictionaries(
    {"name": LINES, "sides": whole(limits.SIDES), "side_seconds": whole(limits.SIDE_SECONDS)},
    optional={"swap_seconds": whole(limits.SWAP_SECONDS)},
)


def by_sides(drill: dict[str, Any]) -> dict[str, Any]:
    """A block as long as its drill."""
    return {"for": {"seconds": Drill(**drill).total_seconds}, "drill": drill}


BLOCKS = st.one_of(
    st.fixed_dictionaries({"for": TIMED}, optional=ASKED),
    st.fixed_dictionaries({"for": COUNTED, **ASKED}),
    st.fixed_dictionaries({"open": st.just(True)}, optional=OPEN_ASKED),
    st.builds(lambda drill, rate: {**by_sides(drill), "rate": rate}, SIDED, whole(limits.RATE)),
    st.fixed_dictionaries({"rest": st.just(True), "for": one("seconds", whole(Bounds("", 1, 600)))}),
)
STEPS = st.recursive(
    BLOCKS,
    lambda steps: st.fixed_dictionaries(
        {"times": st.integers(1, 5), "blocks": st.lists(steps, min_size=1, max_size=3)},
        optional={"between": st.lists(steps, min_size=1, max_size=2)},
    ),
    max_leaves=6,
)
GAPS = one("seconds", whole(Bounds("", 1, 900))).map(lambda length: {"kind": "gap", "for": length})
PARTS = GAPS | st.fixed_dictionaries(
    {
        "kind": st.sampled_from(["warm-up", "main", "cool-down"]),
        "blocks": st.lists(STEPS, min_size=1, max_size=4),
    }
)
DOCUMENTS = st.fixed_dictionaries(
    {"format": st.just(1), "title": LINES, "parts": st.lists(PARTS, min_size=1, max_size=3)},
    optional={"summary": LINES, "setup": LINES, "setting": SETTINGS},
)
