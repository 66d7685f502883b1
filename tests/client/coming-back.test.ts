/** What is done while the disk does not answer is added to what it holds: nothing of either is lost. */
import assert from "node:assert/strict";
import { test, type TestContext } from "node:test";
import { makeDatabase, type Database } from "../../static/src/data/database.js";
import { STEPS_AT_ONCE } from "../../static/src/data/disk.js";
import { joinedRecord } from "../../static/src/data/joining.js";
import type { PlanRecord } from "../../static/src/data/plans.js";
import type { Settings } from "../../static/src/data/settings.js";
import { row, timeline } from "./builders.js";
import { SilentDisk, pass, sleeping } from "./silent-disk.js";

const line = timeline(row(60, 24));
const plan = (id: string, tags: string[], title = "One"): PlanRecord =>
  ({ id, source: id.split(":")[0], name: id.split(":")[1], kind: "", plan: { ...line.plan, title }, timeline: line, tags, kept_at_ms: 1 }) as PlanRecord;
const settings = (values: object) => ({ name: "all", values: values as Settings });
const result = (metres: number, seconds: number) => ({ metres, seconds });

/** A disk that holds this, has fallen silent, and is gone on without. */
async function without(t: TestContext, before: (database: Database) => Promise<unknown> = async () => undefined): Promise<{ disk: SilentDisk; database: Database }> {
  sleeping(t);
  const disk = new SilentDisk();
  const database = makeDatabase(disk.open);
  const kept = before(database);
  await pass(t, 1);
  await kept;
  disk.silent = true;
  const asked = database.get("plans", "x");
  await pass(t, 4);
  database.goOnWithout();
  await asked;
  assert.deepEqual([database.where(), database.isWithout()], ["memory", true]);
  disk.writes = 0;
  return { disk, database };
}

async function answering(t: TestContext, { disk, database }: { disk: SilentDisk; database: Database }): Promise<void> {
  disk.silent = false;
  await pass(t, 25);
  assert.deepEqual([database.where(), database.isSilent(), database.isWithout()], ["disk", false, false]);
}

const kept = (disk: SilentDisk, store: Parameters<SilentDisk["of"]>[0], key: unknown) => disk.of(store).get(JSON.stringify(key));

test("everything that was done in memory comes to the disk, of every store", async (t) => {
  const there = await without(t);
  const { disk, database } = there;
  await database.change("settings", "all", (before) => settings({ ...before?.values, draft: "main\n2000m", walls: [{ id: "w", key: "k", name: "n" }] }));
  await database.put("athletes", { id: "me", athlete: { results: [result(2000, 462)] }, answer: null });
  await database.put("technique", { id: "technique", library: { drills: [] } as never });
  await database.put("facts", { session: "a", number: 0, fact: { kind: "started", at_s: 0, count_in_s: 0 } });
  await database.put("heartbeats", { session: "a", session_s: 1, wall_ms: 1, wall_zero_ms: 0 });
  for (const store of ["plans", "sessions", "log", "entries"] as const) await database.put(store, { id: "a" } as never);
  await answering(t, there);
  const found = ["settings", "athletes", "technique", "facts", "heartbeats", "plans", "sessions", "log", "entries"].map((store) => [...disk.of(store as "log").keys()]);
  assert.deepEqual(found, [['"all"'], ['"me"'], ['"technique"'], ['["a",0]'], ['"a"'], ['"a"'], ['"a"'], ['"a"'], ['"a"']]);
  assert.equal((kept(disk, "settings", "all")!["values"] as Settings).draft, "main\n2000m");
});

test("a record made of nothing in memory does not take away what the disk has more of it", async (t) => {
  const there = await without(t, async (database) => {
    await database.put("entries", { id: "a", cr10: 7, note: "Long." });
    await database.put("plans", plan("sent:s", ["juniors"]));
    await database.put("settings", settings({ volume: 0.3, drafts: { "mine:a": "A", "mine:b": "B" } }));
    await database.put("athletes", { id: "me", athlete: { age: 40, level: "club", results: [result(2000, 450)] }, answer: null });
  });
  const { disk, database } = there;
  await database.change("entries", "a", (before) => ({ ...(before ?? { id: "a" }), note: "Long, and longer." }));
  await database.put("plans", plan("sent:s", []));
  await database.change("settings", "all", (before) => settings({ ...before?.values, drafts: { "mine:b": "B and more" } }));
  await database.put("athletes", { id: "me", athlete: { age: 41, results: [result(500, 95)] }, answer: null });
  await answering(t, there);
  assert.deepEqual(kept(disk, "entries", "a"), { id: "a", cr10: 7, note: "Long, and longer." });
  assert.deepEqual(kept(disk, "plans", "sent:s")!["tags"], ["juniors"]);
  assert.deepEqual(kept(disk, "settings", "all"), { name: "all", values: { volume: 0.3, drafts: { "mine:a": "A", "mine:b": "B and more" } } });
  assert.deepEqual(kept(disk, "athletes", "me")!["athlete"], { age: 41, level: "club", results: [result(2000, 450), result(500, 95)] });
});

test("what was removed in memory goes from the disk, in its order", async (t) => {
  const there = await without(t, async (database) => {
    for (const id of ["a", "b"]) await database.put("entries", { id, cr10: 7 });
  });
  await there.database.put("entries", { id: "b", note: "early" });
  await there.database.remove("entries", "a");
  await there.database.remove("entries", "b");
  await there.database.put("entries", { id: "b", note: "anew" });
  await answering(t, there);
  assert.deepEqual([...there.disk.of("entries").values()], [{ id: "b", note: "anew" }]);
});

