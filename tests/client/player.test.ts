/** The player as the screens see it: commands, absences, reloads, two tabs. Storage is in memory, clocks are set. */
import assert from "node:assert/strict";
import { afterEach, beforeEach, test } from "node:test";
import { database } from "../../static/src/data/database.js";
import type { PlanRecord } from "../../static/src/data/plans.js";
import { discardSession, factsOf, isSound, openSession, type StoredSession } from "../../static/src/data/sessions.js";
import type { Timeline } from "../../static/src/plan/wire.js";
import { Player } from "../../static/src/state/player.js";
import { Chosen } from "../../static/src/state/chosen.js";
import type { SessionLock } from "../../static/src/state/session-lock.js";
import type { Snapshot } from "../../static/src/state/snapshot.js";
import { gap, metres, open, rest, row, timeline } from "./builders.js";

const LOOKS_MS = 200;

/** The device: its clocks, and the tabs that are open on it. */
const device = { wall_ms: 0, mono_ms: 0 };
let tabs: { player: Player; lost: () => void }[] = [];
let owner: (() => void) | undefined;

function openTab(): Player {
  let mine: () => void = () => undefined;
  const lock = (lost: () => void): SessionLock => {
    mine = lost;
    return {
      take: async () => (owner && owner !== mine ? false : ((owner = mine), true)),
      takeOver: async () => {
        const before = owner;
        owner = mine;
        before?.();
      },
      release: () => void (owner = owner === mine ? undefined : owner),
    };
  };
  const player = new Player(() => ({ ...device }), lock, chosen);
  tabs.push({ player, lost: mine });
  return player;
}

/** What is chosen on the device. */
let chosen = new Chosen(undefined);

/** A tab that dies without a word: nothing of it is called any more. */
function kill(): void {
  owner = undefined;
}

/** Time goes by while the screens look at the player. */
function pass(player: Player, seconds: number): Snapshot {
  for (let gone = 0; gone < seconds * 1000 - 1e-6; gone += LOOKS_MS) {
    device.wall_ms += LOOKS_MS;
    device.mono_ms += LOOKS_MS;
    player.snapshot();
  }
  return player.snapshot();
}

/** Time goes by and nobody looks. */
function away(seconds: number): void {
  device.wall_ms += seconds * 1000;
  device.mono_ms += seconds * 1000;
}

const simple = timeline(row(60, 24), rest(30), row(60, 24));

function planOf(plan: Timeline): PlanRecord {
  return { id: "mine:test", source: "mine", name: "test", kind: "", plan: plan.plan, timeline: plan, kept_at_ms: 0 };
}

/** A session five seconds before its first catch. */
async function started(plan: Timeline): Promise<Player> {
  const player = openTab();
  assert.equal(await player.start(planOf(plan), plan), true);
  pass(player, 5);
  return player;
}

/** What was left open, which is sound. */
async function leftOpen(): Promise<StoredSession> {
  await saved();
  const open = await openSession();
  assert.ok(open && isSound(open));
  return open;
}

/** Until everything that was written has been saved. */
async function saved(): Promise<void> {
  await new Promise((done) => setImmediate(done));
  await new Promise((done) => setImmediate(done));
}

beforeEach(() => {
  Object.assign(device, { wall_ms: 1_795_000_000_000, mono_ms: 1000 });
  chosen = new Chosen(undefined);
});

afterEach(async () => {
  tabs.forEach(({ player }) => player.close());
  tabs = [];
  owner = undefined;
  await saved();
  await database.remove("settings", "all");
  for (let left = await openSession(); left; left = await openSession()) await discardSession(isSound(left) ? left.record.id : left.id);
});

test("without a session there is nothing, and every command says nothing", () => {
  const player = openTab();
  player.hold();
  player.skip();
  player.done();
  assert.equal(player.snapshot().phase, "none");
});

