"""What schedules run on: a server, and a browser on a commanded device with the plans in it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.device import DEVICE, Device
from tests.browser.engines import Options
from tests.chaos.plans import prepare
from tests.chaos.rowing import LostByTheBrowserError
from tests.chaos.schedule import Schedule


class WentWrongError(AssertionError):
    """What was found, after all that was done before it; to be had again by its seed."""


class Rig:
    """To be closed; after a schedule that went wrong the browser is a fresh one."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.server = Server(folder / "data")
        self.server.start()
        self.browsers: list[Chromium] = []
        self.fresh = False

    def run(self, seed: int) -> Schedule:
        """Run one schedule; WentWrongError tells it step by step."""
        if not self.fresh:
            self._renew()
        schedule = Schedule(self.device, self.addresses, seed)
        try:
            schedule.run()
        except LostByTheBrowserError:
            self.fresh = False
            schedule.told.append(f"{float(schedule.phone.now):.1f} database lost by the browser")
        except Exception as error:
            self.fresh = False
            told = "\n".join(f"  {step}" for step in schedule.told)
            raise WentWrongError(
                f"Seed {seed} (again: make chaos SEED={seed}):\n{told}\n  {error}"
            ) from error
        return schedule

    def close(self) -> None:
        for browser in self.browsers:
            browser.close()
        self.server.kill()

    def _renew(self) -> None:
        for browser in self.browsers:
            browser.close()
        self.browsers.append(Chromium(self.folder / f"profile-{len(self.browsers)}", Options(preload=DEVICE)))
        self.device = Device(self.browsers[-1], self.server)
        self.addresses = prepare(self.device)
        self.fresh = True


@contextmanager
def rigged() -> Iterator[Rig]:
    """A rig in a folder of its own, which is gone afterwards."""
    with TemporaryDirectory(prefix="chaos-") as folder:
        rig = Rig(Path(folder))
        try:
            yield rig
        finally:
            rig.close()
