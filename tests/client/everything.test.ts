/** Everything on a device: from a file to a device and to a file again, checked whole, added and never lost. */
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { beforeEach, test } from "node:test";
import { database } from "../../static/src/data/database.js";
import { STEPS_AT_ONCE } from "../../static/src/data/disk.js";
import type { Store } from "../../static/src/data/shape.js";
import { BroughtInPart, bringBack, everything } from "../../static/src/data/everything.js";
import { NotEverything, textOf, type Everything } from "../../static/src/data/everything-file.js";
import { changeAthlete, addResult, readAthlete } from "../../static/src/data/athlete.js";
import { broughtWords } from "../../static/src/components/device-file.js";
import { draftOf, dropDraft, keepDraft } from "../../static/src/data/drafts.js";
import { changePreferences, readPreferences } from "../../static/src/data/preferences.js";
import { NotAPlan, openPlanFile } from "../../static/src/data/plan-file.js";
import { logged } from "../../static/src/data/log.js";
import { LONGEST_NOTE, remark } from "../../static/src/data/remarks.js";
import { keep, keepMine, keptPlans, openMine } from "../../static/src/data/plans.js";
import { closeSession, saveFact, saveSession, type SessionRecord } from "../../static/src/data/sessions.js";
import { changeSettings, readSettings } from "../../static/src/data/settings.js";
import { changeWall, readWall } from "../../static/src/data/wall.js";
import { compiledForAnybody } from "../../static/src/plan/compile.js";
import { sumOf } from "../../static/src/plan/crc32.js";
import type { Plan, Timeline } from "../../static/src/plan/wire.js";
import { written } from "../../static/src/plan/written.js";
import { chance } from "./builders.js";

const STORES: readonly Store[] = ["plans", "sessions", "log", "entries", "facts", "athletes", "settings"];
const NOW = new Date("2026-11-29T06:00:00Z");
const PLANS = readdirSync("tests/shared").filter((name) => name.endsWith(".json"))
  .map((name) => (JSON.parse(readFileSync(`tests/shared/${name}`, "utf8")) as { timeline_plain?: Timeline }).timeline_plain?.plan).filter((plan) => plan !== undefined);

async function wipe(): Promise<void> {
  for (const store of STORES) for (const key of await database.keys(store)) await database.remove(store, key);
}

beforeEach(wipe);

const own = (plan: Plan, name?: string) => keepMine({ plan, timeline: compiledForAnybody(plan), text: written(plan) }, name);

async function rowed(id: string, plan: Plan, plan_id = "mine:x"): Promise<void> {
  const record: SessionRecord = { id, plan_id, plan, timeline: compiledForAnybody(plan), app: "main", made_at_ms: 1_795_000_000_000, state: "open" };
  await saveSession(record, { kind: "started", at_s: 0, count_in_s: 10 });
  await saveFact(id, 1, { kind: "held", at_s: 20 });
  await saveFact(id, 2, { kind: "ended", at_s: 30 });
  await closeSession(record);
}

/** A device with something of everything, by chance. */
async function live(random: () => number): Promise<void> {
  const some = PLANS.filter(() => random() < 0.6);
  for (const [index, plan] of some.entries()) {
    const kept = await own(plan, index % 2 ? `p${index}` : undefined);
    if (random() < 0.5) await keep({ ...kept, tags: ["Tuesday", `group ${index}`] });
    if (random() < 0.5) await rowed(`session${index}`, plan);
    if (random() < 0.5) await remark(`session${index}`, { cr10: index % 11, note: "Too quick at first.\nThen \ud83d even" });
  }
  await keep({ id: `sent:${"a".repeat(16)}`, source: "sent", name: "a".repeat(16), address: `/p/${"a".repeat(16)}`, kind: "", plan: PLANS[0]!, timeline: compiledForAnybody(PLANS[0]!), kept_at_ms: 5 });
  await addResult({ metres: 2000, seconds: 420 + Math.round(random() * 600) / 10 });
  if (random() < 0.5) await changeAthlete({ age: 30, level: "trained", mass_kg: 71.5 });
  await changePreferences({ biggest: "rate", ...(random() < 0.5 ? { hand: "left" as const } : {}) });
  await changeSettings({ volume: 0.3, draft: "title: half a \ud83d", drafts: { "mine:p1": "5' r18 \"light\"\n" }, publish_key: "secret", cautions_read: true });
  if (random() < 0.5) await changeWall({ lanes: [{ name: "Wren", result: { metres: 2000, seconds: 450 } }], sight: null });
}

