/** What is said of the result that splits come from. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { knownWords } from "../../static/src/components/rower-words.js";
import type { Result } from "../../static/src/plan/wire.js";

const rower = (...results: Result[]) => ({ id: "me" as const, athlete: { results }, answer: null });

test("a result is named as it was rowed, and what follows from another as about", () => {
  assert.equal(knownWords(rower({ metres: 2000, seconds: 430.3 })), "Splits from your 2 km in 7:10.3.");
  assert.match(knownWords(rower({ metres: 5000, seconds: 1215 })), /^Splits from your 2 km in about 7:\d\d\.\d\.$/);
  assert.equal(knownWords(rower()), "");
});

test("a one-file page says that its splits are somebody's, until its reader has a result", () => {
  const brought = { results: [{ metres: 2000, seconds: 430 }] };
  assert.equal(knownWords(rower(...brought.results), brought), "Splits from a 2 km in 7:10.0, as this page was saved.");
  assert.equal(knownWords(rower({ metres: 2000, seconds: 500 }), brought), "Splits from your 2 km in 8:20.0.");
  assert.equal(knownWords(rower(), {}), "");
});
