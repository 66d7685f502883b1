/** What is kept about a person, what leaves the device, and which split it gives. */
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { addResult, changeAthlete, forgetAthlete, keepResult, readAthlete, removeResult, resultsOf, sentOf, twoKOf, workOut } from "../../static/src/data/athlete.js";
import { database } from "../../static/src/data/database.js";
import { changeSettings, readSettings } from "../../static/src/data/settings.js";
import { toNumber } from "../../static/src/plan/exact-time.js";
import { network } from "./network.js";

beforeEach(async () => {
  network({});
  await database.remove("athletes", "me");
  await changeSettings({ result_s: null });
});

const TWO_K = { metres: 2000, seconds: 462 };
const FIVE_K = { metres: 5000, seconds: 1224 };
const KNOWN = { two_k: { split_s: 115.2, low_s: 114.9, high_s: 115.6, watts: 229 }, predictions: [], bands: [], findings: [] };
const split = (two_k: ReturnType<typeof twoKOf>) => two_k && toNumber(two_k.split);

test("of nobody nothing is known, nothing is sent, nothing is scaled", async () => {
  const record = await readAthlete();
  assert.equal(sentOf(record), undefined);
  assert.equal(twoKOf(record), null);
});

test("the time over 2000 m of an earlier version becomes the first result, once", async () => {
  await changeSettings({ result_s: 462 });
  assert.deepEqual(resultsOf(await readAthlete()), [TWO_K]);
  assert.equal((await readSettings()).result_s, null);
  await forgetAthlete();
  assert.deepEqual(resultsOf(await readAthlete()), []);
});

test("the result nearest to 2000 m comes first, of two over the same distance the quicker, and none stands twice", async () => {
  await addResult(FIVE_K);
  await addResult(TWO_K);
  await addResult({ metres: 500, seconds: 96 });
  assert.deepEqual(resultsOf(await readAthlete()).map(({ metres }) => metres), [2000, 5000, 500]);
  await addResult({ metres: 2000, seconds: 450 });
  await addResult(TWO_K);
  assert.deepEqual(resultsOf(await readAthlete()).map(({ seconds }) => seconds), [450, 462, 1224, 96]);
  await removeResult({ metres: 2000, seconds: 450 });
  assert.deepEqual(resultsOf(await readAthlete()).map(({ metres }) => metres), [2000, 5000, 500]);
});

test("there are never more results than can be sent, and the new one is among them", async () => {
  for (let seconds = 460; seconds < 481; seconds += 1) await addResult({ metres: 2000, seconds });
  const results = resultsOf(await addResult({ metres: 42_195, seconds: 12_000 }));
  assert.equal(results.length, 20);
  assert.equal(results.at(-1)!.metres, 42_195);
});

test("the split is the server's where it is known, and by the first result until then", async () => {
  assert.equal(split(twoKOf(await addResult(TWO_K))), 115.5);
  network({ "/api/athlete": [200, KNOWN] });
  const answered = await workOut(await readAthlete());
  assert.equal(split(twoKOf(answered)), 115.2);
  assert.equal(split(twoKOf(await readAthlete())), 115.2);
});

test("what was worked out does not outlive the results that it was worked out from", async () => {
  network({ "/api/athlete": [200, KNOWN] });
  await workOut(await addResult(TWO_K));
  assert.equal((await addResult(FIVE_K)).answer, null);
});

test("an answer that comes late takes no newer result away", async () => {
  network({ "/api/athlete": [200, KNOWN] });
  const asked = workOut(await addResult(TWO_K));
  await addResult(FIVE_K);
  await asked;
  assert.deepEqual(resultsOf(await readAthlete()), [TWO_K, FIVE_K]);
});

test("of changes made at once none is lost", async () => {
  await Promise.all([addResult(TWO_K), changeAthlete({ age: 40 }), addResult(FIVE_K), changeSettings({ room: "hot" }), changeSettings({ warmup_minutes: 20 })]);
  assert.deepEqual(sentOf(await readAthlete()), { results: [TWO_K, FIVE_K], age: 40 });
  const { room, warmup_minutes } = await readSettings();
  assert.deepEqual({ room, warmup_minutes }, { room: "hot", warmup_minutes: 20 });
});

test("an emptied field is not sent", async () => {
  await addResult(TWO_K);
  await changeAthlete({ age: 40 });
  assert.deepEqual(sentOf(await changeAthlete({ age: undefined } as object)), { results: [TWO_K] });
  assert.equal(sentOf(await removeResult(TWO_K)), undefined);
});

test("a piece is said to be kept only when it really stands in storage", async (context) => {
  assert.equal(await keepResult(TWO_K), true);
  context.mock.method(database, "change", () => Promise.reject(new Error("full")));
  assert.equal(await keepResult(FIVE_K), false);
});
