/** Parts and blocks put in, taken out and moved about: where they come to stand, and that nothing is lost. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { doubled, inserted, itemAt, moved, movedTo, removed, repeated, replaced, unrolled } from "../../static/src/plan/reshape.js";
import type { Plan, Step } from "../../static/src/plan/wire.js";
import { written } from "../../static/src/plan/written.js";

const row = (minutes: number): Step => ({ for: { seconds: 60 * minutes }, rate: 20 });
const PLAN: Plan = {
  format: 1, title: "x", parts: [
    { kind: "warm-up", blocks: [row(1), row(2)] },
    { kind: "gap", for: { seconds: 60 } },
    { kind: "main", blocks: [row(3), { times: 2, blocks: [row(4), row(5)], between: [row(6)] }, { times: 3, blocks: [row(7)] }, row(8)] },
  ],
};
/** The order of the minutes, with brackets for what is repeated. */
const order = (plan: Plan) => written(plan).split("\n").slice(2).join(" ").replace(/ r20/g, "").trim();
const lengths = (plan: Plan) => [...JSON.stringify(plan).matchAll(/"seconds":(\d+)/g)].map(([, seconds]) => Number(seconds)).sort();

test("a block walks from the first place to the last and back, and passes every place on its way", () => {
  let [plan, place] = [PLAN, "/parts/0/blocks/0"];
  const seen = [order(plan)];
  for (let step = moved(plan, place, 1); step; step = moved(plan, place, 1)) {
    ({ plan, place } = step);
    seen.push(order(plan));
    assert.deepEqual(lengths(plan), lengths(PLAN));
  }
  assert.equal(place, "/parts/2/blocks/4");
  assert.equal(new Set(seen).size, seen.length);
  for (let step = moved(plan, place, -1); step; step = moved(plan, place, -1)) ({ plan, place } = step);
  assert.deepEqual(plan, PLAN);
});

test("repeats pass each other, and parts too", () => {
  const { plan, place } = moved(PLAN, "/parts/2/blocks/1", 1)!;
  assert.equal(place, "/parts/2/blocks/2");
  assert.equal(order(plan), "warm-up 1' 2'  gap 1'  main 3' 3 x 7' 2 x (4', 5') / 6' 8'");
  assert.deepEqual(moved(PLAN, "/parts/0", 1)!.plan.parts.map(({ kind }) => kind), ["gap", "warm-up", "main"]);
  assert.equal(moved(PLAN, "/parts/2", 1), undefined);
});

test("a repeat or a part that is left with nothing goes, and what came between stays", () => {
  assert.deepEqual(removed(removed(PLAN, "/parts/0/blocks/0"), "/parts/0/blocks/0").parts.map(({ kind }) => kind), ["gap", "main"]);
  assert.deepEqual(removed(PLAN, "/parts/2/blocks/2/blocks/0"), removed(PLAN, "/parts/2/blocks/2"));
  const without = removed(removed(PLAN, "/parts/2/blocks/1/blocks/0"), "/parts/2/blocks/1/blocks/0");
  assert.deepEqual(itemAt(without, "/parts/2/blocks/1"), { times: 2, blocks: [row(6)] });
});

test("what is doubled, repeated, unrolled, put in or replaced stands where it should", () => {
  const { plan, place } = doubled(PLAN, "/parts/0/blocks/1");
  assert.deepEqual([itemAt(plan, place), place], [row(2), "/parts/0/blocks/2"]);
  const thrice = repeated(PLAN, "/parts/0/blocks/1", 3);
  assert.deepEqual(itemAt(thrice, "/parts/0/blocks/1"), { times: 3, blocks: [row(2)] });
  assert.deepEqual(unrolled(thrice, "/parts/0/blocks/1"), PLAN);
  assert.deepEqual(itemAt(inserted(PLAN, "/parts/0/blocks/2", row(9)), "/parts/0/blocks/2"), row(9));
  assert.deepEqual(itemAt(replaced(PLAN, "/parts/0/blocks/0", row(9)), "/parts/0/blocks/0"), row(9));
});

test("a repeat is not put into itself", () => {
  assert.equal(movedTo(PLAN, "/parts/2/blocks/1", "/parts/2/blocks/1/blocks/0"), undefined);
  assert.equal(movedTo(PLAN, "/parts/2/blocks/1", "/parts/0"), undefined);
  assert.equal(movedTo(PLAN, "/parts/2/blocks/3", "/parts/0/blocks/0")!.place, "/parts/0/blocks/0");
});