test("a session starts with a count-in of 10 s and then runs", async () => {
  const fresh = openTab();
  await fresh.start(planOf(simple), simple);
  assert.equal(fresh.snapshot().count_in, 10);
  fresh.close();
  const player = await started(simple);
  assert.deepEqual([player.snapshot().phase, player.snapshot().count_in], ["count-in", 5]);
  const snapshot = pass(player, 11);
  assert.deepEqual([snapshot.phase, snapshot.index, snapshot.stroke, snapshot.strokes_left], ["running", 0, 2, 22]);
  assert.ok(Math.abs(snapshot.left_s! - 54) < 1e-6);
  assert.equal(snapshot.next, simple.segments[1]);
});

test("the count-ins are as long as was chosen, and a reload in the middle of one goes on with it", async () => {
  await chosen.change({ start_count_s: 20, hold_count_s: 0 });
  const player = openTab();
  await player.start(planOf(simple), simple);
  assert.equal(pass(player, 8).count_in, 12);
  await saved();
  kill();
  const reloaded = openTab();
  assert.equal(await reloaded.restore(), true);
  assert.equal(pass(reloaded, 2).count_in, 10);
  pass(reloaded, 16);
  reloaded.hold();
  pass(reloaded, 0.4);
  reloaded.goOn();
  assert.deepEqual([reloaded.snapshot().phase, reloaded.snapshot().count_in], ["running", null]);
});

test("a block that was given a minute more is as long after a reload", async () => {
  const player = await started(simple);
  pass(player, 16);
  assert.equal(player.snapshot().can_extend, true);
  assert.equal(player.extend(), true);
  assert.equal(player.snapshot().timeline!.segments[0]!.duration_s, 120);
  await saved();
  kill();
  const reloaded = openTab();
  await reloaded.restore();
  const { index, left_s, strokes_left, timeline: line } = pass(reloaded, 4);
  assert.deepEqual([index, Math.round(left_s!), strokes_left, line!.totals.seconds_s], [0, 105, 42, 210]);
});

test("a metre block has no minute more: it lasts until it is rowed", async () => {
  const player = await started(timeline(metres(500, 110, 28)));
  pass(player, 16);
  assert.equal(player.snapshot().can_extend, false);
  assert.equal(player.extend(), false);
});

test("a screen that is not to be kept on is no fault", async () => {
  const player = await started(simple);
  assert.equal(player.snapshot().screen, "impossible");
  await chosen.change({ keep_awake: false });
  assert.equal(player.snapshot().screen, "not-wanted");
});

test("hold, go on, skip and back do what they say", async () => {
  const player = await started(simple);
  pass(player, 16);
  player.hold();
  assert.equal(pass(player, 30).phase, "held");
  player.goOn();
  assert.equal(player.snapshot().phase, "count-in");
  assert.equal(pass(player, 6).stroke, 4);
  player.skip();
  assert.equal(player.snapshot().index, 1);
  player.back();
  assert.equal(player.snapshot().index, 0);
});

test("the version grows when something has changed, and not with time", async () => {
  const player = await started(simple);
  const versions: number[] = [];
  player.subscribe(({ version }) => versions.push(version));
  const before = pass(player, 6).version;
  assert.equal(pass(player, 20).version, before);
  player.hold();
  assert.equal(player.snapshot().version, before + 1);
  assert.equal(versions.at(-1), before + 1);
});

test("the end of the plan ends the session, with its sums", async () => {
  const player = await started(simple);
  const snapshot = pass(player, 156);
  assert.deepEqual([snapshot.phase, snapshot.whole, snapshot.progress], ["finished", true, 1]);
  assert.equal(snapshot.done!.strokes, 48);
  assert.ok(Math.abs(snapshot.done!.seconds_s - 150) < 1e-6);
  await saved();
  assert.equal(await openSession(), undefined);
});

test("an end that only a frame's look has found is told to those who listen", async () => {
  const player = await started(simple);
  pass(player, 5 + 149);
  const phases: string[] = [];
  player.subscribe(({ phase }) => phases.push(phase));
  pass(player, 3);
  await saved();
  assert.equal(phases.at(-1), "finished");
});

