/** The phone writes a plan as the planner does, word for word. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { decode } from "../../static/src/data/link-codec.js";
import type { Plan } from "../../static/src/plan/wire.js";
import { written } from "../../static/src/plan/written.js";

function shared<Rows>(name: string): Rows {
  return JSON.parse(readFileSync(`tests/shared/${name}.json`, "utf8")) as Rows;
}

test("a plan is written in the very words of the planner", () => {
  const opened = shared<[string, string][]>("links/opened").map(([payload]) => decode(payload));
  const taken = shared<[Plan, boolean][]>("links/verdicts").filter(([, verdict]) => verdict).map(([plan]) => plan);
  const texts = shared<string[]>("texts/written");
  const plans = [...opened, ...taken];
  assert.equal(plans.length, texts.length);
  plans.forEach((plan, index) => assert.equal(written(plan), texts[index]));
});
