"""`make chaos`: random schedules in Chromium against the reference model; one by its seed with `SEED=...`."""

from __future__ import annotations

import os
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.device import DEVICE, Device
from tests.browser.engines import Options
from tests.chaos.plans import prepare
from tests.chaos.schedule import Schedule

MOST_SHOWN = 5
PROGRESS = 50


class Rig:
    """A server, and a browser with the plans in it; after a schedule that went wrong there is a fresh one."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.server = Server(folder / "data")
        self.server.start()
        self.browsers: list[Chromium] = []
        self.fresh()

    def fresh(self) -> None:
        for browser in self.browsers:
            browser.close()
        self.browsers.append(Chromium(self.folder / f"profile-{len(self.browsers)}", Options(preload=DEVICE)))
        self.device = Device(self.browsers[-1], self.server)
        self.addresses = prepare(self.device)

    def close(self) -> None:
        for browser in self.browsers:
            browser.close()
        self.server.kill()


def main(count: int, only: int | None) -> int:
    seeds = range(count) if only is None else range(only, only + 1)
    happened: Counter[str] = Counter()
    wrong: list[int] = []
    begun = time.monotonic()
    with tempfile.TemporaryDirectory(prefix="chaos-") as folder:
        rig = Rig(Path(folder))
        try:
            for seed in seeds:
                schedule = Schedule(rig.device, rig.addresses, seed)
                try:
                    schedule.run()
                except Exception as error:  # noqa: BLE001 - whatever it is, it is told with its seed
                    wrong.append(seed)
                    print(f"Seed {seed} went wrong (run it again: make chaos SEED={seed}):")
                    print("\n".join(f"  {step}" for step in schedule.told))
                    print(f"  {error}\n", flush=True)
                    if len(wrong) >= MOST_SHOWN:
                        break
                    rig.fresh()
                if (seed - seeds[0] + 1) % PROGRESS == 0:
                    print(f"{seed - seeds[0] + 1} schedules so far, {len(wrong)} wrong", flush=True)
                happened.update(step.partition(" ")[2] for step in schedule.told)
        finally:
            rig.close()
    done = len(seeds) if len(wrong) < MOST_SHOWN else wrong[-1] + 1 - seeds[0]
    for name, times in sorted(happened.items(), key=lambda item: (-item[1], item[0])):
        print(f"{name:32} {times:7}")
    print(f"{'things that happened':32} {happened.total():7}")
    print(f"{'seconds for a schedule':32} {(time.monotonic() - begun) / max(1, done):7.1f}")
    verdict = "all places as the model has them" if not wrong else f"wrong: {', '.join(map(str, wrong))}"
    print(f"{done} schedules, {len(wrong)} wrong: {verdict}.")
    return 1 if wrong else 0


if __name__ == "__main__":
    given = os.environ.get("SEED", "")
    sys.exit(main(int(os.environ.get("COUNT", "1000")), int(given) if given else None))
