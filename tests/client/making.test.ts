/** Sessions made and plans mended: what is asked, what is kept, what is taken back. */
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { addResult, changeAthlete, forgetAthlete, readAthlete } from "../../static/src/data/athlete.js";
import { NoAnswer } from "../../static/src/data/api.js";
import { appraisalFor } from "../../static/src/data/compiling.js";
import { madeForOthers, makeAgain, makeSession } from "../../static/src/data/making.js";
import { mended, takenBack } from "../../static/src/data/mending.js";
import { keepMine, keptPlans, openBuiltIn, openMine, type Making, type PlanRecord, type Made } from "../../static/src/data/plans.js";
import type { Mend } from "../../static/src/plan/wire.js";
import { row, timeline } from "./builders.js";
import { network } from "./network.js";

const MAKING: Making = { piece: { test: { metres: 2000 } }, level: "club", only_warm_up: false, warmup_minutes: 15, room: "normal" };
const compiled = timeline(row(60, 24));
const plan = (gap: number) => ({ format: 1 as const, title: "Made", parts: [{ kind: "gap" as const, for: { seconds: gap } }] });
const FINDING = { code: "gap-short", severity: "advice", place: "/parts/0", sentence: "The gap is short." };
const MEND = { label: "Make the gap 5:00", edits: [{ op: "replace" as const, path: "/parts/0/for/seconds", value: 300 }] };

const answers = {
  "/api/session": [200, { plan: plan(120), reasons: ["It rises."] }] as [number, unknown],
  "/api/timeline": ({ plan, athlete }: { plan: object; athlete?: object }): [number, unknown] =>
    [200, { ...compiled, plan, findings: athlete ? [FINDING] : [], readiness: { sentence: "Warm." } }],
  "/api/shorthand": [200, { text: "gap 2'" }] as [number, unknown],
};

beforeEach(async () => {
  network(answers);
  await forgetAthlete();
});

test("a session is asked for without a word about a person of whom nothing is known", async () => {
  const asked = network(answers);
  const made = await makeSession(MAKING, await readAthlete());
  assert.deepEqual(asked.find(({ path }) => path === "/api/session")!.body, MAKING);
  assert.deepEqual([made.source, made.plan.title, made.reasons, made.text], ["mine", "Made", ["It rises."], "gap 2'"]);
});

test("readiness is kept beside the timeline for anybody, not in it", async () => {
  const made = await makeSession(MAKING, await readAthlete());
  assert.equal("readiness" in made.timeline, false);
  assert.equal(made.appraisal!.readiness!.sentence, "Warm.");
});

test("what was said counts only for the athlete it was said for", async () => {
  const rower = await addResult({ metres: 2000, seconds: 462 });
  const made = await makeSession(MAKING, rower);
  assert.deepEqual(appraisalFor(made.appraisal, rower)!.findings, [FINDING]);
  assert.equal(appraisalFor(made.appraisal, await addResult({ metres: 2000, seconds: 450 })), undefined);
});

test("a session made for other results is made again in its place, and that can be taken back", async () => {
  const made = await makeSession(MAKING, await readAthlete());
  assert.equal(madeForOthers(made, await readAthlete()), false);
  const rower = await addResult({ metres: 2000, seconds: 462 });
  assert.equal(madeForOthers(made, rower), true);
  const asked = network({ ...answers, "/api/session": [200, { plan: plan(300), reasons: ["It is known."] }] });
  const again = await makeAgain(made as PlanRecord & { made: Made }, rower);
  assert.deepEqual(asked.find(({ path }) => path === "/api/session")!.body, { ...MAKING, athlete: { results: [{ metres: 2000, seconds: 462 }] } });
  assert.deepEqual([again.id, again.plan, again.reasons, madeForOthers(again, rower)], [made.id, plan(300), ["It is known."], false]);
  await takenBack(again);
  const back = await openMine(made.name);
  assert.deepEqual([back.plan, back.reasons, madeForOthers(back, rower)], [plan(120), ["It rises."], true]);
});

test("a mended session can still be made again", async () => {
  const made = await makeSession(MAKING, await readAthlete());
  const after = await mended(made, MEND, await readAthlete());
  assert.deepEqual(after.made, made.made);
});

test("with no signal nothing is made and nothing is kept", async () => {
  const before = (await keptPlans()).length;
  network({});
  await assert.rejects(makeSession(MAKING, await readAthlete()), NoAnswer);
  assert.equal((await keptPlans()).length, before);
});

