"""Plan files: read as they are written, or named with the line at fault and left out."""

from __future__ import annotations

import logging
from dataclasses import replace
from pathlib import Path

import pytest

from planner.plan import Gap, Part, PartKind
from planner.plan_file import PlanFileError
from tests.web.conftest import FEW_PLANS
from web.builtin_plans import Damaged, load_library, load_plan_file
from web.factory import create_app
from web.settings import Settings

DAMAGED_PLANS = Path(__file__).parent / "damaged_plans"

HEAD = "title: A plan\nkind: steady\nsummary: Short.\n"
PARTS = "parts:\n  - main: |\n      5' r18 light\n"


@pytest.fixture
def write(tmp_path: Path) -> Path:
    """A plan file to write into."""
    return tmp_path / "a-plan.yaml"


def test_a_file_becomes_a_plan_with_its_parts_in_order() -> None:
    builtin = load_plan_file(FEW_PLANS / "up-and-a-piece.yaml")
    kinds = [part.kind if isinstance(part, Part) else part for part in builtin.plan.parts]
    assert kinds == [PartKind.WARM_UP, Gap(300), PartKind.MAIN]


def test_its_header_is_read() -> None:
    builtin = load_plan_file(FEW_PLANS / "up-and-a-piece.yaml")
    assert (builtin.slug, builtin.kind) == ("up-and-a-piece", "test")
    assert builtin.plan.title == "A way up and a piece"
    assert builtin.plan.summary == "A summary that is folded over two lines."
    assert builtin.plan.setup == "Straps snug."


def test_damaged_files_are_named_with_the_line_at_fault() -> None:
    library = load_library(DAMAGED_PLANS)
    assert library.plans == {}
    assert [(damaged.file, damaged.line) for damaged in library.damaged] == [
        ("broken-yaml.yaml", 8),
        ("no-title.yaml", 1),
        ("unknown-word.yaml", 11),
    ]
    assert library.damaged[1] == Damaged("no-title.yaml", 1, "the field title: is missing")
    assert library.damaged[2].reason.startswith('cannot read "gentlish" here')


def test_the_rest_of_the_folder_is_served_and_the_log_names_the_damaged_one(
    settings: Settings, tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    for folder, name in ((FEW_PLANS, "short-steady.yaml"), (DAMAGED_PLANS, "unknown-word.yaml")):
        (tmp_path / name).write_text((folder / name).read_text())
    with caplog.at_level(logging.WARNING):
        app = create_app(replace(settings, plans=tmp_path))
    listing = app.test_client().get("/api/plans").get_json()
    assert [plan["slug"] for plan in listing["plans"]] == ["short-steady"]
    assert 'plan file left out: unknown-word.yaml, line 11: cannot read "gentlish"' in caplog.text


@pytest.mark.parametrize(
    ("text", "line", "reason"),
    [
        ("", 1, "the file holds no fields"),
        ("- a\n- b\n", 1, "the file holds no fields"),
        ("title: [1, 2]\nkind: a\nsummary: b\n" + PARTS, 1, "text has to stand here"),
        (HEAD, 1, "the field parts: is missing"),
        (HEAD + PARTS + "colour: red\n", 7, '"colour" cannot stand here'),
        (HEAD + "title: Twice\n" + PARTS, 4, '"title" cannot stand here'),
        (HEAD + "parts: none\n", 4, "parts: is not a list"),
        (HEAD + "parts:\n  - sprint: x\n", 5, "a part has to be one of warm-up, main, cool-down, gap"),
        (HEAD + "parts:\n  - main: x\n    gap: 5'\n", 5, "a part has to be one of"),
        (HEAD + "parts:\n  - main: 5' r18 gently\n", 5, 'cannot read "gently"'),
        (HEAD + "setting: lever 40\n" + PARTS, 4, "lever 40 is above 10"),
        (HEAD + PARTS + "  - gap: soon\n", 7, "a gap needs a length of time"),
        ("kind: steady\nsummary: a\ntitle: ''\n" + PARTS, 3, "the text is empty"),
        (HEAD.replace("steady", "x" * 25) + PARTS, 2, "kind: has to have 1 to 24 characters"),
        (HEAD + "level: hard\n" + PARTS, 4, 'level: "hard" is none; it may be novice, club, trained'),
        (HEAD + "summary: &a [*a]\n" + PARTS, 4, '"summary" cannot stand here'),
        (HEAD + PARTS + "set-up: !!python/object/apply:os.getcwd []\n", 7, "text has to stand here"),
    ],
)
def test_a_mistake_is_named_with_its_line(write: Path, text: str, line: int, reason: str) -> None:
    write.write_text(text)
    with pytest.raises(PlanFileError) as caught:
        load_plan_file(write)
    assert caught.value.line == line
    assert caught.value.reason.startswith(reason)


def test_a_file_that_is_not_utf_8_is_refused(write: Path) -> None:
    write.write_bytes((HEAD + PARTS).encode("utf-16"))
    with pytest.raises(PlanFileError, match="not in UTF-8"):
        load_plan_file(write)


def test_an_oversized_file_is_refused_before_it_is_read(write: Path) -> None:
    write.write_text("#" * 70_000)
    with pytest.raises(PlanFileError, match="longer than 65536 bytes"):
        load_plan_file(write)


def test_a_name_that_would_not_do_in_an_address_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "A plan.yaml"
    path.write_text(HEAD + PARTS)
    with pytest.raises(PlanFileError, match="the file's name"):
        load_plan_file(path)


def test_a_folder_a_dangling_link_and_depth_without_end_are_named_and_left_out(tmp_path: Path) -> None:
    (tmp_path / "a-folder.yaml").mkdir()
    (tmp_path / "a-link.yaml").symlink_to(tmp_path / "nowhere")
    (tmp_path / "deep.yaml").write_text("title: " + "[" * 5000)
    (tmp_path / "short-steady.yaml").write_text((FEW_PLANS / "short-steady.yaml").read_text())
    library = load_library(tmp_path)
    assert list(library.plans) == ["short-steady"]
    assert [damaged.reason for damaged in library.damaged] == [
        "it cannot be read: Is a directory",
        "it cannot be read: No such file or directory",
        "its lists or fields stand too deep in each other",
    ]
