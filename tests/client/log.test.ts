/** The log: what was rowed, what was said of it, and what is left of either when storage is damaged. */
import assert from "node:assert/strict";
import { beforeEach, mock, test } from "node:test";
import { database } from "../../static/src/data/database.js";
import { addressOfPlan, forgetSession, logged } from "../../static/src/data/log.js";
import { LONGEST_NOTE, areRemarks, isRefused, remark, remarksOf, say, subscribe } from "../../static/src/data/remarks.js";
import { closeSession, putAside, saveFact, saveHeartbeat, saveSession, type SessionRecord } from "../../static/src/data/sessions.js";
import type { Fact } from "../../static/src/timeline/facts.js";
import { metres, rest, row, timeline } from "./builders.js";

const plan = timeline(row(60, 24), rest(30), metres(500, 110, 28));
const WHOLE: Fact[] = [{ kind: "started", at_s: 0, count_in_s: 10 }, { kind: "tapped", at_s: 212, ago_s: 2, count_in_s: 0 }, { kind: "ended", at_s: 212 }];

function recordOf(id: string, made_at_ms: number): SessionRecord {
  return { id, plan_id: "built-in:rate-ladder", plan: { ...plan.plan, title: `Session ${id}` }, timeline: plan, app: "main", made_at_ms, state: "open" };
}

async function rowed(id: string, made_at_ms = 1_795_000_000_000, facts = WHOLE): Promise<void> {
  const record = recordOf(id, made_at_ms);
  await saveSession(record, facts[0]!);
  for (const [index, fact] of facts.slice(1).entries()) await saveFact(id, index + 1, fact);
  await closeSession(record);
}

beforeEach(async () => {
  for (const store of ["log", "entries", "facts", "heartbeats", "sessions", "plans"] as const) {
    for (const key of await database.keys(store)) await database.remove(store, key);
  }
});

test("sessions stand in it the newest first, with what the end screen said of them", async () => {
  await rowed("a", 1000);
  await rowed("c", 3000, [WHOLE[0]!, { kind: "ended", at_s: 40 }]);
  await rowed("b", 2000);
  const { sessions, unsound } = await logged();
  assert.deepEqual([sessions.map(({ id }) => id), unsound], [["c", "b", "a"], 0]);
  assert.deepEqual(sessions[1]!.figures, {
    title: "Session b", plan_id: "built-in:rate-ladder", made_at_ms: 2000, whole: true,
    done: { seconds_s: 200, strokes: 75 }, planned: { seconds_s: 200, strokes: 0 },
    pieces: [{ metres: 500, seconds_s: 110, held: false, whole: true }],
  });
  assert.deepEqual([sessions[0]!.figures.whole, sessions[0]!.figures.done.seconds_s], [false, 30]);
});

test("what was worked out once is not worked out again", async () => {
  await rowed("a");
  const first = await logged();
  await database.remove("facts", ["a", 0]);
  assert.deepEqual(await logged(), first);
});

test("a long log is shown as it is worked out: the opened one, then the newest, and what is known already at once", async () => {
  await rowed("known", 500);
  await logged();
  for (let made = 1; made <= 80; made += 1) await rowed(`s${made}`, made * 1000);
  const shown: string[][] = [];
  const { sessions } = await logged((so_far) => shown.push(so_far.sessions.map(({ id }) => id)), "s3");
  const newest = (many: number) => Array.from({ length: many }, (_, index) => `s${80 - index}`);
  assert.deepEqual(shown, [["s3", "known"], [...newest(28), "s3", "known"], [...newest(58), "s3", "known"]]);
  assert.deepEqual(sessions.map(({ id }) => id), [...newest(80), "known"]);
});

test("one that was left open and put away was rowed until its last sign of life", async () => {
  await rowed("a", 1000, [WHOLE[0]!]);
  await saveHeartbeat({ session: "a", session_s: 50, wall_ms: 51_000, wall_zero_ms: 1000 });
  const { figures } = (await logged()).sessions[0]!;
  assert.deepEqual([figures.done.seconds_s, figures.whole], [40, false]);
});

test("what is damaged is left out and counted, and hides nothing else", async () => {
  await rowed("good");
  await rowed("half");
  await database.remove("facts", ["half", 0]);
  await saveSession(recordOf("aside", 1), WHOLE[0]!);
  await database.put("sessions", { ...recordOf("aside", 1), timeline: null as never });
  await putAside("aside");
  const { sessions, unsound } = await logged();
  assert.deepEqual([sessions.map(({ id }) => id), unsound], [["good"], 2]);
});

test("what is put aside while it is not to be found, as in memory, is not taken off the disk", async (t) => {
  await rowed("a");
  const write = t.mock.method(database, "write");
  await putAside("a");
  assert.equal(write.mock.callCount(), 0);
});

test("what is said is kept beside the figures, whichever comes first", async () => {
  await rowed("a");
  await remark("a", { note: "Too quick at first." });
  await logged();
  await remark("a", { cr10: 7 });
  assert.deepEqual(await remarksOf("a"), { cr10: 7, note: "Too quick at first." });
  const [session] = (await logged()).sessions;
  assert.deepEqual([session!.cr10, session!.note, session!.figures.whole], [7, "Too quick at first.", true]);
});

test("remarks are taken back by saying nothing, and 0 says something", async () => {
  await remark("a", { cr10: 0, note: "x" });
  assert.deepEqual(await remarksOf("a"), { cr10: 0, note: "x" });
  await remark("a", { cr10: undefined, note: "" });
  assert.deepEqual(await remarksOf("a"), {});
});

