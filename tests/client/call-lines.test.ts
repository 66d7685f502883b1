/** The calls of a block as lines to read. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { callLines } from "../../static/src/components/call-lines.js";

const CALLS = [
  { text: "Legs first", stroke: 6 },
  { text: "Sit tall", stroke: 6 },
  { text: "Last ten", strokes_left: 10 },
];

test("in a repeat, calls at one stroke share a line and take turns", () => {
  assert.deepEqual(callLines(CALLS, true), [
    ["Call, stroke 6, in turn", "Legs first / Sit tall"],
    ["Call, 10 strokes left", "Last ten"],
  ]);
});

test("outside a repeat each call has its own line", () => {
  assert.deepEqual(callLines([...CALLS, { text: "Now" }], false), [
    ["Call, stroke 6", "Legs first"],
    ["Call, stroke 6", "Sit tall"],
    ["Call, 10 strokes left", "Last ten"],
    ["Call", "Now"],
  ]);
});
