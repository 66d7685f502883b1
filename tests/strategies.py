"""Plans as documents, drawn at random within the limits."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from planner import limits
from planner.limits import Bounds
from planner.plan import Pressure


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


LINES = st.text(st.sampled_from("abc äß 漢字 '\",:;\\/"), min_size=1, max_size=20).filter(
    lambda text: text == " ".join(text.split()) and text != ""
)
SETTINGS = one("lever", whole(limits.LEVER)) | one("drag_factor", whole(limits.DRAG_FACTOR))
EFFORTS = st.one_of(
    one("pressure", st.sampled_from([pressure.value for pressure in Pressure])),
    one("split", stepped(limits.SPLIT)),
    one("split_offset", stepped(limits.SPLIT_OFFSET)),
    one("change", stepped(limits.CHANGE)),
    one("two_k_power_fraction", stepped(limits.TWO_K_POWER)),
    one("cr10", stepped(limits.CR10)),
    one("heart_rate", one("bpm", whole(limits.HEART_BPM)) | one("percent_max", whole(limits.HEART_PERCENT))),
)
CALLS = st.fixed_dictionaries({"text": LINES}, optional={"stroke": whole(limits.BLOCK_STROKES)})
ASKED = {
    "rate": whole(limits.RATE),
    "effort": EFFORTS,
    "drill": one("name", LINES),
    "focus": LINES,
    "calls": st.lists(CALLS, min_size=1, max_size=3),
    "setting": SETTINGS,
}
TIMED = one("seconds", whole(Bounds("", 1, 600))) | one("metres", whole(Bounds("", 1, 5000)))
COUNTED = one("strokes", whole(limits.BLOCK_STROKES))
BLOCKS = st.one_of(
    st.fixed_dictionaries({"for": TIMED}, optional=ASKED),
    st.fixed_dictionaries({"for": COUNTED, **ASKED}),
    st.fixed_dictionaries({"open": st.just(True)}, optional=ASKED),
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
