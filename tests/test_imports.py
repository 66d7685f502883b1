"""Who may import whom: the table of DEVELOPERS.md, held against the code."""

from __future__ import annotations

import ast
import re
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]

# Each module may use those named before it, never the reverse.
PLANNER_ORDER = [
    "errors",
    "units",
    "text",
    "limits",
    "plan",
    "strokes",
    "pace",
    "athlete",
    "customs",
    "trials",
    "hyperbola",
    "critical_power",
    "curve",
    "prediction",
    "intensity",
    "bands",
    "expansion",
    "findings",
    "edits",
    "result_findings",
    "standing",
    "calls",
    "stretches",
    "totals",
    "timeline",
    "cues",
    "notation",
    "plan_file",
    "drills",
    "focus_points",
    "call_spread",
    "energy",
    "load",
    "demand",
    "endurance",
    "capacity",
    "reserve",
    "phosphocreatine",
    "oxygen",
    "warmth",
    "start_line",
    "advised_gap",
    "readiness",
    "intervals",
    "holding",
    "coaching",
    "pieces",
    "pacing",
    "pacing_words",
    "warm_up",
    "easy_piece",
    "main_piece",
    "cool_down",
    "session_words",
    "age_words",
    "session",
    "checks",
    "appraisal",
    "schemas",
    "command_line",
    "__main__",
]
PLANNER_LIBRARIES = {"marshmallow": {"schemas"}, "lark": {"notation"}, "yaml": {"__main__"}}

# For each place of the web layer: the places and libraries of ours that it may use.
WEB_MAY_USE = {
    "settings": set(),
    "security_headers": {"settings"},
    "stored": set(),
    "streamed": {"stored"},
    "assets": {"settings", "stored"},
    "figures_font": set(),
    "build": {"settings", "assets", "exports", "figures_font"},
    "builtin_plans": set(),
    "link_codec": {"settings"},
    "pages": {"settings", "security_headers", "stored", "assets", "builtin_plans"},
    "exports": set(),
    "store": {"link_codec"},
    "qr": set(),
    "api": {"settings", "stored", "streamed", "builtin_plans", "exports", "store"},
    "shared_pages": {"settings", "stored", "pages", "api", "link_codec", "qr"},
    "operator": {"settings", "store"},
    "serving": {"settings"},
    "phone": {"settings", "stored", "assets", "pages", "qr"},
    "for_phones": {"settings", "phone", "factory", "serving"},
    "factory": {
        *("settings", "security_headers", "assets", "builtin_plans", "pages", "api", "store"),
        *("shared_pages", "phone"),
    },
}

CLIENT_MAY_USE = {
    "plan": set(),
    "timeline": {"plan"},
    "audio": {"plan", "timeline"},
    "data": {"plan", "timeline"},
    "offline": {"plan/alone"},
    "state": {"plan", "timeline", "audio", "data", "offline/worker-bridge"},
    "components": {"plan", "timeline", "data", "state", "offline/worker-bridge"},
    "first-paint": {"data/theme-mirror"},
    "main": {"plan", "data", "state", "components", "offline/worker-bridge"},
    "alone": {"plan", "data", "components"},
}


def modules(folder: str) -> list[Path]:
    return sorted((ROOT / folder).rglob("*.py"))


def imports_of(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: write imports in full"
            whole = node.module in {"planner", "web"}
            yield from (f"{node.module}.{a.name}" for a in node.names) if whole else [node.module or ""]


def place_in(path: Path, package: str) -> str:
    """The module or folder of a package in which a file stands."""
    first = path.relative_to(ROOT / package).parts[0]
    return first.removesuffix(".py")


@pytest.mark.parametrize("path", modules("planner"), ids=lambda p: str(p.relative_to(ROOT)))
def test_planner_modules_use_only_what_lies_before_them(path: Path) -> None:
    here = place_in(path, "planner")
    if here == "__init__":
        assert not list(imports_of(path))
        return
    for name in imports_of(path):
        top, *rest = name.split(".")
        if top == "planner":
            assert rest, f"{path}: import a module of planner, not planner itself"
            allowed = PLANNER_ORDER[: PLANNER_ORDER.index(here)]
            assert rest[0] == here or rest[0] in allowed, f"{path} may not use {name}"
        elif top in PLANNER_LIBRARIES:
            assert here in PLANNER_LIBRARIES[top], f"{path} may not use {top}"
        else:
            assert top in sys.stdlib_module_names, f"{path} may not use {top}"


@pytest.mark.parametrize("path", modules("planner"), ids=lambda p: str(p.relative_to(ROOT)))
def test_the_planner_has_no_clock_no_threads_and_no_chance(path: Path) -> None:
    banned = {"time", "datetime", "random", "secrets", "threading", "asyncio", "socket", "subprocess"}
    assert not banned & set(imports_of(path))


@pytest.mark.parametrize("path", modules("web"), ids=lambda p: str(p.relative_to(ROOT)))
def test_web_modules_use_only_their_own_floor(path: Path) -> None:
    here = place_in(path, "web")
    if here == "__init__":
        assert not list(imports_of(path))
        return
    for name in imports_of(path):
        top, *rest = name.split(".")
        if top == "web" and rest[0] != here:
            assert rest[0] in WEB_MAY_USE[here], f"{path} may not use {name}"
        if here != "store":
            assert top != "sqlalchemy", f"{path} knows no database"
        if here in {"builtin_plans", "exports", "store", "link_codec"}:
            assert top != "flask", f"{path} knows no requests"


def test_app_sees_the_factory_and_the_settings_only() -> None:
    ours = {n for n in imports_of(ROOT / "app.py") if n.split(".")[0] in {"web", "planner"}}
    assert ours <= {"web.factory", "web.serving", "web.settings"}


CLIENT = ROOT / "static" / "src"
IMPORT = re.compile(r"""(?:from|import)\s*\(?\s*["']([^"']+)["']""")


@pytest.mark.parametrize("path", sorted(CLIENT.rglob("*.ts")), ids=lambda p: str(p.relative_to(ROOT)))
def test_client_modules_use_only_their_own_floor(path: Path) -> None:
    here = path.relative_to(CLIENT).parts[0].removesuffix(".ts")
    for name in IMPORT.findall(path.read_text(encoding="utf-8")):
        if not name.startswith("."):
            continue
        target = (path.parent / name).resolve().relative_to(CLIENT)
        place = target.parts[0].removesuffix(".ts").removesuffix(".js")
        module = str(target).removesuffix(".ts").removesuffix(".js")
        allowed = CLIENT_MAY_USE[here]
        assert place == here or place in allowed or module in allowed, f"{path} may not use {name}"