test("an end before that is not whole, and what was rowed is kept", async () => {
  const player = await started(simple);
  pass(player, 35);
  player.end();
  assert.deepEqual([player.snapshot().phase, player.snapshot().whole, player.snapshot().done!.strokes], ["finished", false, 12]);
  player.close();
  assert.equal(player.snapshot().phase, "none");
});

test("a metre block waits for its tap, which may be dated back", async () => {
  const player = await started(timeline(metres(500, 110, 28), rest(60)));
  const waiting = pass(player, 125);
  assert.deepEqual([waiting.phase, waiting.left_s], ["waiting", null]);
  player.done(5);
  assert.deepEqual([player.snapshot().index, Math.round(player.snapshot().elapsed_s)], [1, 5]);
});

test("the gap waits, starts by a tap with a count-in, or by the wall clock", async () => {
  const player = await started(timeline(row(20, 24), gap(60), row(60, 30)));
  assert.equal(pass(player, 100).phase, "waiting");
  player.startAtClock(device.wall_ms + 90_000);
  const set = player.snapshot();
  assert.equal(set.starts_at_ms, device.wall_ms + 90_000);
  assert.ok(Math.abs(set.left_s! - 90) < 1e-6);
  player.startAtClock(null);
  assert.equal(player.snapshot().starts_at_ms, null);
  player.done();
  assert.deepEqual([player.snapshot().phase, player.snapshot().index], ["count-in", 2]);
  assert.equal(pass(player, 9.6).phase, "count-in", "ten seconds to sit down and take the handle");
  assert.equal(pass(player, 1).phase, "running");
});

test("skipping out of the gap while it counts in to a start by the clock counts on", async () => {
  const player = await started(timeline(row(60, 24), gap(240), row(60, 24)));
  pass(player, 66);
  player.startAtClock(device.wall_ms + 30_000);
  pass(player, 26);
  assert.equal(player.snapshot().phase, "count-in");
  player.skip();
  assert.deepEqual([player.snapshot().phase, player.snapshot().count_in], ["count-in", 4]);
  assert.deepEqual([pass(player, 4.2).phase, player.snapshot().index], ["running", 2]);
});

test("a start set by the clock stays at its minute when the clock is moved", async () => {
  const player = await started(timeline(row(60, 24), gap(240), row(60, 24)));
  pass(player, 66);
  const minute_ms = device.wall_ms + 90_000;
  player.startAtClock(minute_ms);
  pass(player, 10);
  device.wall_ms += 30_000;
  pass(player, 1);
  assert.equal(player.snapshot().starts_at_ms, minute_ms);
  assert.ok(Math.abs(player.snapshot().left_s! - 49) < 0.3, `${player.snapshot().left_s}`);
  device.wall_ms += 3_600_000;
  assert.deepEqual([player.snapshot().phase, Math.round(player.snapshot().left_s!)], ["running", 10], "past it: ten seconds to sit down");
});

test("a piece started by the clock keeps to it when the network corrects it, any other session does not", async () => {
  const begins = async (by_clock: boolean) => {
    const player = await started(timeline(row(20, 24), gap(60), row(600, 24)));
    pass(player, 60);
    if (by_clock) player.startAtClock(device.wall_ms + 30_000);
    pass(player, 30);
    if (!by_clock) player.skip();
    pass(player, 20);
    const before_s = player.snapshot().elapsed_s;
    device.wall_ms += 100;
    const passed_s = pass(player, 60).elapsed_s - before_s;
    player.close();
    await saved();
    return passed_s;
  };
  assert.ok(Math.abs((await begins(true)) - 60.1) < 0.006);
  assert.ok(Math.abs((await begins(false)) - 60) < 1e-6);
});

test("after an absence of up to 60 s the clock has run on, and that is told", async () => {
  const player = await started(simple);
  pass(player, 10);
  away(41);
  const snapshot = player.snapshot();
  assert.deepEqual([snapshot.phase, snapshot.index], ["running", 0]);
  assert.ok(Math.abs(snapshot.elapsed_s - 46) < 1e-6);
  assert.deepEqual([snapshot.notice!.kind, Math.round(snapshot.notice!.seconds)], ["was-away", 41]);
});