test("a mend changes one's own plan in its place, and undo brings it back with its reasons", async () => {
  const made = await makeSession(MAKING, await readAthlete());
  const after = await mended(made, MEND, await readAthlete());
  assert.deepEqual([after.id, after.plan, after.undo!.label, after.reasons], [made.id, plan(300), "Make the gap 5:00", ["It rises."]]);
  assert.equal(await takenBack(after), `/mine/${made.name}`);
  const back = await openMine(made.name);
  assert.deepEqual([back.plan, back.undo, back.reasons], [plan(120), undefined, ["It rises."]]);
});

test("a mend of a built-in plan makes a copy of one's own, and undo takes it off again", async () => {
  network({ ...answers, "/api/library": [200, { plans: [{ slug: "a", kind: "test", seconds_s: 120, estimated: false, plan: plan(120), findings: [] }] }] });
  const original = await openBuiltIn("a");
  const copy = await mended(original, MEND, await readAthlete());
  assert.equal(copy.source, "mine");
  assert.deepEqual((await openBuiltIn("a")).plan, plan(120));
  assert.equal(await takenBack(copy), "/plan/a");
  await assert.rejects(openMine(copy.name), /not on this device/);
});

test("mends are taken back one by one, the last first, down to the plan as it was opened", async () => {
  network({ ...answers, "/api/library": [200, { plans: [{ slug: "a", kind: "test", seconds_s: 120, estimated: false, plan: plan(120), findings: [] }] }] });
  let record = await openBuiltIn("a");
  for (const gap of [180, 240, 300]) {
    const edits = [{ op: "replace" as const, path: "/parts/0/for/seconds", value: gap }];
    record = await mended(record, { label: `Wait ${gap}`, edits }, await readAthlete());
  }
  const seen = [];
  while (record.undo) {
    seen.push([record.undo.label, record.plan]);
    const address = await takenBack(record);
    record = address === "/plan/a" ? await openBuiltIn("a") : await openMine(record.name);
  }
  assert.deepEqual(seen, [["Wait 300", plan(300)], ["Wait 240", plan(240)], ["Wait 180", plan(180)]]);
  assert.deepEqual([record.source, record.plan], ["built-in", plan(120)]);
});

test("what is sent is the level that is shown", async () => {
  const asked = network(answers);
  await makeSession({ ...MAKING, level: "novice" }, await changeAthlete({ level: "trained" }));
  assert.equal((asked.find(({ path }) => path === "/api/session")!.body as Making).level, "novice");
});

const HARD = {
  format: 1 as const, title: "Test", summary: "The piece is maximal.",
  parts: [
    { kind: "warm-up" as const, blocks: [{ for: { seconds: 60 }, rate: 20, effort: { pressure: "full" as const } }] },
    { kind: "main" as const, blocks: [{ for: { metres: 2000 }, rate: 30, effort: { pressure: "race" as const } }] },
  ],
};
const softer = (part: number): Mend => ({ label: "Softer", edits: [{ op: "replace", path: `/parts/${part}/blocks/0/effort`, value: { pressure: "half" } }] });

test("a main piece taken down is no longer described as it was, until that is taken back", async () => {
  const own = await keepMine({ plan: HARD, timeline: compiled });
  const eased = await mended(own, softer(1), await readAthlete());
  assert.match(eased.plan.summary!, /^An easier version: the pressure of the main piece was taken down\./);
  await takenBack(eased);
  assert.equal((await openMine(own.name)).plan.summary, "The piece is maximal.");
});

test("a mend of anything else leaves the description, and a plan without one stays without", async () => {
  const own = await keepMine({ plan: HARD, timeline: compiled });
  assert.equal((await mended(own, softer(0), await readAthlete())).plan.summary, "The piece is maximal.");
  const { summary: _summary, ...silent } = HARD;
  const other = await keepMine({ plan: silent, timeline: compiled });
  assert.equal("summary" in (await mended(other, softer(1), await readAthlete())).plan, false);
});

test("a session made again is the same record", async () => {
  const [one, two] = [await makeSession(MAKING, await readAthlete()), await makeSession(MAKING, await readAthlete())];
  assert.equal(one.id, two.id);
});

test("who takes everything about them away takes it off the plans as well", async () => {
  const made = await makeSession(MAKING, await addResult({ metres: 2000, seconds: 462 }));
  await mended(made, MEND, await readAthlete());
  await forgetAthlete();
  // Its name is drawn at random, and the moment it was kept may hold any digits.
  const left = JSON.stringify({ ...(await openMine(made.name)), id: "", name: "", kept_at_ms: 0 });
  assert.equal(left.includes("462"), false);
  assert.equal(left.includes("The gap is short."), false);
});

test("a mend with no signal leaves the plan as it was", async () => {
  const made = await makeSession(MAKING, await readAthlete());
  network({});
  await assert.rejects(mended(made, MEND, await readAthlete()), NoAnswer);
  assert.deepEqual((await openMine(made.name)).plan, plan(120));
});
