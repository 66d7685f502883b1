/** A session that leads a room goes by the clock, whatever happens to the device. Storage is in memory, clocks are set. */
import assert from "node:assert/strict";
import { afterEach, beforeEach, test } from "node:test";
import { database } from "../../static/src/data/database.js";
import type { PlanRecord } from "../../static/src/data/plans.js";
import { openSession } from "../../static/src/data/sessions.js";
import type { Timeline } from "../../static/src/plan/wire.js";
import { Player } from "../../static/src/state/player.js";
import { byClock, guesses } from "../../static/src/timeline/by-clock.js";
import { gap, guess, metres, open, rest, row, timeline } from "./builders.js";

const clocks = { wall_ms: 0, mono_ms: 0 };
const LOOKS_MS = 200;
let opened: Player[] = [];

function openPage(): Player {
  const lock = { take: async () => true, takeOver: async () => undefined, release: () => undefined };
  const player = new Player(() => ({ ...clocks }), () => lock);
  opened.push(player);
  return player;
}

/** Another page on the same device, after the one before has died without a word. */
async function reopened(): Promise<Player> {
  clocks.mono_ms = 0;
  const player = openPage();
  assert.equal(await player.restore(), true);
  return player;
}

function pass(player: Player, seconds: number): void {
  for (let gone = 0; gone < seconds * 1000 - 1e-6; gone += LOOKS_MS) {
    clocks.wall_ms += LOOKS_MS;
    clocks.mono_ms += LOOKS_MS;
    player.snapshot();
  }
}

/** Until everything that was written has been saved. */
async function saved(): Promise<void> {
  for (let turn = 0; turn < 4; turn += 1) await new Promise((done) => setImmediate(done));
}

function planOf(plan: Timeline): PlanRecord {
  return { id: "mine:test", source: "mine", name: "test", kind: "", plan: plan.plan, timeline: plan, kept_at_ms: 0 };
}

async function led(plan: Timeline, starts_at_ms?: number): Promise<Player> {
  const player = openPage();
  const leading = { led_by: "wall" as const, ...(starts_at_ms === undefined ? {} : { starts_at_ms }) };
  assert.equal(await player.start(planOf(plan), byClock(plan), leading), true);
  return player;
}

/** Segment and seconds in it, to the hundredth. */
function where(player: Player): [string, number, number] {
  const { phase, index, elapsed_s } = player.snapshot();
  return [phase, index, Math.round(elapsed_s * 100) / 100];
}

const simple = timeline(row(60, 24), rest(30), row(600, 24));

beforeEach(() => Object.assign(clocks, { wall_ms: 1_795_000_000_000, mono_ms: 1000 }));

afterEach(async () => {
  opened.slice(0, -1).forEach((dead) => dead.close());
  await opened.at(-1)?.endForAnother();
  opened = [];
  await saved();
});

test("nothing waits for a tap: gaps, metres and open blocks go on by themselves", async () => {
  const plan = timeline(guess(500, 120, 24), gap(60), open(20), metres(500, 110, 28), rest(30), row(60, 24));
  const player = await led(plan);
  pass(player, 10 + 120 + 61);
  assert.deepEqual(where(player), ["running", 2, 1]);
  pass(player, 299 + 110 + 30 + 5);
  assert.deepEqual(where(player), ["running", 5, 5]);
});

test("a block whose length is a guess counts down like any other", async () => {
  const player = await led(timeline(guess(500, 120, 24), open(20)));
  pass(player, 20);
  assert.equal(Math.round(player.snapshot().left_s!), 110);
  pass(player, 120);
  assert.equal(Math.round(player.snapshot().left_s!), 290);
});

test("a plan in metres or without an end is known to rest on guesses, one in minutes not", () => {
  assert.equal(guesses(timeline(row(60, 24), metres(500, 110, 28))), true);
  assert.equal(guesses(timeline(open(20))), true);
  assert.equal(guesses(simple), false);
});

test("after a power cut the page goes on at the right place with no question", async () => {
  const player = await led(simple);
  pass(player, 30);
  await saved();
  clocks.wall_ms += 240_000;
  const after = await reopened();
  assert.deepEqual(where(after), ["running", 2, 170]);
  assert.equal(after.snapshot().absence, null);
  assert.equal(after.snapshot().led_by, "wall");
});

test("a session that rows does ask after such a time", async () => {
  const player = openPage();
  await player.start(planOf(simple), simple);
  pass(player, 30);
  await saved();
  clocks.wall_ms += 240_000;
  assert.equal((await reopened()).snapshot().phase, "asking");
});