for (const [answer, index, elapsed_s] of [["clock", 1, 15], ["stopped", 0, 5]] as const) {
  test(`after a longer absence it asks, and goes on as answered: ${answer}`, async () => {
    const player = await started(simple);
    pass(player, 10);
    away(70);
    const asking = pass(player, 2);
    assert.equal(asking.phase, "asking");
    assert.ok(Math.abs(asking.absence!.away_s - 70) < 1);
    assert.deepEqual([asking.index, Math.round(asking.elapsed_s)], [0, 5]);
    player.hold();
    assert.equal(player.snapshot().phase, "asking");
    device.wall_ms -= 2000;
    device.mono_ms -= 2000;
    await player.answerAbsence(answer);
    device.wall_ms += 2000;
    device.mono_ms += 2000;
    const after = player.snapshot();
    assert.equal(after.index, index);
    assert.ok(Math.abs(after.elapsed_s - elapsed_s - (answer === "clock" ? 2 : 0)) < 0.1, `${after.elapsed_s}`);
  });
}

test("to end after an absence counts nothing of the absence", async () => {
  const player = await started(simple);
  pass(player, 15);
  away(600);
  player.snapshot();
  await player.answerAbsence("end");
  assert.equal(player.snapshot().phase, "finished");
  assert.ok(Math.abs(player.snapshot().done!.seconds_s - 10) < 0.1);
});

test("a page that is opened while the question stands asks it again", async () => {
  const player = await started(simple);
  pass(player, 10);
  away(70);
  assert.equal(pass(player, 20).phase, "asking");
  await saved();
  kill();
  const other = openTab();
  await other.restore();
  assert.equal(other.snapshot().phase, "asking");
  assert.ok(other.snapshot().absence!.away_s >= 90, `${other.snapshot().absence!.away_s}`);
});

test("a page that is opened while the question after a sleep stands asks it again", async () => {
  const player = await started(simple);
  pass(player, 10);
  device.wall_ms += 70_000;
  away(1);
  assert.equal(pass(player, 1).phase, "asking");
  await saved();
  kill();
  const other = openTab();
  await other.restore();
  assert.equal(other.snapshot().phase, "asking");
});

test("a session killed right after the wall clock was moved goes on at its own second", async () => {
  const player = await started(simple);
  pass(player, 10);
  device.wall_ms += 3_600_000;
  pass(player, 0.2);
  await saved();
  kill();
  away(2);
  const other = openTab();
  await other.restore();
  assert.equal(other.snapshot().phase, "running");
  assert.ok(Math.abs(other.snapshot().elapsed_s - 7.2) < 0.1, `${other.snapshot().elapsed_s}`);
});

test("an end that storage refuses is told, and stored as soon as there is room", async (t) => {
  const player = await started(simple);
  const { record } = await leftOpen();
  pass(player, 20);
  t.mock.method(database, "write", () => Promise.reject(Object.assign(new Error("full"), { name: "QuotaExceededError" })));
  player.end();
  await saved();
  assert.deepEqual([player.snapshot().phase, player.snapshot().kept], ["finished", "full"]);
  player.close();
  assert.notEqual(await openSession(), undefined);
  t.mock.restoreAll();
  await new Promise((done) => setTimeout(done, 1100));
  assert.equal(await openSession(), undefined);
  assert.deepEqual((await factsOf(record.id)).map(({ kind }) => kind), ["started", "ended"]);
  assert.equal(player.snapshot().kept, "memory", "as everything in this test");
});

test("a tab that wakes to find the session taken over writes no sign of life over that of the other", async () => {
  const first = await started(simple);
  const { record } = await leftOpen();
  away(30);
  const second = openTab();
  await second.takeOver();
  await saved();
  assert.ok((await database.get("heartbeats", record.id))!.session_s >= 34, "the sign of life of the second tab");
  first.close();
});

test("what waits to be stored is given up when another tab takes the session over: that tab has gone on without it", async (t) => {
  const first = await started(simple);
  const { record } = await leftOpen();
  t.mock.method(database, "put", () => Promise.reject(new Error("no")));
  pass(first, 10);
  first.hold();
  await saved();
  const second = openTab();
  await second.takeOver();
  t.mock.restoreAll();
  second.skip();
  await new Promise((done) => setTimeout(done, 1100));
  assert.deepEqual((await factsOf(record.id)).map(({ kind }) => kind), ["started", "skipped"]);
});

