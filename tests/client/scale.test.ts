/** A timeline scaled on the device is, field for field, the one that the planner compiles for that result. */
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { test } from "node:test";
import { scaledTo } from "../../static/src/plan/scale.js";
import type { Result, Timeline } from "../../static/src/plan/types.js";

const FOLDER = "tests/shared";

interface Pair {
  result: Result;
  timeline_plain: Timeline;
  timeline_scaled: Timeline;
}

for (const file of readdirSync(FOLDER).filter((name) => name.endsWith(".json"))) {
  const pair = JSON.parse(readFileSync(`${FOLDER}/${file}`, "utf8")) as Pair;
  test(`${file}: scaled here and compiled there are the same`, () => {
    assert.deepEqual(scaledTo(pair.timeline_plain, pair.result), pair.timeline_scaled);
  });
}
