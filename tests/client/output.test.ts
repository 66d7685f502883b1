/** The way to the loudspeaker through calls and sleep: only a clock that moves counts, and one that stands still is made anew. */
import assert from "node:assert/strict";
import { afterEach, beforeEach, test } from "node:test";
import { Output } from "../../static/src/audio/context.js";

const LOOKS_MS = 250;

/** The device's sound; `needsTap`: what is made now stays suspended until somebody taps. */
const device = { needsTap: false, now_ms: 0, made: [] as Context[] };

class Context {
  state = device.needsTap ? "suspended" : "running";
  frozen = false;
  resumed = 0;
  destination = {};
  private time_s = 0;

  constructor() {
    device.made.push(this);
  }

  get currentTime(): number {
    return this.time_s;
  }

  pass(ms: number): void {
    if (this.state === "running" && !this.frozen) this.time_s += ms / 1000;
  }

  async resume(): Promise<void> {
    this.resumed += 1;
    if (this.state === "interrupted") throw new DOMException("interrupted", "InvalidStateError");
    if (!device.needsTap) this.state = "running";
  }

  async close(): Promise<void> {
    this.state = "closed";
  }
}

class Node {
  gain = { value: 1 };
  offset = { value: 1 };

  constructor(readonly context: Context) {}

  connect(next: unknown): unknown {
    return next;
  }

  start(): void {
    return undefined;
  }
}

const real = {
  now: globalThis.performance.now.bind(globalThis.performance),
  navigator: Object.getOwnPropertyDescriptor(globalThis, "navigator"),
};

beforeEach(() => {
  Object.assign(device, { needsTap: false, now_ms: 0, made: [] });
  Object.assign(globalThis, { AudioContext: Context, GainNode: Node, DynamicsCompressorNode: Node, ConstantSourceNode: Node, OscillatorNode: Node });
  Object.defineProperty(globalThis, "navigator", { value: {}, configurable: true });
  globalThis.performance.now = () => device.now_ms;
});

afterEach(() => {
  for (const name of ["AudioContext", "GainNode", "DynamicsCompressorNode", "ConstantSourceNode", "OscillatorNode"]) Reflect.deleteProperty(globalThis, name);
  globalThis.performance.now = real.now;
  if (real.navigator) Object.defineProperty(globalThis, "navigator", real.navigator);
  else Reflect.deleteProperty(globalThis, "navigator");
});

/** Time goes by; at each look sound that is not there is nudged, as a session does it. What the last look found. */
function pass(output: Output, seconds: number): boolean {
  let on = false;
  for (let gone = 0; gone < seconds * 1000; gone += LOOKS_MS) {
    device.now_ms += LOOKS_MS;
    device.made.forEach((context) => context.pass(LOOKS_MS));
    on = output.isOn(device.now_ms);
    if (!on) output.nudge();
  }
  return on;
}

/** Opened in a tap; time has to go by for its clock to be seen moving. */
async function opened(): Promise<Output> {
  const output = new Output();
  const waking = output.wake();
  device.made.at(-1)!.pass(20);
  await waking;
  assert.equal(pass(output, 1), true);
  return output;
}

test("a call that ends and gives the sound back leaves the same context going on", async () => {
  const output = await opened();
  const [context] = device.made as [Context];
  context.state = "interrupted";
  assert.equal(pass(output, 30), false);
  assert.equal(context.resumed, 0, "nothing is asked of it during the call");
  context.state = "running";
  assert.equal(pass(output, 0.5), true);
  assert.equal(device.made.length, 1);
});

test("a context that comes back from a call standing still is closed and made anew without a tap", async () => {
  const output = await opened();
  const [context] = device.made as [Context];
  Object.assign(context, { state: "interrupted", frozen: true });
  pass(output, 5);
  context.state = "running";
  assert.equal(pass(output, 2), true);
  assert.deepEqual(device.made.map(({ state }) => state), ["closed", "running"]);
  assert.notEqual(output.bus, null);
});

test("a device that wakes and whose sound begins a moment later keeps its context", async () => {
  const output = await opened();
  const [context] = device.made as [Context];
  context.frozen = true;
  device.now_ms += 40_000;
  pass(output, 0.75);
  context.frozen = false;
  assert.equal(pass(output, 0.25), true);
  assert.equal(device.made.length, 1);
});

test("where only a tap may bring the sound back, it stays lost until one does", async () => {
  const output = await opened();
  Object.assign(device.made[0]!, { frozen: true });
  device.needsTap = true;
  assert.equal(pass(output, 20), false);
  assert.equal(device.made.length, 2, "one is made anew, and not one after the other");
  device.needsTap = false;
  const waking = output.wake();
  await Promise.resolve();
  device.made.at(-1)!.pass(20);
  assert.equal((await waking).on, true);
  assert.equal(pass(output, 0.5), true);
});

test("a context that the system has closed is made anew", async () => {
  const output = await opened();
  device.made[0]!.state = "closed";
  assert.equal(pass(output, 0.75), true);
  assert.equal(device.made.length, 2);
});