test("in a hold and within a gap an absence is no question: both answers would be the same", async () => {
  const player = await started(timeline(gap(600), row(60, 24)));
  pass(player, 10);
  away(300);
  assert.equal(player.snapshot().phase, "running");
  player.hold();
  away(3000);
  assert.equal(player.snapshot().phase, "held");
});

test("a session comes back after a reload, at the stroke where the clock has brought it", async () => {
  const player = await started(simple);
  pass(player, 20);
  player.hold();
  pass(player, 5);
  player.goOn();
  pass(player, 7);
  await saved();
  kill();
  away(3);
  const other = openTab();
  assert.equal(await other.restore(), true);
  const snapshot = other.snapshot();
  // Held at 15 s, on from its catch at 15 after 5 s of count-in, 2 s of rowing and 3 s of reload.
  assert.ok(Math.abs(snapshot.elapsed_s - 20) < 1.1, `${snapshot.elapsed_s}`);
  assert.deepEqual([snapshot.phase, snapshot.index], ["running", 0]);
});

test("a session that was killed long ago asks first, and after 12 h can only be ended or discarded", async () => {
  const player = await started(simple);
  pass(player, 20);
  await saved();
  kill();
  away(13 * 3600);
  const other = openTab();
  await other.restore();
  assert.deepEqual([other.snapshot().phase, other.snapshot().absence!.kind], ["asking", "too-old"]);
  await other.answerAbsence("clock");
  assert.equal(other.snapshot().phase, "asking");
  await other.answerAbsence("discard");
  assert.equal(other.snapshot().phase, "none");
  assert.equal(await openSession(), undefined);
});

test("a clock set back while the app was away leaves going on from where one stopped, not by the clock", async () => {
  const player = await started(simple);
  pass(player, 25);
  player.hold();
  pass(player, 0.4);
  player.goOn();
  await saved();
  kill();
  device.wall_ms -= 3_600_000;
  const other = openTab();
  await other.restore();
  assert.deepEqual([other.snapshot().phase, other.snapshot().absence!.kind], ["asking", "unsure"]);
  await other.answerAbsence("clock");
  assert.equal(other.snapshot().phase, "asking");
  await other.answerAbsence("stopped");
  const { phase, elapsed_s } = other.snapshot();
  assert.equal(phase, "count-in");
  assert.ok(Math.abs(elapsed_s - 20) < 2.6, `${elapsed_s}`);
});

for (const [name, seconds] of [["a moment", 20], ["an hour", 3600], ["a day", 86_400]] as const) {
  test(`a session left open ${name} ago ends for another one, and stays ended`, async () => {
    const player = await started(simple);
    pass(player, 20);
    await saved();
    kill();
    away(seconds);
    const other = openTab();
    await other.restore();
    await other.endForAnother();
    assert.equal(other.snapshot().phase, "none");
    assert.equal(await openSession(), undefined);
  });
}

test("there is nothing to restore where nothing was left open", async () => {
  assert.equal(await openTab().restore(), false);
});

test("a second tab is told that the first has the session, and can take it over at the same stroke", async () => {
  const first = await started(simple);
  pass(first, 31);
  await saved();
  const second = openTab();
  assert.equal(await second.restore(), true);
  assert.equal(second.snapshot().phase, "elsewhere");
  assert.equal(await second.start(planOf(simple), simple), false);
  assert.equal(await second.takeOver(), true);
  assert.deepEqual([second.snapshot().phase, second.snapshot().stroke], ["running", 10]);
  assert.deepEqual([first.snapshot().phase, first.snapshot().owner], ["elsewhere", false]);
  first.hold();
  assert.equal(second.snapshot().phase, "running");
});

