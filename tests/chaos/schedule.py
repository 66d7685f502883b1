"""A random schedule: what a rower, the phone and its storage do to a session, one thing after the other, by a seed.

After each, the place shown is held against the model's. What is chosen depends on the seed and the model alone, so
that a schedule can be run again by its seed.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from functools import partial
from random import Random
from typing import Any

from planner.notation.reader import read
from planner.timeline import compile_timeline
from tests.browser.device import Device
from tests.browser.processes import wait_until
from tests.browser.storage import clear_stored, stored
from tests.browser.targets import button, field, heading
from tests.chaos.faces import BLUR, agrees, clock, faces, rounded, shown
from tests.chaos.model import Going, Held, blocks_of
from tests.chaos.phone import UNRECORDED, Phone

PLANS = {
    "Chaos by the clock": """\
title: Chaos by the clock
warm-up
20" r20 light
10" rest
40" r24 half
15 strokes r30 full
12" light
gap 1'
main
30" r26 race
20" r22 half
cool-down
25" r18 light
""",
    "Chaos by taps": """\
title: Chaos by taps
main
100m r28 @2:00
20" rest
open r18 light
2 x 30" r26 full / 15" rest
200m r24
30" r20 light
""",
}
STEPS = 14
LOOK = Fraction(1, 5)
"""Time passes in fifths of a second, as the page looks."""
SAID = {"full": "No room left", "gone": "Nothing is stored just now"}
"""What the foot of the screen says while storage is in such a mood."""
ON = button(re.compile(r"^(\+1 min|From where I stopped.*|End it and keep what I rowed|Back to the plans)$"))

Act = tuple[str, Callable[[], None]]


class Schedule:
    """One session under way, in the app and in the model; `told` is what was done so far, to be read by people."""

    def __init__(self, device: Device, addresses: dict[str, str], seed: int) -> None:
        self.device = device
        self.browser = device.browser
        self.chance = Random(seed)
        self.told: list[str] = []
        self.mood = "well"
        self.unsaved = 0
        """How many entries of the log storage may not have, since it refused or had no time."""
        self.last_tap = Fraction(-1)
        title = self.chance.choice(sorted(addresses))
        self.address = addresses[title]
        self.phone = Phone(blocks_of(compile_timeline(read(PLANS[title]))))

    def run(self) -> None:
        """Row it; AssertionError at the first thing that is not as the model has it."""
        self._start()
        self._check()
        for _ in range(STEPS):
            if self.phone.over():
                break
            name, act = self.chance.choice(self._possible())
            self.told.append(f"{float(self.phone.now):.1f} {name}")
            act()
            self._check()
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
            self._storage("well")
        if self.phone.asked:
            self._answer("end")
        elif not self.phone.over():
            self.told.append(f"{float(self.phone.now):.1f} end")
            self.browser.click(button("End"))
            self.browser.click(button("End it and keep what I rowed"))
            self.phone.do("end")
        self._check()
        self._all_stored()
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
        happen: list[Act] = 3 * [("time passes", self._time_passes)]
        happen += [("hidden for a while", self._hidden), ("frozen", self._frozen), ("asleep", self._asleep)]
        happen += [("clock moved", self._clock_moved), ("connections dropped", self._dropped)]
        if isinstance(state, Held):
            happen += 3 * [("go on", lambda: self._press("Go on", "go_on"))]
        else:
            happen += [("hold", lambda: self._press("Hold", "hold"))]
        happen += [("back", lambda: self._press("Back", "back"))]
        if self.phone.at(self.phone.now).can_extend(self.phone.now):
            happen += [("one more minute", lambda: self._press("+1 min", "extend"))]
        gap_on_screen = block.kind == "gap" and not self._counting(state)
        if state.index + 1 < len(self.phone.blocks) and not gap_on_screen:
            happen += [("skip", lambda: self._press("Skip", "skip"))]
        if self.phone.now - self.last_tap > 1:
            if gap_on_screen:
                happen += [("start now", lambda: self._tap("Start now"))]
            elif block.ends in ("metres", "tap") and not self._counting(state):
                happen += 2 * [("done", self._done)]
        if self.mood == "well":
            happen += [
                ("reload", self._reload),
                ("left and opened again", self._left),
                ("killed", self._killed),
            ]
            happen += (
                [("killed at once after a hold", self._killed_at_once)] if isinstance(state, Going) else []
            )
            happen += [("taken over by another tab", self._taken_over)]
            happen += [(f"storage {mood}", partial(self._storage, mood)) for mood in SAID]
        else:
            happen += 2 * [("storage well", lambda: self._storage("well"))]
        return happen

    def _answers(self) -> list[Act]:
        assert self.phone.asked
        kind = self.phone.asked.kind
        answers = {"choose": ("clock", "stopped", "end"), "unsure": ("stopped", "end"), "too-old": ("end",)}[
            kind
        ]
        happen: list[Act] = [(f"answer {how}", partial(self._answer, how)) for how in answers]
        happen += [("time passes", self._time_passes)]
        if self.mood == "well":
            happen += [("left and opened again", self._left), ("killed", self._killed)]
        return happen

    # --- What a person does

    def _press(self, name: str, does: str) -> None:
        self.browser.click(button(name))
        self._written(does)

    def _done(self) -> None:
        self._tap(*self.chance.choice([("Done", 0), ("Done 5 s ago", 5), ("Done 10 s ago", 10)]))

    def _tap(self, name: str, ago: int = 0) -> None:
        self.browser.click(button(name))
        self.last_tap = self.phone.now
        self._written("done", ago)

    def _written(self, does: str, *given: Any) -> None:
        self.phone.do(does, *given)
        self.device.settle()
        if self.mood != "well":
            self.unsaved += 1

    def _answer(self, how: str) -> None:
        names = {
            "clock": "By the clock",
            "stopped": "From where I stopped",
            "end": "End (the session|it and keep)",
        }
        self.browser.click(button(re.compile(f"^{names[how]}")))
        before = len(self.phone.session.log)
        self.phone.answer(how)
        self.device.settle()
        if self.mood != "well":
            self.unsaved += len(self.phone.session.log) - before

    # --- What time does

    def _span(self, low: float, high: float) -> Fraction:
        """So many seconds, in the steps of the page's looks."""
        return self.chance.randint(int(low * 5), int(high * 5)) * LOOK

    def _time_passes(self) -> None:
        self._pass(self._span(0.2, 15))

    def _pass(self, seconds: Fraction) -> None:
        self.device.pass_time(float(seconds))
        self.phone.run(seconds)

    def _absence(self) -> Fraction:
        """Clearly short, clearly long."""
        return self._span(2.4, 50) if self.chance.random() < 0.6 else self._span(70, 500)

    def _hidden(self) -> None:
        self.device.hide()
        self._pass(Fraction(self.chance.randint(1, 20)))
        if self.chance.random() < 0.4:
            seconds = self._absence()
            self.device.freeze(float(seconds))
            self.phone.away(seconds)
        elif self.chance.random() < 0.5:
            # Behind another page a clock put forward cannot be told from a sleep; one put back can.
            forward = self.chance.random() < 0.5
            self.device.move_clock(3600 if forward else -3600)
            self.device.pass_time(1)
            if forward:
                self.phone.away(Fraction(3601))
                self.phone.run(Fraction("0.2"))
            else:
                self.phone.run(Fraction("1.2"))
        self.device.show()

    def _frozen(self) -> None:
        seconds = self._absence()
        self.device.freeze(float(seconds))
        self.phone.away(seconds)

    def _asleep(self) -> None:
        seconds = self._absence()
        self.device.sleep(float(seconds))
        self.phone.away(seconds + Fraction("0.6"))

    def _clock_moved(self) -> None:
        self.device.move_clock(self.chance.choice([3600, -3600, 26 * 3600, -90]))
        self.phone.run(Fraction("0.2"))

    # --- What becomes of the page

    def _reload(self) -> None:
        away = self._span(0.2, 20)
        self._no_problems()
        self.device.reload(float(away))
        self.browser.see(ON.nth(0))
        self.device.settle()
        self.phone.away(away)

    def _left(self) -> None:
        away = self._absence()
        self._go(lambda: self.device.open("/healthz", float(away)), away)

    def _killed(self) -> None:
        away = self._absence() + self.chance.choice([0, 0, 0, 3600, -3600, 13 * 3600])
        self._go(lambda: self.device.kill("/healthz", float(away)), away)

    def _killed_at_once(self) -> None:
        """Right after a tap, which storage may or may not have by then."""
        self.browser.click(button("Hold"))
        self.phone.do("hold")
        self.unsaved += 1
        away = self._absence()
        self._go(lambda: self.device.kill("/healthz", float(away)), away)

    def _go(self, leave: Callable[[], None], away: Fraction) -> None:
        """The page goes; what it has stored is read where the app does not run, and another page goes on with it."""
        self._no_problems()
        wall = Fraction(str(self.device.now())) + away
        leave()
        self._come_back(wall)
        self.device.open("/row")
        self.browser.see(ON.nth(0))
        self.device.settle()

    def _come_back(self, wall: Fraction) -> None:
        heartbeat = stored(self.browser, "heartbeats")[0]
        recorded, now = Fraction(str(heartbeat["session_s"])), self.phone.now
        assert recorded <= now + BLUR, f"recorded {float(recorded)} s, and it was {float(now)} s"
        assert self.phone.asked or now - recorded <= UNRECORDED, f"{float(now - recorded)} s are not recorded"
        self.phone.come_back(heartbeat, self._kinds(), wall, self.unsaved)
        self.unsaved = 0

    def _taken_over(self) -> None:
        self._no_problems()
        self.device.new_tab("/row")
        self.browser.see(heading("This session is running in another tab"))
        self._come_back(Fraction(str(self.device.now())))
        self.browser.click(button("Take it over here"))
        self.browser.see(ON.nth(0))
        self.device.settle()
        self.device.close_other_tabs()

    # --- What storage does

    def _dropped(self) -> None:
        self.device.drop_connections()

    def _storage(self, mood: str) -> None:
        self.device.storage(mood)
        self.mood = mood
        self._pass(Fraction("1.2"))
        if mood == "well":
            self._all_stored()
            self.unsaved = 0

    def _all_stored(self) -> None:
        """What waited is written when storage answers again, by itself."""
        wanted = self.phone.expected_log()
        wait_until(lambda: self._kinds() == wanted, f"the log {wanted}; it holds {self._kinds()}")

    def _kinds(self) -> list[str]:
        return [record["fact"]["kind"] for record in stored(self.browser, "facts")]

    # --- What has to be so

    def _check(self) -> None:
        asked = self.phone.asked
        wanted = faces(self.phone.session, asked.since if asked else self.phone.now)
        titles = asked.titles if asked else {""}
        face = shown(self.browser)
        assert face["asks"] in titles, f"asked {face['asks']!r}, wanted one of {sorted(titles)}"
        assert any(agrees(face, one) for one in wanted), f"shown {face}\nwanted {wanted}"
        if self.mood != "well" and face["screen"] == "row-screen":
            assert SAID[self.mood] in face["kept"], (
                f"storage is {self.mood}, and the foot says {face['kept']!r}"
            )
        self._no_problems()

    def _no_problems(self) -> None:
        assert self.browser.problems() == []

    def _counting(self, state: Going | Held) -> bool:
        return isinstance(state, Going) and self.phone.now < state.begins


def prepare(device: Device) -> dict[str, str]:
    """Writes the plans in a browser that has none, and reads the cautions; the address of each plan by its title."""
    browser, addresses = device.browser, {}
    for title, text in PLANS.items():
        browser.open(device.server.url)
        browser.type(field("Write or paste your own"), text)
        browser.click(button("Make this plan"))
        browser.see(heading(title))
        addresses[title] = str(browser.evaluate("() => location.href"))
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.see(button("Start rowing"))
    return addresses
