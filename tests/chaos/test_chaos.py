"""A dozen short random schedules in Chromium; `make chaos` runs a thousand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.device import DEVICE, Device
from tests.browser.engines import Browser
from tests.chaos import model
from tests.chaos.plans import prepare
from tests.chaos.schedule import Schedule

SEEDS = range(12)
AT_ONCE = 3
"""So many run in one browser, which takes as long to start as a schedule."""


@pytest.fixture
def device(launch: Launch, server: Server) -> Device:
    """Chromium on a commanded device, with the plans in it."""
    browser: Browser = launch("chromium", preload=DEVICE)
    return Device(browser, server)


@pytest.mark.parametrize("first", SEEDS[::AT_ONCE])
def test_whatever_happens_the_place_is_the_one_of_the_model(device: Device, first: int) -> None:
    addresses = prepare(device)
    for seed in SEEDS[first : first + AT_ONCE]:
        schedule = Schedule(device, addresses, seed)
        try:
            schedule.run()
        except AssertionError as error:
            told = "\n".join(schedule.told)
            raise AssertionError(f"seed {seed} (make chaos SEED={seed}):\n{told}\n{error}") from error


def test_a_place_that_is_a_second_off_is_found_out(device: Device, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(model, "START_COUNT", Fraction(11))
    with pytest.raises(AssertionError, match="shown"):
        Schedule(device, prepare(device), seed=0).run()
