/** A session followed from another tab: the same place at the same moment, and never a word written. Storage is in memory. */
import assert from "node:assert/strict";
import { afterEach, test } from "node:test";
import { database } from "../../static/src/data/database.js";
import type { PlanRecord } from "../../static/src/data/plans.js";
import { Follower } from "../../static/src/state/follower.js";
import { Player } from "../../static/src/state/player.js";
import { byClock } from "../../static/src/timeline/by-clock.js";
import { rest, row, timeline } from "./builders.js";

const plan = timeline(row(60, 24), rest(30), row(60, 24));
const record: PlanRecord = { id: "mine:test", source: "mine", name: "test", kind: "", plan: plan.plan, timeline: plan, kept_at_ms: 0 };
const clocks = { wall_ms: 1_795_000_000_000, mono_ms: 1000 };
const lock = { take: async () => true, takeOver: async () => undefined, release: () => undefined };
let player: Player;
let follower: Follower;

function pass(seconds: number): void {
  for (let gone = 0; gone < seconds * 1000 - 1e-6; gone += 200) {
    clocks.wall_ms += 200;
    clocks.mono_ms += 200;
    player.snapshot();
  }
}

async function saved(): Promise<void> {
  for (let turn = 0; turn < 6; turn += 1) await new Promise((done) => setImmediate(done));
}

async function started(led: boolean): Promise<void> {
  player = new Player(() => ({ ...clocks }), () => lock);
  await player.start(record, led ? byClock(plan) : plan, led ? { led_by: "wall" } : undefined);
  await saved();
  // Another page has another monotonic clock.
  follower = new Follower(() => undefined, () => ({ wall_ms: clocks.wall_ms, mono_ms: clocks.mono_ms + 77_777 }));
  assert.equal(await follower.begin(), true);
}

async function same(): Promise<void> {
  await saved();
  await follower.readAgain();
  const [here, there] = [player.snapshot(), follower.snapshot()];
  assert.deepEqual([there.phase, there.index, there.strokes_left, there.count_in], [here.phase, here.index, here.strokes_left, here.count_in]);
  assert.ok(Math.abs(there.elapsed_s - here.elapsed_s) < 1e-6, `${there.elapsed_s} and ${here.elapsed_s}`);
}

afterEach(async () => {
  follower.stop();
  await player.endForAnother();
  await saved();
});

for (const led of [true, false]) {
  test(`it is where the session is, through holds and skips (${led ? "one that leads a room" : "one that is rowed"})`, async () => {
    await started(led);
    await same();
    pass(25);
    await same();
    player.hold();
    pass(10);
    await same();
    player.goOn();
    pass(12);
    await same();
    player.skip();
    await same();
    player.back();
    await same();
  });
}

test("between two readings its clock runs on", async () => {
  await started(true);
  pass(30);
  assert.equal(follower.snapshot().index, 0);
  assert.ok(Math.abs(follower.snapshot().elapsed_s - 20) < 1e-6);
});

test("it says when the tab that runs the session gives no sign of life", async () => {
  await started(true);
  await follower.readAgain();
  assert.equal(follower.quiet, false);
  clocks.wall_ms += 20_000;
  await follower.readAgain();
  assert.equal(follower.quiet, true);
});

test("it writes nothing", async () => {
  await started(true);
  const kept = async () => JSON.stringify([await database.all("facts"), await database.all("heartbeats"), await database.all("sessions")]);
  const before = await kept();
  await follower.readAgain();
  follower.snapshot();
  assert.equal(await kept(), before);
});

test("when the session is over, so is what follows it", async () => {
  await started(true);
  pass(20);
  player.end();
  await saved();
  await follower.readAgain();
  assert.equal(follower.snapshot().phase, "finished");
});
