"""A phone call takes the sound of a session, and may hand back what only says that it runs."""

from __future__ import annotations

import re

import pytest

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.targets import button, heading, words
from tests.browser.test_rowing_offline import save_the_plan

# What a call does to the contexts there are: they are interrupted; afterwards they say that they run, and
# stand still. Where a tap is needed, later ones stay suspended without it. Sounds that begin are counted.
CALLS = """(() => {
  const [state, time] = ["state", "currentTime"].map((name) =>
    Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, name).get);
  const taken = new Map();
  const all = new Set();
  let tapped = -Infinity;
  addEventListener("click", () => (tapped = performance.now()), true);
  const mayPlay = () => !phone.needsTap || performance.now() - tapped < 1000;
  const { resume } = AudioContext.prototype;
  const { start } = OscillatorNode.prototype;
  window.phone = {
    call() { for (const one of all) taken.set(one, { at: time.call(one), says: "interrupted" }); },
    hangUp() { for (const told of taken.values()) told.says = "running"; },
    needsTap: false, made: 0, begun: 0,
  };
  window.AudioContext = class extends AudioContext {
    constructor(...given) {
      super(...given);
      all.add(this);
      phone.made += 1;
      if (!mayPlay()) this.suspend();
    }
    get state() { return taken.get(this)?.says ?? state.call(this); }
    get currentTime() { return taken.get(this)?.at ?? time.call(this); }
    getOutputTimestamp() { return {}; }
    async resume() {
      if (taken.get(this)?.says === "interrupted") throw new DOMException("interrupted", "InvalidStateError");
      if (mayPlay()) await resume.call(this);
    }
  };
  OscillatorNode.prototype.start = function (...given) {
    if (!taken.has(this.context)) phone.begun += 1;
    return start.apply(this, given);
  };
})();"""
LOST = button("Sound is lost. Tap here")


@pytest.fixture
def rowing(launch: Launch, server: Server) -> Browser:
    """Rowing with sound, and the server gone."""
    browser = launch("chromium", preload=CALLS)
    save_the_plan(browser, server)
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.see(words(re.compile("silent when locked, or in a call: keep it unlocked")))
    browser.click(button("Start rowing"))
    browser.see(button("Skip"))
    server.kill()
    browser.wait_for("() => phone.begun > 0")
    assert not browser.count(LOST)
    return browser


def test_sound_that_comes_back_from_a_call_standing_still_is_made_anew_by_itself(rowing: Browser) -> None:
    rowing.evaluate("() => { phone.call(); }")
    rowing.see(LOST)
    assert accessibility_faults(rowing) == []
    rowing.evaluate("() => { phone.begun = 0; phone.hangUp(); }")
    rowing.see_gone(LOST)
    rowing.wait_for("() => phone.begun > 3")
    assert rowing.problems() == []


def test_where_the_system_asks_for_a_tap_the_banner_waits_for_it(rowing: Browser) -> None:
    rowing.evaluate("() => { phone.needsTap = true; phone.call(); phone.hangUp(); }")
    rowing.see(LOST)
    rowing.wait_for("() => phone.made > 1")
    assert rowing.count(LOST), "what was made anew is silent until a tap"
    rowing.evaluate("() => { phone.begun = 0; }")
    rowing.click(LOST)
    rowing.see_gone(LOST)
    rowing.wait_for("() => phone.begun > 3")
    assert rowing.problems() == []


def test_in_the_gap_lost_sound_is_said_too(rowing: Browser, server: Server) -> None:
    rowing.click(button("End"))
    rowing.click(button("End it here"))
    server.start()
    rowing.open(server.url + "/plan/stroke-pyramid")
    rowing.click(button("Row it"))
    rowing.click(button("Start rowing"))
    while not rowing.count(button("Start now")):
        rowing.click(button("Skip"))
    rowing.see(heading("Gap"))
    rowing.evaluate("() => { phone.call(); }")
    rowing.see(LOST)
    assert accessibility_faults(rowing) == []
