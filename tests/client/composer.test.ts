/** A plan while it is written: when it is read, what is shown of it, how it is taken back, how it is kept. */
import assert from "node:assert/strict";
import { beforeEach, mock, test } from "node:test";
import { NoAnswer } from "../../static/src/data/api.js";
import { readAthlete } from "../../static/src/data/athlete.js";
import { takenBack } from "../../static/src/data/mending.js";
import { forgetPlan, keptPlans, openMine } from "../../static/src/data/plans.js";
import { draftOf, dropDraft, keepDraft } from "../../static/src/data/drafts.js";
import { keepWritten } from "../../static/src/data/writing.js";
import type { Plan } from "../../static/src/plan/wire.js";
import { written } from "../../static/src/plan/written.js";
import { Composer } from "../../static/src/state/composer.js";
import { network, type Asked } from "./network.js";

const plan = (...minutes: number[]): Plan => ({
  format: 1, title: "Tuesday", parts: [{ kind: "main", blocks: minutes.map((each) => ({ for: { seconds: 60 * each }, rate: 20 })) }],
});
const PROBLEM = { pointer: "/text", sentence: "line 1, column 1: no", line: 1, column: 1, received: "x", accepted: ["a length"] };
const FINDING = { code: "long", severity: "note" as const, place: "", sentence: "It is long." };

const ANSWERS = {
  "/api/shorthand": ({ text }: { text: string }): [number, unknown] =>
    text.includes("x") ? [422, { detail: "no", problems: [PROBLEM] }] : [200, { plan: plan(...minutesIn(text)), text: written(plan(...minutesIn(text))) }],
  "/api/timeline": (): [number, unknown] => [200, { findings: [FINDING] }],
};

function minutesIn(text: string): number[] {
  return [...text.matchAll(/(\d+)'/g)].map(([, minutes]) => Number(minutes));
}

beforeEach(async () => {
  mock.timers.reset();
  mock.timers.enable({ apis: ["setTimeout"] });
  for (const { id } of await keptPlans()) await forgetPlan(id);
});

async function pause(ms = 300): Promise<void> {
  mock.timers.tick(ms);
  for (let turn = 0; turn < 60; turn += 1) await new Promise((done) => setImmediate(done));
}

async function composer(text = "") {
  const drafts: string[] = [];
  return { drafts, made: new Composer(text, await readAthlete(), () => undefined, (draft) => drafts.push(draft)) };
}

const texts = (asked: Asked[]) => asked.filter(({ path }) => path === "/api/shorthand").map(({ body }) => (body as { text: string }).text);

test("the text is read at a pause of the keys, once, and every key is kept", async () => {
  const asked = network(ANSWERS);
  const { made, drafts } = await composer();
  for (const text of ["5", "5'", "5' r"]) made.type(text);
  await pause(299);
  assert.deepEqual(texts(asked), []);
  assert.equal(made.now.current, false);
  await pause(1);
  assert.deepEqual([texts(asked), drafts], [["5' r"], ["5", "5'", "5' r"]]);
  assert.deepEqual([made.now.plan, made.now.timeline!.totals.seconds_s, made.now.advice!.findings], [plan(5), 300, [FINDING]]);
});

test("the last good picture stays while a mistake is told, and the mistake goes with it", async () => {
  network(ANSWERS);
  const { made } = await composer("5'");
  made.begin();
  await pause();
  made.type("5' x");
  await pause();
  assert.deepEqual([made.now.problems, made.now.problemText, made.now.current, made.now.plan], [[PROBLEM], "5' x", false, plan(5)]);
  assert.equal(made.advice, undefined);
  made.type("7'");
  await pause();
  assert.deepEqual([made.now.problems, made.now.current, made.now.plan], [[], true, plan(7)]);
});

test("an answer that was overtaken changes nothing", async () => {
  const waiting: ((answer: Response) => void)[] = [];
  network(ANSWERS);
  const answered = globalThis.fetch;
  globalThis.fetch = () => new Promise((answer) => waiting.push(answer));
  const { made } = await composer();
  made.type("5'");
  await pause();
  globalThis.fetch = answered;
  made.type("7'");
  await pause();
  waiting[0]!(new Response(JSON.stringify({ plan: plan(5), text: "" })));
  await pause();
  assert.deepEqual(made.now.plan, plan(7));
});

test("with no signal the draft stays and it is said; an edit of the plan needs none", async () => {
  network({});
  const { made, drafts } = await composer();
  made.type("5'");
  await pause();
  assert.deepEqual([made.now.unread, made.now.text, drafts], [true, "5'", ["5'"]]);
  made.edit(plan(5, 6));
  await pause();
  assert.deepEqual([made.now.unread, made.now.unadvised, made.now.current, made.now.text], [false, true, true, written(plan(5, 6))]);
  assert.equal(made.now.timeline!.totals.seconds_s, 660);
  made.undo();
  assert.equal(made.now.text, "5'");
  await assert.rejects(made.read(), NoAnswer);
});

test("mends, edits and keys are taken back in turn, and each plan is seen again at once", async () => {
  network(ANSWERS);
  const { made } = await composer(written(plan(5)));
  made.know(written(plan(5)), plan(5));
  made.begin();
  await pause();
  made.mend({ label: "Longer", edits: [{ op: "replace", path: "/parts/0/blocks/0/for/seconds", value: 420 }] });
  made.edit(plan(7, 8));
  made.type(`${made.now.text}9' r20\n`);
  const [, , mended, first] = [made.now.text, ...[1, 2, 3].map(() => (made.undo(), made.now.text))];
  assert.deepEqual([mended, first], [written(plan(7)), written(plan(5))]);
  assert.deepEqual([made.now.plan, made.now.canUndo, made.now.canRedo], [plan(5), false, true]);
  for (let step = 0; step < 3; step += 1) made.redo();
  assert.ok(made.now.text.endsWith("9' r20\n"));
});

test("a written plan is kept with no signal; in its own place, where it can be had back", async () => {
  network({});
  const kept = await keepWritten(plan(5));
  assert.equal((await keepWritten(plan(5))).id, kept.id);
  assert.equal(await keepWritten(plan(5), kept), kept);
  const changed = await keepWritten(plan(6), kept);
  assert.deepEqual([changed.id, changed.text, (await keptPlans()).length], [kept.id, written(plan(6)), 1]);
  await takenBack(changed);
  assert.deepEqual((await openMine(kept.name)).plan, plan(5));
  const copy = await keepWritten(plan(5), { ...kept, source: "built-in" });
  assert.equal(copy.source, "mine");
});

test("each plan has a draft of its own until it is dropped", async () => {
  await keepDraft("", "new");
  await keepDraft("mine:a", "other");
  assert.deepEqual([await draftOf(""), await draftOf("mine:a"), await draftOf("mine:b")], ["new", "other", undefined]);
  await dropDraft("mine:a");
  await dropDraft("");
  assert.deepEqual([await draftOf(""), await draftOf("mine:a")], [undefined, undefined]);
});
