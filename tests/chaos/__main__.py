"""`make chaos`: random schedules in Chromium against the reference model; one by its seed with `SEED=...`."""

from __future__ import annotations

import os
import sys
import time
from collections import Counter

from tests.chaos.rig import WentWrongError, rigged

MOST_SHOWN = 5
PROGRESS = 50


def main(count: int, only: int | None) -> int:
    """Run them, and say how it went; status 1 when a place was not the model's."""
    seeds = range(count) if only is None else range(only, only + 1)
    happened: Counter[str] = Counter()
    wrong: list[int] = []
    begun, done = time.monotonic(), 0
    with rigged() as rig:
        for seed in seeds:
            try:
                happened.update(step.partition(" ")[2] for step in rig.run(seed).told)
            except WentWrongError as error:
                wrong.append(seed)
                print(f"{error}\n", flush=True)
            done += 1
            if done % PROGRESS == 0:
                print(f"{done} schedules so far, {len(wrong)} wrong", flush=True)
            if len(wrong) >= MOST_SHOWN:
                break
    for name, times in sorted(happened.items(), key=lambda item: (-item[1], item[0])):
        print(f"{name:32} {times:7}")
    print(f"{'things that happened':32} {happened.total():7}")
    print(f"{'seconds for a schedule':32} {(time.monotonic() - begun) / done:7.1f}")
    verdict = "all places as the model has them" if not wrong else f"wrong: {', '.join(map(str, wrong))}"
    print(f"{done} schedules, {len(wrong)} wrong: {verdict}.")
    return 1 if wrong else 0


if __name__ == "__main__":
    given = os.environ.get("SEED", "")
    sys.exit(main(int(os.environ.get("COUNT", "1000")), int(given) if given else None))
