"""What happens to a session, done to the app on its device and to the model, and compared after each."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from random import Random
from typing import Any

from tests.browser.device import Device
from tests.browser.processes import wait_until
from tests.browser.storage import NoDatabaseError, stored
from tests.browser.targets import button, heading
from tests.chaos.faces import BLUR, agrees, faces, shown
from tests.chaos.model import Block, Going, Held
from tests.chaos.phone import UNRECORDED, Phone

LOOK = Fraction(1, 5)
"""Time passes in fifths of a second, as the page looks."""
SAID = {"full": "No room left", "gone": "Nothing is stored just now"}
"""What the foot of the screen says while storage is in such a mood."""
ON = button(re.compile(r"^(\+1 min|From where I stopped.*|End it here|Back to the plans)$"))


class LostByTheBrowserError(Exception):
    """The browser, killed, has come back without its database: no page can help that."""


class Rowing:
    """A session under way; how long and how far things go is left to chance."""

    def __init__(self, device: Device, blocks: list[Block], chance: Random) -> None:
        self.device = device
        self.browser = device.browser
        self.chance = chance
        self.phone = Phone(blocks)
        self.mood = "well"
        self.unsaved = 0
        """How many entries of the log storage may not have, since it refused or had no time."""
        self.last_tap = self.last_press = Fraction(-1)

    # --- What a person does

    def press(self, name: str, does: str) -> None:
        self.browser.click(button(name))
        self.last_press = self.phone.now
        self._written(does)

    def say_done(self) -> None:
        self.tap(*self.chance.choice([("Done", 0), ("Done 5 s ago", 5), ("Done 10 s ago", 10)]))

    def tap(self, name: str, ago: int = 0) -> None:
        self.browser.click(button(name))
        self.last_tap = self.last_press = self.phone.now
        self._written("done", ago)

    def _written(self, does: str, *given: Any) -> None:
        self.phone.do(does, *given)
        self.device.settle()
        if self.mood != "well":
            self.unsaved += 1

    def answer(self, how: str) -> None:
        names = {
            "clock": "By the clock",
            "stopped": "From where I stopped",
            "end": "End (the session|it here)",
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

    def time_passes(self) -> None:
        self.pass_time(self._span(0.2, 15))

    def pass_time(self, seconds: Fraction) -> None:
        self.device.pass_time(float(seconds))
        self.phone.run(seconds)

    def _absence(self) -> Fraction:
        """Clearly short, clearly long."""
        return self._span(2.4, 50) if self.chance.random() < 0.6 else self._span(70, 500)

    def hide_for_a_while(self) -> None:
        self.device.hide()
        self.pass_time(Fraction(self.chance.randint(1, 20)))
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

    def freeze(self) -> None:
        seconds = self._absence()
        self.device.freeze(float(seconds))
        self.phone.away(seconds)

    def sleep(self) -> None:
        seconds = self._absence()
        self.device.sleep(float(seconds))
        self.phone.away(seconds + Fraction("0.6"))

    def move_clock(self) -> None:
        self.device.move_clock(self.chance.choice([3600, -3600, 26 * 3600, -90]))
        self.phone.run(Fraction("0.2"))

    # --- What becomes of the page

    def reload(self) -> None:
        away = self._span(0.2, 20)
        self._no_problems()
        self.device.reload(float(away))
        self.browser.see(ON.nth(0))
        self.device.settle()
        self.phone.away(away)

    def leave_and_return(self) -> None:
        away = self._absence()
        self._go(lambda: self.device.open("/healthz", float(away)), away)

    def kill(self) -> None:
        away = self._absence() + self.chance.choice([0, 0, 0, 3600, -3600, 13 * 3600])
        self._kill(away)

    def kill_at_once(self) -> None:
        """Right after a tap, which storage may or may not have by then."""
        self.browser.click(button("Hold"))
        self.phone.do("hold")
        self.unsaved += 1
        self._kill(self._absence())

    def _kill(self, away: Fraction) -> None:
        try:
            self._go(lambda: self.device.kill("/healthz", float(away)), away)
        except NoDatabaseError as error:
            raise LostByTheBrowserError from error

    def _go(self, leave: Callable[[], None], away: Fraction) -> None:
        """The page goes; what it has stored is read where the app is not; another page goes on with it."""
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

    def take_over(self) -> None:
        self._no_problems()
        self.device.new_tab("/row")
        self.browser.see(heading("This session is running in another tab"))
        self._come_back(Fraction(str(self.device.now())))
        self.browser.click(button("Take it over here"))
        self.browser.see(ON.nth(0))
        self.device.settle()
        self.device.close_other_tabs()

    # --- What storage does

    def drop_connections(self) -> None:
        self.device.drop_connections()

    def set_storage(self, mood: str) -> None:
        self.device.storage(mood)
        self.mood = mood
        self.pass_time(Fraction("1.2"))
        if mood == "well":
            self.see_all_stored()
            self.unsaved = 0

    def see_all_stored(self) -> None:
        """What waited is written when storage answers again, by itself."""
        wanted = self.phone.expected_log()
        wait_until(lambda: self._kinds() == wanted, f"the log {wanted}; it holds {self._kinds()}")

    def _kinds(self) -> list[str]:
        return [record["fact"]["kind"] for record in stored(self.browser, "facts")]

    # --- What has to be so

    def check(self) -> None:
        asked = self.phone.asked
        wanted = faces(self.phone.session, asked.since if asked else self.phone.now)
        titles = asked.titles if asked else {""}
        face = shown(self.browser)
        assert face["asks"] in titles, f"asked {face['asks']!r}, wanted one of {sorted(titles)}"
        assert any(agrees(face, one) for one in wanted), f"shown {face}\nwanted {wanted}"
        if self.mood != "well" and face["screen"] == "row-screen":
            # Before it is told, room is sought, or a connection, for as long as that takes.
            said = SAID[self.mood]
            wait_until(lambda: said in shown(self.browser)["kept"], f"the foot to say {said!r}")
        self._no_problems()

    def _no_problems(self) -> None:
        assert self.browser.problems() == []

    def counting(self, state: Going | Held) -> bool:
        return isinstance(state, Going) and self.phone.now < state.begins
