/** Which cues are heard and felt, by choice. */
import assert from "node:assert/strict";
import { mock, test } from "node:test";
import { SessionTouch } from "../../static/src/state/session-touch.js";
import { wanted } from "../../static/src/timeline/cue-choice.js";
import type { Cue, CueKind } from "../../static/src/timeline/cue-window.js";

const KINDS: CueKind[] = ["count-in", "change", "finish", "between", "catch", "second-last", "last", "end"];
const CUES = KINDS.map((kind, at_s): Cue => ({ kind, at_s }));
const ALL = { beat: "whole", last_strokes: true, changes: true } as const;
const kinds = (choice: Parameters<typeof wanted>[1]) => wanted(CUES, choice).map(({ kind }) => kind);

test("each kind of sound can be left out, and nothing else goes with it", () => {
  assert.deepEqual(kinds(ALL), KINDS);
  assert.deepEqual(kinds({ ...ALL, beat: "catch-finish" }), KINDS.filter((kind) => kind !== "between"));
  assert.deepEqual(kinds({ ...ALL, beat: "catch" }), ["count-in", "change", "catch", "second-last", "last", "end"]);
  assert.deepEqual(kinds({ ...ALL, beat: "none" }), ["count-in", "change", "second-last", "last", "end"]);
  assert.deepEqual(kinds({ ...ALL, changes: false }), ["finish", "between", "catch", "second-last", "last"]);
});

test("last strokes that are not marked are strokes like others, and silent where there is no beat", () => {
  assert.deepEqual(kinds({ ...ALL, last_strokes: false }), ["count-in", "change", "finish", "between", "catch", "catch", "catch", "end"]);
  assert.deepEqual(kinds({ beat: "none", last_strokes: false, changes: false }), []);
});

test("the hand feels changes and last strokes at their moments, each once, and nothing of what was taken back", (context) => {
  mock.timers.enable({ apis: ["setTimeout"] });
  context.after(() => mock.timers.reset());
  const shaken: number[] = [];
  const touch = new SessionTouch({ cues: (from_s, to_s) => CUES.filter(({ at_s }) => at_s >= from_s && at_s < to_s) }, (pattern) => shaken.push(pattern.length));
  touch.tick(0.5, 1);
  touch.tick(1, 1);
  mock.timers.tick(1000);
  assert.deepEqual(shaken, [1]);
  touch.tick(4.8, 1);
  touch.replan(4.9);
  mock.timers.tick(5000);
  assert.deepEqual(shaken, [1]);
  touch.tick(5.9, 2);
  mock.timers.tick(2000);
  assert.deepEqual(shaken, [1, 5, 5]);
});
