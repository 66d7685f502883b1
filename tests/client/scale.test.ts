/** A timeline scaled on the device is, field for field, the one that the planner compiles for that result. */
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { test } from "node:test";
import { twoKFrom } from "../../static/src/plan/prediction.js";
import { scaled } from "../../static/src/plan/scale.js";
import type { Level, Result, Timeline } from "../../static/src/plan/types.js";

const FOLDER = "tests/shared";

interface Pair {
  result: Result;
  timeline_plain: Timeline;
  timeline_scaled: Timeline;
  level?: Level;
  timeline_at_level?: Timeline;
  timeline_scaled_at_level?: Timeline;
}

for (const file of readdirSync(FOLDER).filter((name) => name.endsWith(".json"))) {
  const pair = JSON.parse(readFileSync(`${FOLDER}/${file}`, "utf8")) as Pair;
  test(`${file}: scaled here and compiled there are the same`, () => {
    assert.deepEqual(scaled(pair.timeline_plain, twoKFrom(pair.result)), pair.timeline_scaled);
  });
  const { level, timeline_plain, result } = pair;
  if (level) test(`${file}: at another level pressure is another power, and rough lengths follow it`, () => {
    assert.deepEqual(scaled(timeline_plain, null), timeline_plain);
    assert.notDeepEqual(pair.timeline_at_level, timeline_plain);
    assert.deepEqual(scaled(timeline_plain, null, level), pair.timeline_at_level);
    assert.deepEqual(scaled(timeline_plain, twoKFrom(result), level), pair.timeline_scaled_at_level);
  });
}
