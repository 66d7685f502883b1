"""What is said and felt, with a voice and a shaking device made here: the test machine has neither."""

from __future__ import annotations

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.targets import Target, button, heading, words
from tests.browser.writing import write_plan

PLAN = 'title: Short\nmain\n15" r24 half\n  call at 2: Long arms\n20" r28 full\n'

# A voice of the device that takes a second for everything, one of the network, and a hand that feels.
VOICE = """(() => {
  window.said = []; window.felt = [];
  const voice = (name, localService) => ({ name, voiceURI: name, localService, lang: "en-GB" });
  const voices = [voice("Far", false), voice("Anna", true), voice("Ben", true)];
  const speech = {
    speaking: false, pending: false, getVoices: () => voices, addEventListener() {}, removeEventListener() {},
    cancel() { this.speaking = false; },
    speak(sentence) {
      if (sentence.text === " ") return;
      window.said.push([sentence.text, sentence.voice.name, this.speaking]);
      this.speaking = true;
      setTimeout(() => (this.speaking = false), 1000);
    },
  };
  Object.defineProperty(window, "speechSynthesis", { value: speech });
  window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
  Object.defineProperty(navigator, "vibrate", { value: (pattern) => window.felt.push(pattern) > 0 });
})();"""


def test_the_next_block_and_the_calls_are_said_and_changes_are_felt(launch: Launch, server: Server) -> None:
    browser = launch("chromium", preload=VOICE)
    browser.open(server.url + "/settings")
    browser.see(heading("Heard, said and felt"))
    browser.click(Target(role="radio", name="Catch alone"))
    browser.see(words("Whose voice"))
    assert accessibility_faults(browser) == []
    write_plan(browser, server, PLAN)
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.click(button("Start rowing"))
    browser.see(button("Skip"))
    said = browser.wait_for("() => window.said.length >= 3 && window.said")
    assert said == [
        ["Next, 15 seconds, rate 24, half pressure.", "Anna", False],
        ["Long arms", "Anna", False],
        ["Next, 20 seconds, rate 28, full pressure.", "Anna", False],
    ]
    browser.wait_for("() => window.felt.some((pattern) => pattern[0] === 400)")
    browser.click(button("Hold"))


def test_a_device_without_a_voice_says_so(launch: Launch, server: Server) -> None:
    browser = launch("chromium", preload=VOICE.replace('voice("Anna", true), voice("Ben", true)', ""))
    browser.open(server.url + "/settings")
    browser.see(
        words(
            "This device has no English voice that works without a signal, so nothing is spoken. "
            "Tones still mark every change."
        )
    )