const saved = async () => (await everything(NOW)).text;
const asFile = (text: string) => new Blob([text]);
const all = async () => JSON.stringify(await Promise.all(STORES.map((store) => database.all(store))));

test("a device brought back from its file to an empty one writes the same file", async () => {
  for (let seed = 1; seed <= 12; seed += 1) {
    await wipe();
    await live(chance(seed));
    const text = await saved();
    await wipe();
    await bringBack(asFile(text));
    assert.ok((await saved()) === text, `seed ${seed}`);
  }
});

test("what is brought twice, or to the device it came from, changes nothing", async () => {
  await live(chance(3));
  const text = await saved();
  const before = await all();
  assert.deepEqual(await bringBack(asFile(text)), { plans: 0, tagged: 0, results: 0, sessions: 0, remarked: 0, others: 0, results_left: 0, tags_left: [] });
  assert.ok((await all()) === before);
  await wipe();
  await bringBack(asFile(text));
  const once = await all();
  await bringBack(asFile(text));
  assert.ok((await all()) === once);
});

test("a plan brought back runs: its timeline and its text follow from it", async () => {
  const kept = await own(PLANS[1]!);
  const text = await saved();
  await wipe();
  await bringBack(asFile(text));
  const back = await openMine(kept.name);
  assert.deepEqual([back.plan, back.text, back.timeline], [kept.plan, kept.text, kept.timeline]);
});

test("what is here stays, and what is missing is added", async () => {
  const plan = await own(PLANS[0]!, "same");
  await keep({ ...plan, tags: ["juniors"] });
  await addResult({ metres: 2000, seconds: 450 });
  await changeAthlete({ age: 40 });
  await changePreferences({ hand: "left", biggest: "strokes" });
  await changeSettings({ drafts: { "mine:same": "there" } });
  const text = await saved();
  await wipe();

  await own(PLANS[1]!, "same");
  await keep({ ...(await own(PLANS[0]!, "other")), tags: ["Tuesday"] });
  await addResult({ metres: 5000, seconds: 1200 });
  await changeAthlete({ age: 41 });
  await changePreferences({ hand: "right" });
  const brought = await bringBack(asFile(text));

  assert.deepEqual(brought, { plans: 0, tagged: 1, results: 1, sessions: 0, remarked: 0, others: 2, results_left: 0, tags_left: [] });
  const kept = new Map((await keptPlans()).map((record) => [record.name, record]));
  assert.deepEqual([...kept.keys()].sort(), ["other", "same"]);
  assert.deepEqual(kept.get("same")!.plan, PLANS[1]);
  assert.deepEqual(kept.get("other")!.tags, ["Tuesday", "juniors"]);
  const { athlete } = await readAthlete();
  assert.deepEqual(athlete, { age: 41, results: [{ metres: 2000, seconds: 450 }, { metres: 5000, seconds: 1200 }] });
  const { hand, biggest } = await readPreferences();
  assert.deepEqual([hand, biggest], ["right", "strokes"]);
  assert.deepEqual((await readSettings()).drafts, { "mine:other": "there" });
});