test("every command is stored as a fact before anything else happens to it", async () => {
  const player = await started(simple);
  const { record } = await leftOpen();
  pass(player, 10);
  player.hold();
  pass(player, 0.4);
  player.goOn();
  pass(player, 10);
  player.skip();
  await saved();
  assert.deepEqual((await factsOf(record.id)).map(({ kind }) => kind), ["started", "held", "went-on", "skipped"]);
});

test("a session is open from its start until it is ended or discarded", async () => {
  const player = await started(simple);
  await saved();
  assert.notEqual(await openSession(), undefined);
  player.end();
  await saved();
  assert.equal(await openSession(), undefined);
});

test("a session that was left open and not gone on with is ended by the start of another", async () => {
  await started(simple);
  const { record } = await leftOpen();
  kill();
  const other = openTab();
  await other.start(planOf(simple), simple);
  await saved();
  assert.equal((await database.get("log", record.id))!.state, "ended");
  assert.deepEqual((await database.all("sessions")).map(({ id }) => id === record.id), [false]);
});

test("an ended session moves to the log, so that opening the app does not read every session ever rowed", async () => {
  const player = await started(simple);
  const { record } = await leftOpen();
  pass(player, 20);
  await player.endForAnother();
  assert.deepEqual(await database.all("sessions"), []);
  assert.deepEqual(await database.get("log", record.id), { ...record, state: "ended" });
});

test("on a device that stores nothing, that is said", async () => {
  const player = await started(simple);
  assert.equal(player.snapshot().kept, "memory");
});

test("a second tap within a second ends nothing more", async () => {
  const player = await started(timeline(metres(300, 60, 28), metres(300, 60, 28), rest(30)));
  pass(player, 50);
  player.done();
  player.done();
  assert.equal(player.snapshot().index, 1);
  pass(player, 50);
  player.done();
  assert.equal(player.snapshot().index, 2);
});

test("a finger that slips presses once: a hold stays held, one block is skipped, one minute given", async () => {
  const player = await started(timeline(row(60, 24), row(60, 24), row(60, 24)));
  pass(player, 10);
  player.hold();
  pass(player, 0.2);
  player.goOn();
  assert.equal(player.snapshot().phase, "held");
  pass(player, 0.4);
  player.goOn();
  assert.notEqual(player.snapshot().phase, "held");
  pass(player, 10);
  player.skip();
  player.skip();
  assert.equal(player.snapshot().index, 1);
  pass(player, 0.4);
  const before = player.snapshot().left_s!;
  player.extend();
  player.extend();
  assert.ok(player.snapshot().left_s! - before < 61);
  player.skip();
  assert.equal(player.snapshot().index, 2, "another button is another press");
});

test("the second press of one that ended a gap holds nothing, whatever lies under the finger then", async () => {
  const player = await started(timeline(gap(60), row(60, 24)));
  pass(player, 10);
  player.done();
  pass(player, 0.2);
  player.hold();
  assert.notEqual(player.snapshot().phase, "held");
  pass(player, 0.2);
  player.hold();
  assert.equal(player.snapshot().phase, "held");
});

test("a press after a sleep is no slip, though the monotonic clock stood still", async () => {
  const player = await started(timeline(open(24), open(24), row(60, 24)));
  pass(player, 10);
  player.done();
  assert.equal(player.snapshot().index, 1);
  device.wall_ms += 45_000;
  player.done();
  assert.equal(player.snapshot().index, 2);
});

test("a session that is restored twice at once is restored once", async () => {
  const player = await started(simple);
  pass(player, 10);
  await saved();
  kill();
  const again = openTab();
  assert.deepEqual(await Promise.all([again.restore(), again.restore()]), [true, true]);
  assert.notEqual(again.snapshot().phase, "elsewhere");
});

test("storage that is silent keeps nobody from starting: what is usual counts", async (t) => {
  t.mock.method(database, "get", () => new Promise(() => undefined));
  chosen = new Chosen(undefined);
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const starting = openTab().start(planOf(simple), simple);
  await new Promise((done) => setImmediate(done));
  t.mock.timers.tick(1000);
  assert.equal(await starting, true);
  t.mock.timers.reset();
  t.mock.restoreAll();
});
