/** A session started by the clock: with the device's own clock all through, whatever corrects or moves that. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { look, sessionAt, startClock, type ClockState } from "../../static/src/state/session-clock.js";
import { chance } from "./builders.js";

const HOUR_MS = 3600_000;
const LOOK_MS = 250;

/** An hour of looks by a wall clock that drifts and is moved; how far, in ms, the session is off it at each look. */
function hour(drift: number, moves: Record<number, number> = {}): { off_ms: number[]; step_ms: number } {
  const next = chance(11);
  const begin = { wall_ms: 1_795_000_000_000, mono_ms: 4000 };
  let clock: ClockState = startClock(begin);
  let [moved_ms, before_s, step_ms]: [number, number, number] = [0, 0, 0];
  const off_ms: number[] = [];
  for (let gone = LOOK_MS; gone <= HOUR_MS; gone += LOOK_MS) {
    moved_ms += moves[gone] ?? 0;
    const wall_ms = Math.floor(begin.wall_ms + gone * (1 + drift) + moved_ms + next());
    clock = look(clock, { wall_ms, mono_ms: begin.mono_ms + gone }, true).state;
    const session_s = sessionAt(clock, begin.mono_ms + gone);
    off_ms.push(begin.wall_ms + session_s * 1000 - wall_ms);
    step_ms = Math.max(step_ms, Math.abs((session_s - before_s) * 1000 - LOOK_MS));
    before_s = session_s;
  }
  return { off_ms, step_ms };
}

const worst = (values: number[]) => values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

for (const millionths of [100, -100, 500, 0]) {
  test(`over an hour with a wall clock off by ${millionths} millionths it stays within 10 ms, in steps nobody hears`, () => {
    const { off_ms, step_ms } = hour(millionths * 1e-6);
    assert.ok(worst(off_ms) < 10, `${worst(off_ms)}`);
    assert.ok(step_ms <= 5.001, `${step_ms}`);
  });
}

for (const correction_ms of [120, -120, 300, -300, 1500]) {
  test(`a correction of ${correction_ms} ms by the network is followed, 5 ms a second`, () => {
    const { off_ms, step_ms } = hour(50e-6, { [HOUR_MS / 4]: correction_ms });
    const looks = HOUR_MS / 4 / LOOK_MS;
    const followed = looks + (Math.abs(correction_ms) / 5) * (1000 / LOOK_MS) + 40;
    assert.ok(worst(off_ms.slice(0, looks - 1)) < 10);
    assert.ok(worst(off_ms.slice(followed)) < 10, `${worst(off_ms.slice(followed))}`);
    assert.ok(step_ms <= 5.001, `${step_ms}`);
  });
}

for (const hours of [1, -1]) {
  test(`a clock that somebody sets by ${hours} h moves nothing`, () => {
    const { off_ms, step_ms } = hour(0, { [HOUR_MS / 2]: hours * HOUR_MS });
    assert.ok(step_ms <= 5.001, `${step_ms}`);
    assert.ok(Math.abs(off_ms.at(-1)! + hours * HOUR_MS) < 10, `${off_ms.at(-1)}`);
  });
}

test("a session that does not go by the clock goes by the monotonic one alone", () => {
  const begin = { wall_ms: 1_795_000_000_000, mono_ms: 0 };
  let clock = startClock(begin);
  for (let gone = LOOK_MS; gone <= HOUR_MS; gone += LOOK_MS) {
    clock = look(clock, { wall_ms: begin.wall_ms + gone * 1.0005, mono_ms: gone }).state;
  }
  assert.equal(sessionAt(clock, HOUR_MS), 3600);
});
