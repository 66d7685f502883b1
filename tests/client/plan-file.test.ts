/** A plan read back in from a file: what is opened, what is refused in which words, and that nothing changes then. */
import assert from "node:assert/strict";
import { afterEach, test } from "node:test";
import { NoAnswer } from "../../static/src/data/api.js";
import { readAthlete } from "../../static/src/data/athlete.js";
import { MOST_BYTES, NotAPlan, looksLikeJson, openPlanFile } from "../../static/src/data/plan-file.js";
import { keptPlans } from "../../static/src/data/plans.js";
import { pointerWords } from "../../static/src/plan/pointer-words.js";
import { row, timeline } from "./builders.js";
import { network } from "./network.js";

const realFetch = globalThis.fetch;
afterEach(() => void (globalThis.fetch = realFetch));
const whole = timeline(row(60, 24));
const good = { "/api/timeline": [200, whole], "/api/shorthand": [200, { text: "1' r24" }] } as const;

async function refused(file: Blob): Promise<readonly string[]> {
  const before = await keptPlans();
  let sentences: readonly string[] = [];
  await assert.rejects(openPlanFile(file, await readAthlete()), (error) => {
    assert.ok(error instanceof NotAPlan, String(error));
    sentences = error.sentences;
    return true;
  });
  assert.deepEqual(await keptPlans(), before);
  return sentences;
}

test("a plan file is kept as one's own, and the same one again is the same plan", async () => {
  network(good as never);
  const file = new Blob([JSON.stringify(whole.plan)]);
  const record = await openPlanFile(file, await readAthlete());
  assert.equal(record.source, "mine");
  assert.equal((await openPlanFile(file, await readAthlete())).id, record.id);
  assert.equal((await keptPlans()).length, 1);
});

test("a byte order mark before it does no harm", async () => {
  network(good as never);
  await openPlanFile(new Blob(["\ufeff", JSON.stringify(whole.plan)]), await readAthlete());
});

test("a mistake is told with its place", async () => {
  const problems = [{ pointer: "/plan/parts/0/blocks/1/rate", sentence: "rate 62 is above 50 strokes a minute" }];
  network({ ...good, "/api/timeline": [422, { detail: "x", problems }] } as never);
  assert.deepEqual(await refused(new Blob(["{}"])), ["Part 1, block 2, rate: rate 62 is above 50 strokes a minute."]);
});

test("a torn file is told with line and column, as the server reads it", async () => {
  let body = "";
  globalThis.fetch = async (_, options) => {
    body = String(options?.body);
    return new Response(JSON.stringify({ detail: "line 2, column 3: expecting value", problems: [] }), { status: 400 });
  };
  assert.deepEqual(await refused(new Blob(['{"a":\n  '])), ["It is not whole JSON: line 2, column 3: expecting value."]);
  assert.equal(body, '{"a":\n  ');
});

test("what is no text, or too long to be a plan, is refused without asking anybody", async () => {
  network({});
  assert.match((await refused(new Blob([new Uint8Array([0x89, 0x50, 0xff])])))[0]!, /^It is not text in UTF-8/);
  assert.match((await refused(new Blob([new Uint8Array(MOST_BYTES + 1)])))[0]!, /^It is 251 kB long, and a plan takes 250 kB/);
});

test("with no signal nothing is opened and nothing is lost", async () => {
  network({});
  const before = await keptPlans();
  await assert.rejects(openPlanFile(new Blob([JSON.stringify(whole.plan)]), await readAthlete()), NoAnswer);
  await assert.rejects(openPlanFile(new Blob(["{"]), await readAthlete()), NoAnswer);
  assert.deepEqual(await keptPlans(), before);
});

test("shorthand is told from the text of a plan file", () => {
  assert.deepEqual(['{"format": 1}', "\n [1]", "3' r18 light", "title: {x}"].map(looksLikeJson), [true, true, false, false]);
});

test("a place is told as people count", () => {
  assert.equal(pointerWords("/plan/parts/0/blocks/2/between/0/calls/1/text"), "part 1, block 3, between, block 1, call 2, text");
  assert.equal(pointerWords("/plan/title"), "title");
  assert.equal(pointerWords("/plan/parts"), "parts");
  assert.equal(pointerWords("/plan/a~1b"), "a/b");
  assert.equal(pointerWords(""), "");
});