test("another plan under a name that is taken gets a name of its own, once, and with it its draft and the wall that showed it", async () => {
  await own(PLANS[0]!, "same");
  await rowed("a", PLANS[0]!, "mine:same");
  await changeSettings({ drafts: { "mine:same": "half written" } });
  await changeWall({ plan: { source: "mine", name: "same" } });
  const text = await saved();
  await wipe();
  await own(PLANS[1]!, "same");
  assert.equal((await bringBack(asFile(text))).plans, 1);
  const once = await all();
  const { drafts } = await readSettings();
  assert.deepEqual(Object.values(drafts), ["half written"]);
  assert.deepEqual([(await database.get("log", "a"))!.plan_id], Object.keys(drafts), "what was rowed of it knows it");
  assert.ok(!("mine:same" in drafts), "that one is another plan here");
  const { plan } = (await readWall()).wall;
  assert.deepEqual(Object.keys(drafts), [`${plan!.source}:${plan!.name}`]);
  assert.equal((await bringBack(asFile(text))).plans, 0);
  assert.equal((await keptPlans()).length, 2);
  assert.ok((await all()) === once);
});

test("results that are here stay, however far from 2000 m, and those that have no room are told", async () => {
  for (let index = 0; index < 3; index += 1) await addResult({ metres: 2000, seconds: 450 + index });
  const text = await saved();
  await wipe();
  for (let index = 0; index < 19; index += 1) await addResult({ metres: 10_000, seconds: 2500 + index });
  const { results, results_left } = await bringBack(asFile(text));
  assert.deepEqual([results, results_left], [1, 2]);
  const kept = (await readAthlete()).athlete.results!;
  assert.deepEqual(kept[0], { metres: 2000, seconds: 450 });
  assert.equal(kept.filter(({ metres }) => metres === 10_000).length, 19);
});

test("results beyond what can be kept leave out those furthest from 2000 m, the same each time", async () => {
  for (let index = 0; index < 15; index += 1) await addResult({ metres: 2000 + index * 100, seconds: 480 + index * 30 });
  const text = await saved();
  await wipe();
  for (let index = 0; index < 15; index += 1) await addResult({ metres: 1000 + index * 50, seconds: 240 + index * 15 });
  await bringBack(asFile(text));
  const once = await all();
  assert.equal((await readAthlete()).athlete.results!.length, 20);
  await bringBack(asFile(text));
  assert.ok((await all()) === once);
});

test("keys and the reading of the cautions stay where they are", async () => {
  await live(chance(1));
  const text = await saved();
  assert.ok(!text.includes("secret") && !text.includes("cautions_read"));
});

test("tags that find no room are told, with the plan that they were for", async () => {
  const tags = (letter: string, many: number) => Array.from({ length: many }, (_, number) => `${letter}${number}`);
  await keep({ ...(await own(PLANS[0]!, "one")), tags: tags("a", 6) });
  await keep({ ...(await own(PLANS[1]!, "two")), tags: tags("b", 2) });
  const text = await saved();
  await wipe();
  await keep({ ...(await own(PLANS[0]!, "here")), tags: tags("c", 5) });
  const brought = await bringBack(asFile(text));
  assert.deepEqual([brought.plans, brought.tagged, brought.tags_left], [1, 1, [{ title: PLANS[0]!.title, tags: 3 }]]);
  assert.deepEqual((await openMine("here")).tags, [...tags("c", 5), ...tags("a", 3)]);
  assert.match(broughtWords(brought), new RegExp(`^Added: 1 plan, tags on 1 plan\\. 3 tags had no room on .+: a plan has 8 at most\\. All the rest`));
  const again = await bringBack(asFile(text));
  assert.deepEqual([again.tagged, again.tags_left], [0, [{ title: PLANS[0]!.title, tags: 3 }]]);
});

test("drafts of several plans and of a new one stand beside one another, and one goes without the others", async () => {
  await Promise.all([keepDraft("mine:a", "text a"), keepDraft("mine:b", "text b"), keepDraft("", "new")]);
  assert.deepEqual(await Promise.all(["mine:a", "mine:b", ""].map(draftOf)), ["text a", "text b", "new"]);
  await dropDraft("mine:a");
  assert.deepEqual(await Promise.all(["mine:a", "mine:b", ""].map(draftOf)), [undefined, "text b", "new"]);
  await dropDraft("");
  assert.deepEqual(await Promise.all(["mine:b", ""].map(draftOf)), ["text b", undefined]);
});