test("remarks that storage does not hand out are not taken for none, nor are those on a disk that is gone on without", async (t) => {
  await remark("a", { note: "A whole paragraph" });
  const get = t.mock.method(database, "get", () => Promise.reject(new Error("lost")));
  await assert.rejects(remarksOf("a"), /lost/);
  get.mock.restore();
  t.mock.method(database, "isWithout", () => true);
  await assert.rejects(remarksOf("b"), /on a disk/);
  await rowed("c");
  assert.deepEqual(await remarksOf("c"), {});
});

test("what cannot be stored is found again on every screen, is said to be refused, and is stored in one go", async (t) => {
  mock.timers.enable({ apis: ["setTimeout"] });
  await rowed("a");
  await rowed("b");
  const told: boolean[] = [];
  const stop = subscribe(() => told.push(isRefused("a")));
  const change = t.mock.method(database, "change", () => Promise.reject(Object.assign(new Error("full"), { name: "QuotaExceededError" })));
  await say("a", { note: "old" });
  await say("a", { note: "old and new" });
  await say("a", { cr10: 4 });
  assert.deepEqual([isRefused("a"), isRefused("b")], [true, false]);
  assert.deepEqual(await remarksOf("a"), { cr10: 4, note: "old and new" });
  assert.deepEqual((await logged()).sessions.find(({ id }) => id === "a")!.note, "old and new");
  change.mock.restore();
  mock.timers.tick(1000);
  for (let turn = 0; turn < 5; turn += 1) await new Promise((done) => setImmediate(done));
  assert.deepEqual([await database.get("entries", "a").then((entry) => [entry!.cr10, entry!.note]), isRefused("a"), told], [[4, "old and new"], false, [true, false]]);
  stop();
  mock.timers.reset();
});

test("what still waits of a session that is taken off the device does not come back", async (t) => {
  mock.timers.enable({ apis: ["setTimeout"] });
  await rowed("a");
  const change = t.mock.method(database, "change", () => Promise.reject(new Error("lost")));
  await say("a", { note: "x" });
  const write = t.mock.method(database, "write", () => Promise.reject(new Error("lost")));
  await assert.rejects(forgetSession("a"), /lost/);
  assert.deepEqual(await remarksOf("a"), { note: "x" }, "it is still here, and so is what was said");
  [change, write].forEach(({ mock }) => mock.restore());
  await forgetSession("a");
  mock.timers.tick(2000);
  for (let turn = 0; turn < 5; turn += 1) await new Promise((done) => setImmediate(done));
  assert.deepEqual([await database.keys("entries"), isRefused("a")], [[], false]);
  mock.timers.reset();
});

test("a moment past the end of dates is damage, and hides nothing else", async () => {
  await rowed("good");
  await rowed("far", 8.64e15 + 1);
  await rowed("last", 8.64e15);
  const { sessions, unsound } = await logged();
  assert.deepEqual([sessions.map(({ id }) => id), unsound], [["last", "good"], 1]);
  await database.change("entries", "good", (entry) => ({ ...entry!, figures: { ...entry!.figures!, made_at_ms: 1e17 } }));
  assert.equal((await logged()).sessions[1]!.figures.made_at_ms, 1_795_000_000_000);
});

test("a damaged entry loses its damage alone", async () => {
  await rowed("a");
  await logged();
  await remark("a", { note: "whole" });
  await database.change("entries", "a", (entry) => ({ ...entry!, cr10: 11, figures: { ...entry!.figures!, done: null as never } }));
  const { sessions } = await logged();
  assert.deepEqual([sessions[0]!.note, sessions[0]!.cr10, sessions[0]!.figures.done.seconds_s], ["whole", undefined, 200]);
});

test("efforts are whole and up to 10, and a note has its bound", () => {
  assert.ok(areRemarks({}) && areRemarks({ cr10: 0 }) && areRemarks({ cr10: 10, note: "x".repeat(LONGEST_NOTE) }));
  for (const wrong of [{ cr10: 11 }, { cr10: -1 }, { cr10: 2.5 }, { cr10: "5" }, { note: "" }, { note: 5 }, { note: "x".repeat(LONGEST_NOTE + 1) }]) {
    assert.ok(!areRemarks(wrong), JSON.stringify(wrong).slice(0, 40));
  }
});

test("a session goes with its facts, its last sign of life and all that was said of it", async () => {
  await rowed("a");
  await rowed("b");
  await saveHeartbeat({ session: "a", session_s: 1, wall_ms: 1, wall_zero_ms: 0 });
  await remark("a", { note: "x" });
  await logged();
  await forgetSession("a");
  assert.deepEqual((await logged()).sessions.map(({ id }) => id), ["b"]);
  for (const store of ["log", "entries", "facts", "heartbeats"] as const) {
    assert.ok((await database.keys(store)).every((key) => key !== "a" && key[0] !== "a"), store);
  }
});

test("the plan of a session is found where it is still here", async () => {
  assert.equal(await addressOfPlan("built-in:rate-ladder"), "/plan/rate-ladder");
  assert.equal(await addressOfPlan("mine:gone"), "");
  await database.put("plans", { id: "mine:x", source: "mine", name: "x", kind: "", plan: plan.plan, timeline: plan, kept_at_ms: 1 });
  assert.equal(await addressOfPlan("mine:x"), "/mine/x");
});
