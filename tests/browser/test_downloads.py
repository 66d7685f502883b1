"""A plan is taken away as a file, with a rower's splits or without; where it cannot be, that is said."""

from __future__ import annotations

import csv
import re
from pathlib import Path

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.targets import Target, button, field, heading, words

SPLITS = Target(role="checkbox", name="With the splits from your results")
NO_SIGNAL = words(re.compile("^Files are made by the server, so this needs signal"))


def download(chromium: Chromium, kind: str, to: Path) -> str:
    """Press the button of a kind; what then lies in the file, which is put there."""
    with chromium.page.expect_download() as coming:
        chromium.click(button(kind))
    chromium.see(words(f"Made: {coming.value.suggested_filename}"))
    coming.value.save_as(to / coming.value.suggested_filename)
    return (to / coming.value.suggested_filename).read_text(encoding="utf-8")


def test_a_file_is_made_with_the_rowers_splits_or_without_and_not_with_no_signal(
    chromium: Chromium, server: Server, tmp_path: Path
) -> None:
    chromium.open(server.url + "/plan/short-intervals")
    chromium.type(field("Time"), "7:42")
    chromium.press("Tab")
    chromium.see(words("Splits from your 2 km in 7:42.0. Your results"))
    chromium.click(button("Download"))
    with_splits = download(chromium, "Table", tmp_path)
    splits = {row["split"] for row in csv.DictReader(with_splits.splitlines())}
    assert "1:55.5" in splits
    assert (tmp_path / "Forty seconds at race pressure.csv").exists()
    chromium.click(SPLITS)
    assert "1:55.5" not in download(chromium, "Table", tmp_path)
    assert accessibility_faults(chromium) == []
    server.kill()
    chromium.click(button("Captions"))
    chromium.see(NO_SIGNAL)
    chromium.see(heading("Forty seconds at race pressure"))
    assert chromium.problems() == []