test("what was said of a session goes along, and comes to one that nobody has said it of here", async () => {
  await rowed("a", PLANS[0]!);
  await rowed("b", PLANS[0]!);
  await remark("a", { cr10: 7, note: "heavy" });
  await remark("b", { note: "there" });
  await logged();
  const text = await saved();
  await wipe();
  await rowed("a", PLANS[0]!);
  await remark("a", { note: "here" });
  await logged();
  const { sessions, remarked } = await bringBack(asFile(text));
  assert.deepEqual([sessions, remarked], [1, 1]);
  assert.ok((await database.get("entries", "a"))!.figures, "its figures stay beside what came");
  const kept = new Map((await logged()).sessions.map(({ id, cr10, note }) => [id, [cr10, note]]));
  assert.deepEqual([kept.get("a"), kept.get("b")], [[7, "here"], [undefined, "there"]]);
});

test("a file of many sessions is written in parts, and where the device takes no more, what it took is told and stays", async (t) => {
  const ids = Array.from({ length: 180 }, (_, index) => `many-${index}`);
  for (const id of ids) await rowed(id, PLANS[0]!);
  const text = await saved();
  await wipe();
  const { write } = database;
  const sizes: number[] = [];
  let refuses = 2;
  t.mock.method(database, "write", ((steps, durability) => {
    refuses -= 1;
    sizes.push(steps.length);
    return refuses === 0 ? Promise.reject(new Error("full")) : write(steps, durability);
  }) as typeof write);
  const error = await bringBack(asFile(text)).catch((thrown: unknown) => thrown);
  assert.ok(error instanceof BroughtInPart);
  const { sessions } = error.brought;
  assert.ok(sessions > 0 && sessions < ids.length);
  assert.equal((await database.keys("log")).length, sessions);
  const rest = await bringBack(asFile(text));
  assert.equal(rest.sessions, ids.length - sessions);
  assert.ok(sizes.length > 2 && sizes.every((size) => size <= STEPS_AT_ONCE), sizes.join(" "));
  assert.equal((await bringBack(asFile(text))).sessions, 0);
  t.mock.method(database, "isWithout", () => true);
  await wipe();
  await assert.rejects(bringBack(asFile(text)), /does not answer/);
});

test("a file of version 1, which knew no remarks, is still brought", async () => {
  await rowed("a", PLANS[0]!);
  const text = (await saved()).replace('"version":2', '"version":1');
  assert.match(text, /"version":1,/);
  await wipe();
  assert.equal((await bringBack(asFile(text))).sessions, 1);
});

test("a session that cannot be read any more stays behind, and is counted", async () => {
  await rowed("good", PLANS[0]!);
  await rowed("bad", PLANS[0]!);
  await database.remove("facts", ["bad", 0]);
  const { sessions, left } = await everything(NOW);
  assert.deepEqual([sessions, left], [1, 1]);
});

test("a session whose remarks are not handed out goes without them, and that is counted", async (t) => {
  await rowed("a", PLANS[0]!);
  await remark("a", { note: "there" });
  const { get } = database;
  t.mock.method(database, "get", ((store: "entries", key: string) => (store === "entries" ? Promise.reject(new Error("lost")) : get(store, key))) as typeof get);
  const { sessions, left, unsaid } = await everything(NOW);
  assert.deepEqual([sessions, left, unsaid], [1, 0, 1]);
});

/** What is told of a file, and that nothing was changed. */
async function refusal(file: Blob | string): Promise<string> {
  const before = await all();
  const error = await bringBack(typeof file === "string" ? asFile(file) : file).then(() => undefined, (told: unknown) => told);
  assert.ok((await all()) === before);
  assert.ok(error instanceof NotEverything, String(error));
  return error.message;
}

