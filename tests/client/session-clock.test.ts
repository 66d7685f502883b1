/** The session's clock through sleep, moved clocks, reloads and kills. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { look, resumeClock, saved, sessionAt, startClock, type ClockState, type Found, type Reading } from "../../static/src/state/session-clock.js";
import { chance } from "./builders.js";

const HOUR = 3600_000;
const begin: Reading = { wall_ms: 1_795_000_000_000, mono_ms: 5000 };

/** A device with both clocks; its looks come every so many ms while it is awake. */
class Device {
  wall_ms = begin.wall_ms;
  mono_ms = begin.mono_ms;
  clock: ClockState = startClock(begin);
  found: Found[] = [];

  awake(ms: number, every_ms: number): this {
    for (let gone = every_ms; gone <= ms; gone += every_ms) {
      this.wall_ms += every_ms;
      this.mono_ms += every_ms;
      this.look();
    }
    return this;
  }

  /** Both clocks go on without a look. */
  frozen(ms: number): this {
    this.wall_ms += ms;
    this.mono_ms += ms;
    return this;
  }

  asleep(ms: number): this {
    this.wall_ms += ms;
    return this;
  }

  look(): void {
    const { state, found } = look(this.clock, { wall_ms: this.wall_ms, mono_ms: this.mono_ms });
    this.clock = state;
    if (found.kind !== "nothing") this.found.push(found);
  }

  get session_s(): number {
    return sessionAt(this.clock, this.mono_ms);
  }
}

const VISIBLE_MS = 16;
const HIDDEN_MS = 1000;
const near = (value: number, wanted: number, within = 0.1) => assert.ok(Math.abs(value - wanted) <= within, `${value} is not ${wanted}`);

test("awake, the session's seconds are those of the monotonic clock, to the microsecond over 90 minutes", () => {
  const device = new Device().awake(90 * 60_000, 250);
  near(device.session_s, 5400, 1e-6);
  assert.deepEqual(device.found, []);
});

test("a sleep of 41 s, with the page hidden before it, is added from the wall clock and told", () => {
  const device = new Device().awake(60_000, VISIBLE_MS).awake(5000, HIDDEN_MS).asleep(41_000).awake(3000, HIDDEN_MS);
  near(device.session_s, 60 + 5 + 41 + 3);
  assert.deepEqual(device.found.map(({ kind }) => kind), ["slept"]);
});

test("a frozen page loses nothing where the monotonic clock runs on", () => {
  const device = new Device().awake(10_000, HIDDEN_MS).frozen(300_000).awake(2000, HIDDEN_MS);
  near(device.session_s, 312, 1e-6);
  assert.deepEqual(device.found, []);
});

for (const hours of [1, -1, 26, -26]) {
  test(`with looks coming steadily, a wall clock moved by ${hours} h moves nothing`, () => {
    const device = new Device().awake(30_000, VISIBLE_MS).asleep(hours * HOUR).awake(30_000, VISIBLE_MS);
    near(device.session_s, 60);
    assert.deepEqual(device.found.map(({ kind }) => kind), ["moved"]);
  });
}

test("a wall clock set back behind a hidden page moves nothing: no sleep could have done that", () => {
  const device = new Device().awake(30_000, HIDDEN_MS).asleep(-HOUR).awake(30_000, HIDDEN_MS);
  near(device.session_s, 60);
  assert.deepEqual(device.found.map(({ kind }) => kind), ["moved"]);
});

test("after a pause in the looks, a wall clock that went back, or 26 h ahead, is a question", () => {
  for (const hours of [-1, 26]) {
    const device = new Device().awake(30_000, HIDDEN_MS).frozen(20_000).asleep(hours * HOUR).awake(1000, HIDDEN_MS);
    assert.deepEqual(device.found.map(({ kind }) => kind), ["unknown"]);
    near(device.session_s, 51);
  }
});

test("after a pause in the looks, a wall clock corrected by less than two seconds is no question", () => {
  const device = new Device().awake(30_000, HIDDEN_MS).frozen(20_000).asleep(-300).awake(1000, HIDDEN_MS);
  assert.deepEqual(device.found.map(({ kind }) => kind), ["moved"]);
  near(device.session_s, 51);
});

test("a zone or summer time that changes moves nothing, as the wall clock counts in universal time", () => {
  const device = new Device().awake(60_000, VISIBLE_MS);
  near(device.session_s, 60, 1e-6);
});

test("after a reload the session goes on from the wall clock", () => {
  const before = new Device().awake(100_000, 250);
  const other: Reading = { wall_ms: before.wall_ms + 2300, mono_ms: 12 };
  const { state, found } = resumeClock(saved(before.clock), other);
  near(sessionAt(state, 12), 102.3, 1e-6);
  near(sessionAt(state, 1012), 103.3, 1e-6);
  assert.equal(found.kind, "nothing");
});

test("a clock moved before the reload is still known after it", () => {
  const before = new Device().awake(60_000, VISIBLE_MS).asleep(HOUR).awake(60_000, VISIBLE_MS);
  const { state } = resumeClock(saved(before.clock), { wall_ms: before.wall_ms + 1000, mono_ms: 0 });
  near(sessionAt(state, 0), 121);
});

test("after a kill only what was saved counts, and the clock has run on since", () => {
  const before = new Device().awake(100_000, 250);
  const life = saved(before.clock);
  before.frozen(900);
  const { state } = resumeClock(life, { wall_ms: before.wall_ms + 40_000, mono_ms: 0 });
  near(sessionAt(state, 0), 140.9, 1e-6);
});

test("coming back before it left, or 13 h later, is a question, and the session stands where it was", () => {
  const life = saved(new Device().awake(100_000, 250).clock);
  for (const away_ms of [-HOUR, 13 * HOUR]) {
    const { state, found } = resumeClock(life, { wall_ms: life.wall_ms + away_ms, mono_ms: 0 });
    assert.equal(found.kind, "unknown");
    near(sessionAt(state, 0), 100, 1e-6);
  }
});

test("in a thousand random days the session is right to 0.1 s, and never goes backward", () => {
  const next = chance(31);
  for (let day = 0; day < 1000; day += 1) {
    const device = new Device();
    let wanted_s = 0;
    for (let hour = 0; hour < 12; hour += 1) {
      const before_s = device.session_s;
      const ms = Math.round((1 + next() * 100) * 1000);
      const kind = Math.floor(next() * 4);
      if (kind === 0) device.awake(ms, VISIBLE_MS * 10);
      if (kind === 1) device.awake(ms, HIDDEN_MS);
      if (kind === 2) device.awake(2000, HIDDEN_MS).asleep(ms).awake(1000, HIDDEN_MS);
      if (kind === 3) device.awake(1600, 160).asleep((next() < 0.5 ? 1 : -1) * HOUR * (1 + next() * 30)).awake(1600, 160);
      wanted_s += [Math.floor(ms / 160) * 0.16, Math.floor(ms / 1000), 3 + ms / 1000, 3.2][kind]!;
      assert.ok(device.session_s >= before_s);
      near(device.session_s, wanted_s);
    }
  }
});