test("where the disk refuses half of it, all of it stays in memory and comes later", async (t) => {
  const there = await without(t);
  const { disk, database } = there;
  const many = STEPS_AT_ONCE + 20;
  for (let number = 0; number < many; number += 1) await database.put("facts", { session: "a", number, fact: { kind: "held", at_s: number } });
  [disk.silent, disk.refuses] = [false, { error: Object.assign(new Error("full"), { name: "QuotaExceededError" }), after: 1 }];
  await pass(t, 25);
  assert.deepEqual([database.where(), disk.of("facts").size, (await database.keys("facts")).length], ["memory", STEPS_AT_ONCE, many]);
  disk.refuses = null;
  await answering(t, there);
  assert.equal(disk.of("facts").size, many);
});

test("what is done while it comes back is not lost, and nothing comes back twice at once", async (t) => {
  const there = await without(t);
  const { disk, database } = there;
  await database.put("entries", { id: "a", note: "one" });
  let late: Promise<void> | undefined;
  disk.during = () => (late ??= database.put("entries", { id: "b", note: "meanwhile" }));
  disk.silent = false;
  const both = [database.reopen(), database.reopen()];
  await pass(t, 25);
  await Promise.all(both);
  await late;
  assert.deepEqual([database.where(), disk.writes, [...disk.of("entries").keys()]], ["disk", 2, ['"a"', '"b"']]);
});

test("gone on without once, it is not gone on without again: what is in memory stays", async (t) => {
  const { database } = await without(t);
  await database.put("entries", { id: "a", note: "kept" });
  database.goOnWithout();
  assert.deepEqual(await database.get("entries", "a"), { id: "a", note: "kept" });
});

test("connections of storage that was silent are closed, those that come late too", async (t) => {
  sleeping(t);
  const disk = new SilentDisk();
  disk.silent = true;
  let late: ((handle: Awaited<ReturnType<SilentDisk["open"]>>) => void) | undefined;
  const database = makeDatabase((dropped) => (late ? disk.open(dropped) : new Promise((open) => (late = open))));
  const asked = database.get("plans", "x");
  await pass(t, 6);
  assert.equal(disk.opened, 1);
  late!(await disk.open(() => undefined));
  await pass(t, 1);
  assert.equal(disk.closed, 1, "the opening that was given up");
  await pass(t, 15);
  assert.deepEqual([disk.opened, disk.closed], [3, 2], "the one that gave no answer, and no sooner than that is known");
  disk.silent = false;
  await pass(t, 16);
  assert.equal(await asked, undefined);
});

test("joining twice is joining once, and of two drafts neither is lost", () => {
  const joins = [
    ["settings", settings({ draft: "title: a\nmain\n5'" }), settings({ draft: "title: b\nmain\n10'" })],
    ["settings", settings({ draft: "title: a\nmain\n5'" }), settings({ draft: "title: a\nmain\n5'\n10'" })],
    ["settings", settings({ draft: "title: a" }), settings({ draft: "" })],
    ["settings", settings({ preferences: { version: 1, values: { voice: false } } }), settings({ preferences: { version: 1, values: { keys: false } } })],
    ["settings", settings({ wall: { version: 1, lanes: [{ name: "A" }], sight: null, plan: null } }), settings({ wall: { version: 1, lanes: [], sight: { distance_m: 5 }, plan: null } })],
    ["settings", settings({ walls: [{ id: "w", key: "1", name: "Hall" }] }), settings({ walls: [{ id: "w", key: "2", name: "Wall 1" }, { id: "v", key: "3", name: "Wall 2" }] })],
    ["settings", settings({ walls: null, draft: 5, volume: 0.3 }), settings({ walls: [{ id: "w", key: "1", name: "Hall" }], draft: "title: b" })],
  ] as const;
  const after = joins.map(([store, disk, memory]) => joinedRecord(store, disk, memory));
  assert.deepEqual(after.map(({ values }) => values), [
    { draft: "title: b\nmain\n10'\n\ntitle: a\nmain\n5'" },
    { draft: "title: a\nmain\n5'\n10'" },
    { draft: "title: a" },
    { preferences: { version: 1, values: { voice: false, keys: false } } },
    { wall: { version: 1, lanes: [{ name: "A" }], sight: { distance_m: 5 }, plan: null } },
    { walls: [{ id: "w", key: "1", name: "Hall", given_keys: ["2"] }, { id: "v", key: "3", name: "Wall 2" }] },
    { walls: [{ id: "w", key: "1", name: "Hall" }], draft: "title: b", volume: 0.3 },
  ]);
  for (const [index, [store, , memory]] of joins.entries()) assert.deepEqual(joinedRecord(store, after[index]!, memory), after[index]);
});

test("a plan stays as the disk has it, but for one's own that says something else now, and one that is damaged there", () => {
  const [mine, other] = [plan("mine:a", ["juniors"]), plan("mine:a", ["Tuesday"], "Two")];
  assert.deepEqual(joinedRecord("plans", { ...mine, reasons: ["kept"] }, plan("mine:a", ["Tuesday"])), { ...mine, reasons: ["kept"], tags: ["juniors", "Tuesday"] });
  assert.deepEqual(joinedRecord("plans", mine, other), { ...other, tags: ["juniors", "Tuesday"] });
  assert.deepEqual(joinedRecord("plans", { ...mine, timeline: null as never, tags: 7 as never }, other), other);
});
