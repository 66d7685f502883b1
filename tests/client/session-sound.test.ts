/** The sound of a session over a pretended loudspeaker: what is put on its clock, and what is taken back. */
import assert from "node:assert/strict";
import { afterEach, beforeEach, test } from "node:test";
import { SessionSound } from "../../static/src/state/session-sound.js";
import type { Cue } from "../../static/src/timeline/cue-window.js";

/** Seconds of the audio clock, and of the session. */
const clocks = { audio_s: 0, session_s: 0 };
/** The moments of the audio clock at which something begins to be heard. */
let put: { at_s: number }[] = [];

class Node {
  gain = { value: 0, setValueAtTime() {}, linearRampToValueAtTime() {}, exponentialRampToValueAtTime() {} };
  private mine: { at_s: number } | undefined;

  constructor(readonly context: unknown) {}

  connect<Other>(other: Other): Other {
    return other;
  }

  disconnect(): void {}

  start(at_s?: number): void {
    if (at_s !== undefined) put.push((this.mine = { at_s }));
  }

  stop(at_s?: number): void {
    if (at_s === undefined) put = put.filter((each) => each !== this.mine);
  }
}

class Context {
  state = "running";
  destination = {};
  get currentTime(): number {
    return (clocks.audio_s += 0.001);
  }
  getOutputTimestamp() {
    return { contextTime: clocks.audio_s, performanceTime: performance.now() };
  }
  async close(): Promise<void> {}
}

const pretended = { navigator: {}, AudioContext: Context, GainNode: Node, OscillatorNode: Node, DynamicsCompressorNode: Node };
const real = Object.fromEntries(Object.keys(pretended).map((name) => [name, (globalThis as Record<string, unknown>)[name]]));
beforeEach(() => {
  Object.assign(globalThis, pretended);
  Object.assign(clocks, { audio_s: 50, session_s: 100 });
  put = [];
});
afterEach(() => void Object.assign(globalThis, real));

/** A catch every second of the session. */
function cues(from_s: number, to_s: number): Cue[] {
  const found: Cue[] = [];
  for (let at_s = Math.ceil(from_s); at_s < to_s; at_s += 1) found.push({ kind: "catch", at_s });
  return found;
}

async function playing(): Promise<SessionSound> {
  const monoAt = (session_s: number) => performance.now() + (session_s - clocks.session_s) * 1000;
  const sound = new SessionSound({ cues, now_s: () => clocks.session_s, monoAt });
  await sound.wake();
  return sound;
}

const secondsFromNow = () => put.map(({ at_s }) => Math.round(at_s - clocks.audio_s)).sort((a, b) => a - b);

test("what comes within two seconds is put on the audio clock", async () => {
  await playing();
  assert.deepEqual(secondsFromNow(), [0, 1]);
});

test("while the page is hidden, 90 s are put on the audio clock, and nothing of it twice", async () => {
  Object.assign(globalThis, { document: { hidden: true } });
  const sound = await playing();
  sound.tick();
  Object.assign(globalThis, { document: undefined });
  assert.equal(put.length, 90);
});

test("when the device has slept, what had been scheduled is taken back, and the session goes on where it is", async () => {
  const sound = await playing();
  clocks.session_s += 41.5;
  sound.shifted(-41_500);
  const ahead = put.map(({ at_s }) => at_s - clocks.audio_s).filter((from_now_s) => from_now_s > 0.1);
  assert.equal(ahead.length, 2, `${ahead}`);
  ahead.forEach((from_now_s) => assert.ok(Math.abs((from_now_s % 1) - 0.5) < 0.1, `${ahead}`));
});

test("before the page stands still, nothing is left to be heard when it goes on", async () => {
  const sound = await playing();
  sound.hush();
  assert.deepEqual(put, []);
});

test("without a shift nothing is touched", async () => {
  const sound = await playing();
  const before = [...put];
  sound.shifted(0);
  assert.deepEqual(put, before);
});
