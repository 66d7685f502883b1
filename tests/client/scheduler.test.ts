/** Cues on their way to the audio clock, over a pretended context. */
import assert from "node:assert/strict";
import { afterEach, beforeEach, test } from "node:test";
import { Scheduler, type Source } from "../../static/src/audio/scheduler.js";
import type { Cue } from "../../static/src/timeline/cue-window.js";

/** What a context was told to play: when, and whether it was taken back. */
interface Played {
  at_s: number;
  stopped: boolean;
}

let played: Played[] = [];
const context = { currentTime: 0 };
const bus = { context } as unknown as AudioNode;

class Oscillator {
  private readonly mine: Played = { at_s: NaN, stopped: false };
  onended: (() => void) | null = null;
  connect<Node>(node: Node): Node {
    return node;
  }
  disconnect(): void {}
  start(at_s: number): void {
    this.mine.at_s = at_s;
    played.push(this.mine);
  }
  stop(at_s?: number): void {
    if (at_s === undefined) this.mine.stopped = true;
  }
}

class Gain {
  gain = { setValueAtTime() {}, linearRampToValueAtTime() {}, exponentialRampToValueAtTime() {} };
  connect<Node>(node: Node): Node {
    return node;
  }
  disconnect(): void {}
}

const real = { OscillatorNode: globalThis.OscillatorNode, GainNode: globalThis.GainNode };
beforeEach(() => {
  Object.assign(globalThis, { OscillatorNode: Oscillator, GainNode: Gain });
  played = [];
  context.currentTime = 0;
});
afterEach(() => void Object.assign(globalThis, real));

/** A catch every second of the session; the context's clock is 100 s ahead of it. */
const everySecond: Source = {
  cues: (from_s, to_s) => {
    const cues: Cue[] = [];
    for (let at_s = Math.ceil(from_s); at_s < to_s; at_s += 1) cues.push({ kind: "catch", at_s });
    return cues;
  },
  audioTime: (session_s) => session_s + 100,
};

/** Wakes the scheduler at these seconds of the session. */
function wake(scheduler: Scheduler, moments: number[], ahead_s = 2): void {
  for (const now_s of moments) {
    context.currentTime = now_s + 100;
    scheduler.fill(everySecond, bus, now_s, ahead_s);
  }
}

const times = () => played.filter(({ stopped }) => !stopped).map(({ at_s }) => at_s);

test("however often it is woken, each cue is scheduled once, at its moment", () => {
  wake(new Scheduler(), [0.5, 0.7, 1.9, 2, 3.5, 3.6]);
  assert.deepEqual(times(), [101, 102, 103, 104, 105]);
});

test("a wake-up that comes 1.9 s late misses nothing", () => {
  wake(new Scheduler(), [0.5, 2.4, 4.3]);
  assert.deepEqual(times(), [101, 102, 103, 104, 105, 106]);
});

test("what was missed while frozen is not heard in a burst", () => {
  wake(new Scheduler(), [0.5, 60.5]);
  assert.deepEqual(times(), [101, 102, 161, 162]);
});

test("a cue that is only just late is heard at once", () => {
  wake(new Scheduler(), [1.1]);
  assert.deepEqual(times(), [101.1, 102, 103]);
});

test("hidden, it is scheduled 90 s ahead, and back in sight nothing comes twice", () => {
  const scheduler = new Scheduler();
  wake(scheduler, [0.5], 90);
  wake(scheduler, [1, 2, 3]);
  assert.equal(times().length, 90);
});

test("a hold takes back what has not been heard, and going on schedules it anew", () => {
  const scheduler = new Scheduler();
  wake(scheduler, [0.5], 90);
  scheduler.cancel(3);
  assert.deepEqual(times(), []);
  wake(scheduler, [3]);
  assert.deepEqual(times(), [103, 104]);
});

/** The same session, when the context's clock is found to be another number of seconds ahead of it. */
const ahead = (seconds: number): Source => ({ ...everySecond, audioTime: (session_s) => session_s + seconds });

test("when the clocks' tie has moved by a millisecond, what is scheduled moves too, and no cue is lost or doubled", () => {
  for (const now_s of [0.5, 0.97, 0.999, 1, 1.03]) {
    played = [];
    const scheduler = new Scheduler();
    wake(scheduler, [now_s], 3);
    context.currentTime = now_s + 100;
    scheduler.retune(bus.context, "moved");
    scheduler.fill(ahead(100.001), bus, now_s + 0.001, 3);
    assert.deepEqual(times().map(Math.floor), [101, 102, 103, 104].slice(0, times().length));
    assert.ok(times().length >= 3);
    assert.ok(times().slice(1).every((at_s) => Math.abs((at_s % 1) - 0.001) < 1e-9), `${times()}`);
  }
});

test("when the audio clock has stood still for half a minute, what it held is left out and the beat is where it belongs", () => {
  const scheduler = new Scheduler();
  wake(scheduler, [0.5], 90);
  scheduler.retune(bus.context, "jumped");
  scheduler.fill(ahead(70), bus, 30.6, 2);
  assert.deepEqual(times(), [101, 102]);
});
