/** What a phone says of a wall that it leads. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { doneWords, failedWords, shortId, startWords, tabletWords } from "../../static/src/components/wall-card-words.js";
import { Refused } from "../../static/src/data/api.js";
import { gap, metres, row, timeline } from "./builders.js";

const plan = timeline(row(60, 24), row(120, 20), gap(60));
const AT_S = new Date(2026, 0, 5, 18, 3, 12).getTime() / 1000;

test("whether a tablet follows is said, and nothing where the server does not tell", () => {
  assert.equal(tabletWords({ asked_s_ago: 24 }), "A tablet follows it.");
  assert.equal(tabletWords({ asked_s_ago: null }), "No tablet has opened its address yet.");
  assert.equal(tabletWords({ asked_s_ago: 45 }), "No tablet has asked for 45 s: is it on, with signal, and at its address?");
  assert.equal(tabletWords({ asked_s_ago: 200 }), "No tablet has asked for 3 min: is it on, with signal, and at its address?");
  assert.equal(tabletWords({ asked_s_ago: 7500 }), "No tablet has asked for 2 h 05 min: is it on, with signal, and at its address?");
  assert.equal(tabletWords({}), "");
});

test("what was done is not said to be on a wall that nobody follows", () => {
  const [on, off] = [{ asked_s_ago: 3 }, { asked_s_ago: 90 }];
  const said = (then: { asked_s_ago?: number | null }, now: { asked_s_ago?: number | null }) => doneWords("It is on the wall.", then, now);
  assert.match(said({ asked_s_ago: null }, off), /No tablet follows now/);
  for (const [then, now] of [[on, on], [on, off], [off, on], [{}, {}]] as const) assert.equal(said(then, now), "It is on the wall.");
});

test("a start says when it is or was, and where it is by the clock where that can be known", () => {
  assert.equal(startWords(null, AT_S, plan), "not started");
  assert.equal(startWords(AT_S, AT_S - 5, plan), "starts at 18:03:12");
  assert.equal(startWords(AT_S, AT_S + 65, plan), "started at 18:03:12, 1 min ago. By the clock, unless it was held there: Main piece · block 2 of 3");
  assert.equal(startWords(AT_S, AT_S + 200, plan), "started at 18:03:12, 3 min ago. By the clock, unless it was held there: Gap");
  assert.equal(startWords(AT_S, AT_S + 400, plan), "started at 18:03:12, 6 min ago. By the clock it is over");
  assert.equal(startWords(AT_S, AT_S + 65, timeline(metres(500, 110, 28))), "started at 18:03:12, 1 min ago");
  assert.equal(startWords(AT_S, AT_S + 65, undefined), "started at 18:03:12, 1 min ago");
});

test("a start by the server's clock is told right on a phone whose own is minutes off, and by what that one shows", () => {
  // 3 min fast, as far as dates of whole seconds tell.
  const ahead = { low: -180_400, high: -179_500 };
  assert.equal(startWords(AT_S, AT_S + 170, plan, ahead), "starts at 18:06:12");
  assert.equal(startWords(AT_S, AT_S + 245, plan, ahead), "started at 18:06:12, 1 min ago. By the clock, unless it was held there: Main piece · block 2 of 3");
  const behind = { low: 179_600, high: 180_300 };
  assert.equal(startWords(AT_S, AT_S - 115, plan, behind), "started at 18:00:12, 1 min ago. By the clock, unless it was held there: Main piece · block 2 of 3");
});

test("a refusal of the server is told as one, and what this device could not do in its own words", () => {
  assert.equal(failedWords(new Refused(401, "the key is not that of this wall", [])), "The server refuses: the key is not that of this wall.");
  assert.equal(failedWords(new Error("This device could not keep another key.")), "This device could not keep another key.");
});

test("a wall is told by the beginning of its id", () => {
  assert.equal(shortId("abcdefgh23456723"), "abcd");
});
