/** The tie between the monotonic clock and the audio clock. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { AudioTie, tellsItsLatency } from "../../static/src/audio/clock.js";
import { chance } from "./builders.js";

const TICK_MS = 250;
const HOUR_MS = 3600_000;

interface Course {
  /** The audio clock gains so many seconds in one. */
  drift?: number;
  /** Each measurement is off by up to this much, either way. */
  jitter_s?: number;
  /** Measurements in a row are off alike, by up to this much either way: sound servers guess their delay. */
  wander_s?: number;
  /** Every so often the audio clock falls back by this much: sound that came too late was left out. */
  stumble?: { every_ms: number; by_s: number };
}

/** Follows an audio clock for an hour; how far the tie is off at each tick after the first 10 s, and how it moved. */
function follow({ drift = 0, jitter_s = 0, wander_s = 0, stumble }: Course) {
  const [tie, next] = [new AudioTie(), chance(41)];
  const [off_s, moves_s]: [number[], number[]] = [[], []];
  let moved = 0;
  for (let now_ms = 0; now_ms < HOUR_MS; now_ms += TICK_MS) {
    const fallen_s = stumble ? Math.floor(now_ms / stumble.every_ms) * stumble.by_s : 0;
    const true_s = 3 + (now_ms / 1000) * drift - fallen_s;
    const before_s = tie.known ? tie.audioTime(now_ms) : NaN;
    const noise_s = (next() - 0.5) * 2 * jitter_s + wander_s * Math.sin(now_ms / 9000) * Math.cos(now_ms / 31_000);
    if (tie.follow(true_s + noise_s, now_ms) !== "same") moved += 1;
    if (now_ms < 10_000) continue;
    off_s.push(Math.abs(tie.audioTime(now_ms) - now_ms / 1000 - true_s));
    moves_s.push(Math.abs(tie.audioTime(now_ms) - before_s));
  }
  const worst = (values: number[]) => values.reduce((most, value) => Math.max(most, value), 0);
  const lastQuarter = off_s.slice(-off_s.length / 4);
  return { off_s, worst_s: worst(off_s), lately_s: worst(lastQuarter), move_s: worst(moves_s), moved };
}

for (const millionths of [100, -100, 20, 0]) {
  test(`over an hour with an audio clock off by ${millionths} millionths it stays within 5 ms, in steps nobody hears`, () => {
    const { worst_s, lately_s, move_s } = follow({ drift: millionths * 1e-6, jitter_s: 0.005, wander_s: 0.0007 });
    assert.ok(worst_s < 0.005, `${worst_s}`);
    assert.ok(lately_s < 0.004, `nothing accumulates: ${lately_s}`);
    assert.ok(move_s <= 0.0021, `${move_s}`);
  });
}

test("a drift once learned needs few steps", () => {
  const { moved, lately_s } = follow({ drift: 80e-6 });
  assert.ok(moved < 25, `${moved}`);
  assert.ok(lately_s < 0.0021, `${lately_s}`);
});

test("measurements that wander by 0.7 ms do not move it at all once it has settled", () => {
  const { move_s } = follow({ wander_s: 0.0007 });
  assert.equal(move_s, 0);
});

test("an audio clock that falls back by 10 ms again and again is caught up with each time, within 12 s", () => {
  for (const drift of [0, 100e-6]) {
    const every_ms = 60_000;
    const { off_s, move_s } = follow({ drift, jitter_s: 0.002, stumble: { every_ms, by_s: 0.01 } });
    const between = off_s.filter((_, tick) => (10_000 + tick * TICK_MS) % every_ms > 12_000);
    assert.ok(Math.max(...between) < 0.005, `${Math.max(...between)}`);
    assert.ok(Math.max(...off_s) < 0.016, `nothing accumulates: ${Math.max(...off_s)}`);
    assert.ok(move_s <= 0.0021, `${move_s}`);
  }
});

test("one that falls back by 200 ms is caught up with in a jump, within 2 s", () => {
  const every_ms = 300_000;
  const { off_s } = follow({ drift: 50e-6, jitter_s: 0.002, stumble: { every_ms, by_s: 0.2 } });
  const between = off_s.filter((_, tick) => (10_000 + tick * TICK_MS) % every_ms > 2000);
  assert.ok(Math.max(...between) < 0.005, `${Math.max(...between)}`);
});

test("a single measurement that is far off changes nothing", () => {
  const tie = new AudioTie();
  for (let now_ms = 0; now_ms < 5000; now_ms += TICK_MS) tie.follow(3, now_ms);
  assert.equal(tie.follow(8, 5000), "same");
  assert.equal(tie.audioTime(5000), 8);
});

test("after a pause of the sound it jumps, once, and says so", () => {
  const tie = new AudioTie();
  for (let now_ms = 0; now_ms < 5000; now_ms += TICK_MS) tie.follow(3, now_ms);
  const answers = [1, 2, 3, 4, 5, 6, 7, 8].map((tick) => tie.follow(-4, 5000 + tick * TICK_MS));
  assert.deepEqual(answers.filter((answer) => answer !== "same"), ["jumped"]);
  assert.equal(answers[1], "jumped");
  assert.equal(tie.audioTime(9000), 5);
});

test("after half a minute without a measurement, in which the audio clock stood still, it jumps at the first", () => {
  const tie = new AudioTie();
  for (let now_ms = 0; now_ms < 5000; now_ms += TICK_MS) tie.follow(3, now_ms);
  assert.equal(tie.follow(-27, 35_000), "jumped");
  assert.equal(tie.audioTime(35_000), 8);
});

test("the first measurement is taken as it is", () => {
  const tie = new AudioTie();
  assert.equal(tie.known, false);
  assert.equal(tie.follow(2, 1000), "same");
  assert.equal(tie.known, true);
  assert.equal(tie.audioTime(1000), 3);
});

test("a clock that stood still is measured anew, and its drift is not forgotten", () => {
  const tie = new AudioTie();
  const drifting = (now_ms: number) => 3 + (now_ms / 1000) * 100e-6;
  for (let now_ms = 0; now_ms < HOUR_MS / 4; now_ms += TICK_MS) tie.follow(drifting(now_ms), now_ms);
  tie.reset();
  tie.follow(drifting(HOUR_MS) - 30, HOUR_MS);
  const later_ms = HOUR_MS + 60_000;
  assert.ok(Math.abs(tie.audioTime(later_ms) - (later_ms / 1000 + drifting(later_ms) - 30)) < 0.0005);
});

test("only Firefox on Linux is not asked for its latency", () => {
  const firefox = (system: string) => `Mozilla/5.0 (${system}; rv:140.0) Gecko/20100101 Firefox/140.0`;
  assert.equal(tellsItsLatency(firefox("X11; Linux x86_64")), false);
  for (const system of ["Windows NT 10.0; Win64; x64", "Macintosh; Intel Mac OS X 10.15", "Android 15; Mobile"]) assert.equal(tellsItsLatency(firefox(system)), true);
  assert.equal(tellsItsLatency("Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/142.0.0.0 Safari/537.36"), true);
  assert.equal(tellsItsLatency("Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/142.0.0.0 Mobile Safari/537.36"), true);
});
