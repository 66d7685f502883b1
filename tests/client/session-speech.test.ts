/** The voice of a session, with a platform's speech that is made here. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { Voice, type Speech } from "../../static/src/audio/voice.js";
import { SessionSpeech } from "../../static/src/state/session-speech.js";
import type { Spoken } from "../../static/src/timeline/spoken.js";

const voice = (name: string, localService: boolean, lang = "en-GB") => ({ name, localService, lang, voiceURI: name, default: false });
const WISH = { uri: "here", volume: 0.5 };

class FakeSpeech implements Speech {
  said: string[] = [];
  voices = [voice("far", false), voice("here", true), voice("ici", true, "fr-FR")];
  speaking = false;
  pending = false;
  speak({ text }: { text: string }): void {
    assert.equal(this.speaking, false, "two at once");
    this.said.push(text);
    this.speaking = text !== " ";
  }
  cancel(): void {
    this.said.push("/");
    this.speaking = false;
  }
  getVoices = () => this.voices as SpeechSynthesisVoice[];
  addEventListener(): void {}
  removeEventListener(): void {}
}

function speechOf(spoken: Spoken[], wish: () => typeof WISH | undefined = () => WISH) {
  const platform = new FakeSpeech();
  const made = new Voice(platform, (text) => ({ text }) as SpeechSynthesisUtterance);
  return { platform, made, speech: new SessionSpeech({ spoken: (from_s, to_s) => spoken.filter(({ at_s }) => at_s >= from_s && at_s < to_s), wish }, made) };
}

test("only voices of the device that speak the app's language are offered", async () => {
  const { made } = speechOf([]);
  assert.deepEqual((await made.voices()).map(({ name }) => name), ["here"]);
  assert.deepEqual(await new Voice(undefined).voices(), []);
});

test("where there is no such voice nothing is said, and nothing fails", () => {
  const { platform, speech } = speechOf([{ kind: "next", text: "Rest.", at_s: 1, silent_s: 7 }]);
  platform.voices = [voice("far", false)];
  speech.wake();
  [0, 0.5, 1.2].forEach((now_s) => speech.tick(now_s));
  assert.deepEqual(platform.said, []);
});

test("what is due is said once, and it is silent by the change", () => {
  const { platform, speech } = speechOf([{ kind: "next", text: "Rest.", at_s: 1, silent_s: 7 }]);
  [0, 0.5, 1.2, 1.5, 6.9].forEach((now_s) => speech.tick(now_s));
  assert.deepEqual(platform.said, ["Rest."]);
  speech.tick(7);
  assert.deepEqual(platform.said, ["Rest.", "/"]);
});

test("a call waits for nobody: it is left out while something is being said, and the next block cuts it short", () => {
  const { platform, speech } = speechOf([
    { kind: "call", text: "Long.", at_s: 1, silent_s: 5 }, { kind: "call", text: "Tall.", at_s: 2, silent_s: 5 },
    { kind: "next", text: "Rest.", at_s: 5, silent_s: 11 },
  ]);
  [0, 1.1, 2.1, 4.9, 5.1].forEach((now_s) => speech.tick(now_s));
  assert.deepEqual(platform.said, ["Long.", "/", "Rest."]);
});

test("what was missed for more than a second is not said late", () => {
  const { platform, speech } = speechOf([{ kind: "call", text: "Long.", at_s: 1, silent_s: 50 }, { kind: "call", text: "Tall.", at_s: 29.5, silent_s: 50 }]);
  [0, 30].forEach((now_s) => speech.tick(now_s));
  assert.deepEqual(platform.said, ["Tall."]);
});

test("a change of the session cuts it short, and so does a voice that is no longer wanted", () => {
  let wish: typeof WISH | undefined = WISH;
  const { platform, speech } = speechOf([{ kind: "call", text: "Long.", at_s: 1, silent_s: 50 }, { kind: "call", text: "Tall.", at_s: 9, silent_s: 50 }], () => wish);
  [0, 1.1].forEach((now_s) => speech.tick(now_s));
  speech.replan(3);
  [4, 9.1].forEach((now_s) => speech.tick(now_s));
  assert.deepEqual(platform.said, ["Long.", "/", "Tall."]);
  wish = undefined;
  speech.tick(9.3);
  assert.equal(platform.speaking, false);
});