test("a device that has lost the time goes on from where it was, and follows when it learns the time", async () => {
  const player = await led(simple);
  pass(player, 107);
  player.hold();
  pass(player, 0.4);
  player.goOn();
  await saved();
  clocks.wall_ms -= 3_600_000;
  const after = await reopened();
  pass(after, 15);
  // Held at 7 s and on from the catch at 5, after 5 s to take up the handle.
  assert.deepEqual(where(after), ["running", 2, 15]);
  // The network sets the clock: the power had been away for five minutes.
  clocks.wall_ms += 3_600_000 + 300_000;
  assert.deepEqual(where(after), ["running", 2, 315]);
});

test("a clock that somebody moves while the page is open moves nothing", async () => {
  const player = await led(simple);
  pass(player, 110);
  clocks.wall_ms += 3_600_000;
  pass(player, 1);
  assert.deepEqual(where(player), ["running", 2, 11]);
});

test("a session that was left for more than twelve hours is over, with no question", async () => {
  const player = await led(simple);
  pass(player, 30);
  await saved();
  clocks.wall_ms += 13 * 3_600_000;
  assert.equal((await reopened()).snapshot().phase, "finished");
  await saved();
  assert.equal(await openSession(), undefined);
});

test("a start set by the clock is waited for, through a power cut and a clock put right", async () => {
  const starts_at_ms = clocks.wall_ms + 600_000;
  const player = await led(simple, starts_at_ms);
  pass(player, 100);
  assert.deepEqual([player.snapshot().phase, player.snapshot().count_in, player.snapshot().starts_at_ms], ["count-in", 500, starts_at_ms]);
  await saved();
  clocks.wall_ms += 100_000;
  const after = await reopened();
  pass(after, 100);
  assert.equal(after.snapshot().count_in, 300);
  // Nobody has switched it on again just now, so that this is a person who sets the clock.
  clocks.mono_ms += 3_600_000;
  clocks.wall_ms += 3_600_000;
  assert.equal(after.snapshot().phase, "finished");
});

test("a start set by the clock stays at its minute when the clock is moved", async () => {
  const starts_at_ms = clocks.wall_ms + 600_000;
  const player = await led(simple, starts_at_ms);
  pass(player, 100);
  clocks.wall_ms += 60_000;
  pass(player, 1);
  assert.deepEqual([player.snapshot().count_in, player.snapshot().starts_at_ms], [439, starts_at_ms]);
});

test("a clock put past a start that was set counts in all the same, and as long as was left where that was less", async () => {
  const player = await led(simple, clocks.wall_ms + 600_000);
  pass(player, 100);
  clocks.wall_ms += 3_600_000;
  assert.deepEqual([player.snapshot().phase, player.snapshot().count_in], ["count-in", 10]);
  pass(player, 6);
  clocks.wall_ms += 30_000;
  assert.equal(player.snapshot().count_in, 4);
  pass(player, 5);
  assert.deepEqual(where(player), ["running", 0, 1]);
});

test("a clock put forward to seconds before a start shortens its count-in, and starts at the minute", async () => {
  const starts_at_ms = clocks.wall_ms + 600_000;
  const player = await led(simple, starts_at_ms);
  pass(player, 100);
  clocks.wall_ms += 495_000;
  assert.deepEqual([player.snapshot().phase, player.snapshot().count_in, player.snapshot().starts_at_ms], ["count-in", 5, starts_at_ms]);
  pass(player, 1);
  clocks.wall_ms += 2000;
  assert.equal(player.snapshot().count_in, 4, "nearer than three can be counted, it counts as long as was left");
});

test("a start set by the clock can be moved to now", async () => {
  const player = await led(simple, clocks.wall_ms + 600_000);
  pass(player, 100);
  player.startSoon();
  assert.equal(player.snapshot().count_in, 10, "as long as the settings ask");
  pass(player, 3);
  player.startSoon();
  assert.equal(player.snapshot().count_in, 7, "pressed again, it comes no later");
  player.startAtClock(null);
  assert.equal(player.snapshot().count_in, 7, "there is no start to take back: it is the session's own");
  pass(player, 9);
  assert.deepEqual(where(player), ["running", 0, 2]);
});

test("what led a room is not in the log, and leaves nothing behind", async () => {
  const player = await led(simple);
  await saved();
  const record = { id: (await database.keys("sessions"))[0]! };
  pass(player, 30);
  player.hold();
  player.end();
  await saved();
  assert.equal(player.snapshot().phase, "finished");
  player.close();
  await saved();
  assert.equal(await database.get("log", record.id), undefined);
  assert.equal(await database.get("sessions", record.id), undefined);
  assert.deepEqual(await database.all("facts", [record.id, 0], [record.id, 99]), []);
  assert.equal(await database.get("heartbeats", record.id), undefined);
});