test("a file cut short anywhere, or with any byte changed, is told and changes nothing", async () => {
  await live(chance(5));
  const text = await saved();
  await wipe();
  await own(PLANS[2]!, "here");
  const bytes = new TextEncoder().encode(text.trimEnd());
  const random = chance(9);
  for (let round = 0; round < 60; round += 1) {
    const at = Math.floor(random() * bytes.length);
    assert.match(await refusal(new Blob([bytes.slice(0, at)])), /copy it once more/i);
    const spoilt = bytes.slice();
    spoilt[at] = spoilt[at]! ^ (1 << Math.floor(random() * 7));
    // The moment it was saved is told to nobody, and a blank may stand where it will.
    if (/"made_at":"[^"]*$/.test(new TextDecoder().decode(bytes.slice(0, at))) || JSON.stringify(JSON.parse(text)) === tryJson(spoilt)) continue;
    assert.ok(await refusal(new Blob([spoilt])));
  }
});

function tryJson(bytes: Uint8Array): string | undefined {
  try {
    return JSON.stringify(JSON.parse(new TextDecoder().decode(bytes)));
  } catch {
    return undefined;
  }
}

test("other files are told apart, and say where they belong", async () => {
  assert.match(await refusal(""), /cannot be read/);
  assert.match(await refusal(new Blob([new Uint8Array([0xff, 0xfe, 0])])), /cannot be read/);
  assert.match(await refusal("[1, 2]"), /not a file that was saved here/);
  assert.match(await refusal("null"), /not a file that was saved here/);
  assert.match(await refusal(JSON.stringify(PLANS[0])), /Open a plan file/);
  assert.match(await refusal('{"slipway":"everything","version":3,"sum":"","content":{}}'), /newer Slipway/);
  assert.match(await refusal('{"slipway":"everything","version":"1","content":{}}'), /damaged/);
  assert.match(await refusal(`{"slipway":"everything","version":1,"sum":"","content":${"[".repeat(100_000)}${"]".repeat(100_000)}}`), /damaged/);
  await assert.rejects(openPlanFile(asFile(await saved()), await readAthlete()), (error) => error instanceof NotAPlan && /under Settings/.test(error.message));
});

test("what carries the right sum and is wrong all the same is named with its place, and none of it is taken", async () => {
  await own(PLANS[0]!, "one");
  await own(PLANS[1]!, "two");
  await rowed("session", PLANS[0]!);
  const { content } = JSON.parse(await saved()) as { content: Everything };
  await wipe();
  const wrong = (change: (copy: any) => void) => {
    const copy = structuredClone(content);
    change(copy);
    assert.equal(sumOf(JSON.stringify(copy)).length, 8);
    return refusal(textOf(copy, NOW));
  };
  assert.match(await wrong((copy) => (copy.plans[1].plan.parts[0].blocks[0].rate = 99)), /^Plan 2 in it \(/);
  assert.match(await wrong((copy) => (copy.plans[0].tags = ["a", "A"])), /^Plan 1 in it/);
  assert.match(await wrong((copy) => (copy.plans[0].address = "javascript:alert(1)")), /^Plan 1 in it/);
  assert.match(await wrong((copy) => (copy.plans[0].id = "built-in:x")), /^Plan 1 in it/);
  assert.match(await wrong((copy) => (copy.athlete = { results: [{ metres: 2000, seconds: 1 }] })), /^What it says of the person/);
  assert.match(await wrong((copy) => (copy.athlete = { age: 400 })), /^What it says of the person/);
  assert.match(await wrong((copy) => (copy.settings = { publish_key: "x" })), /^A setting in it \(publish_key\)/);
  assert.match(await wrong((copy) => (copy.settings = { volume: 3 })), /^A setting in it \(volume\)/);
  assert.match(await wrong((copy) => (copy.sessions[0].facts[1] = { kind: "flown", at_s: 1 })), /^Session 1 in it/);
  assert.match(await wrong((copy) => (copy.sessions[0].record.state = "open")), /^Session 1 in it/);
  assert.match(await wrong((copy) => (copy.sessions[0].record.led_by = "wall")), /^Session 1 in it/);
  assert.match(await wrong((copy) => (copy.sessions[0].cr10 = 11)), /^Session 1 in it/);
  assert.match(await wrong((copy) => (copy.sessions[0].note = "x".repeat(LONGEST_NOTE + 1))), /^Session 1 in it/);
  assert.match(await wrong((copy) => (copy.plans = {})), /damaged/);
});
