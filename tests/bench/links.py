"""How long links are that carry a built-in plan, and whether a phone can read their codes."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

from tests.bench.measuring import Row, at_least, at_most
from web.builtin_plans import load_library
from web.link_codec import encode
from web.qr import LARGEST_VERSION, code_of
from web.settings import Settings

BASE = "https://slipway.example/p#"
AIM_CHARACTERS = 900
AIM_SHARE = 80


def rows() -> Iterator[Row]:
    """Characters of whole addresses, and the share of codes of a version that is read across a desk."""
    library = load_library(Settings().plans)
    addresses = [BASE + encode(each.plan) for each in library.plans.values()]
    lengths = [len(address) for address in addresses]
    versions = [code_of(address, about="{}").version for address in addresses]
    readable = 100 * sum(version <= LARGEST_VERSION for version in versions) / len(versions)
    spread = f"{min(lengths)} to {max(lengths)}"
    yield at_most("link that carries a built-in plan", median(lengths), AIM_CHARACTERS, " characters", spread)
    told = f"versions {min(versions)} to {max(versions)}"
    yield at_least(f"codes of version {LARGEST_VERSION} or less", readable, AIM_SHARE, " %", told)
