"""A random schedule: what a rower, the phone and its storage do to a session, one after the other, by a seed.

After each the place shown is held against the model's. What is chosen depends on the seed and the model, so
that a schedule can be run again by its seed.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from functools import partial
from random import Random

from planner.notation.reader import read
from planner.timeline import compile_timeline
from tests.browser.device import Device
from tests.browser.processes import wait_until
from tests.browser.storage import clear_stored, stored
from tests.browser.targets import button
from tests.chaos.faces import BLUR, clock, rounded, shown
from tests.chaos.model import Going, Held, blocks_of
from tests.chaos.plans import PLANS
from tests.chaos.rowing import LOOK, SAID, Rowing

STEPS = 14
SLIP = Fraction("0.3")
"""Presses nearer than this count as one."""
ANSWERS = {"choose": ("clock", "stopped", "end"), "unsure": ("stopped", "end"), "too-old": ("end",)}
Act = tuple[str, Callable[[], None]]


class Schedule(Rowing):
    """One session from its start to its end; `told` is what was done so far, to be read by people."""

    def __init__(self, device: Device, addresses: dict[str, str], seed: int) -> None:
        chance = Random(seed)
        title = chance.choice(sorted(addresses))
        super().__init__(device, blocks_of(compile_timeline(read(PLANS[title]))), chance)
        self.address = addresses[title]
        self.told: list[str] = []

    def run(self) -> None:
        """Row it; AssertionError at the first thing that is not as the model has it."""
        self._start()
        self.check()
        for _ in range(STEPS):
            self._wait_for_a_clear_moment()
            if self.phone.over():
                break
            name, act = self.chance.choice(self._possible())
            self.told.append(f"{float(self.phone.now):.1f} {name}")
            act()
            self.check()
        self._finish()

    # --- Before and after

    def _start(self) -> None:
        self.browser.open(self.device.server.url + "/healthz")
        clear_stored(self.browser, ["sessions", "facts", "heartbeats", "log"])
        self.browser.open(self.address)
        self.browser.click(button("Row it"))
        self.browser.click(button("Start rowing"))
        self.browser.see(button("Skip"))
        self.device.settle()

    def _finish(self) -> None:
        """Ends it if it is not over, and holds what was stored and counted against the model."""
        if self.mood != "well":
            self.set_storage("well")
        self._wait_for_a_clear_moment()
        if self.phone.asked:
            self.answer("end")
        elif not self.phone.over():
            self.told.append(f"{float(self.phone.now):.1f} end")
            self.browser.click(button("End"))
            self.browser.click(button(re.compile("^End it ")))
            self.phone.do("end")
        self.check()
        self.see_all_stored()
        wait_until(lambda: len(stored(self.browser, "log")) == 1, "the session in the log")
        assert stored(self.browser, "sessions") == []
        rowed = self.phone.at(self.phone.now).gone_through
        told = shown(self.browser)["rowed"].partition(",")[0]
        assert told in {clock(rounded(rowed - BLUR)), clock(rounded(rowed + BLUR))}, (
            f"the end screen counts {told}, the model {float(rowed):.2f} s"
        )

    # --- What may happen next

    def _possible(self) -> list[Act]:
        if self.phone.asked:
            return self._answers()
        state = self.phone.at(self.phone.now).state
        assert isinstance(state, Going | Held)
        block = self.phone.at(self.phone.now).blocks[state.index]
        happen: list[Act] = 3 * [("time passes", self.time_passes)]
        happen += [
            ("hidden for a while", self.hide_for_a_while),
            ("frozen", self.freeze),
            ("asleep", self.sleep),
        ]
        happen += [("clock moved", self.move_clock), ("connections dropped", self.drop_connections)]
        gap_on_screen = block.kind == "gap" and not self.counting(state)
        if self.phone.now - self.last_press > SLIP:
            happen += self._presses(state, gap_on_screen)
        if self.phone.now - self.last_tap > 1:
            if gap_on_screen:
                happen += [("start now", lambda: self.tap("Start now"))]
            elif block.ends in ("metres", "tap") and not self.counting(state):
                happen += 2 * [("done", self.say_done)]
        if self.mood == "well":
            happen += [
                ("reload", self.reload),
                ("left and opened again", self.leave_and_return),
                ("killed", self.kill),
            ]
            happen += [("killed at once after a hold", self.kill_at_once)] if isinstance(state, Going) else []
            happen += [("taken over by another tab", self.take_over)]
            happen += [(f"storage {mood}", partial(self.set_storage, mood)) for mood in SAID]
        else:
            happen += 2 * [("storage well", lambda: self.set_storage("well"))]
        return happen

    def _presses(self, state: Going | Held, gap_on_screen: bool) -> list[Act]:
        happen: list[Act] = [("back", lambda: self.press("Back", "back"))]
        if isinstance(state, Held):
            happen += 3 * [("go on", lambda: self.press("Go on", "go_on"))]
        else:
            happen += [("hold", lambda: self.press("Hold", "hold"))]
        if self.phone.at(self.phone.now).can_extend(self.phone.now):
            happen += [("one more minute", lambda: self.press("+1 min", "extend"))]
        if state.index + 1 < len(self.phone.blocks) and not gap_on_screen:
            happen += [("skip", lambda: self.press("Skip", "skip"))]
        return happen

    def _answers(self) -> list[Act]:
        assert self.phone.asked
        answers = ANSWERS[self.phone.asked.kind]
        if not self.phone.is_clear(self.phone.asked.since):
            answers = tuple(how for how in answers if how != "stopped")
        happen: list[Act] = [(f"answer {how}", partial(self.answer, how)) for how in answers]
        happen += [("time passes", self.time_passes)]
        if self.mood == "well":
            happen += [("left and opened again", self.leave_and_return), ("killed", self.kill)]
        return happen

    def _wait_for_a_clear_moment(self) -> None:
        """The app's clock may be a millisecond off after a reload: nothing is done that near to a change."""
        while not self.phone.is_clear():
            self.pass_time(LOOK)
