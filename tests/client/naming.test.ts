/** Plans without a title of their own: the first keeps the usual one, the next are told apart. */
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { forgetPlan, keptPlans } from "../../static/src/data/plans.js";
import { keepWritten } from "../../static/src/data/writing.js";
import { titleApart } from "../../static/src/plan/naming.js";
import type { Step } from "../../static/src/plan/wire.js";

beforeEach(async () => {
  for (const { id } of await keptPlans()) await forgetPlan(id);
});

const light = (seconds: number): Step => ({ for: { seconds }, rate: 18, effort: { pressure: "light" } });
const SEVENS: Step = { times: 6, blocks: [{ for: { metres: 700 }, rate: 28, focus: "Long" }], between: [{ rest: true, for: { seconds: 180 } }] };
const make = (blocks: Step[], title = "My session") => keepWritten({ format: 1, title, parts: [{ kind: "main", blocks }] });

test("the second untitled plan is named after what is rowed in it, in its text too", async () => {
  await make([light(180)]);
  const second = await make([SEVENS, light(120)]);
  assert.equal(second.plan.title, "My session: 6 x 700m r28 / 3' rest, 2' r18 light");
  assert.ok(second.text!.startsWith("title: My session: 6 x 700m r28 / 3' rest, 2' r18 light\n"));
});

test("an untitled plan made again is the same plan under the same name", async () => {
  const one = await make([light(180)]);
  const two = await make([SEVENS]);
  assert.deepEqual([(await make([light(180)])).id, (await make([SEVENS])).id], [one.id, two.id]);
  assert.equal((await keptPlans()).length, 2);
});

test("a title that somebody gave stays, though another plan has it", async () => {
  await make([light(180)], "Tuesday");
  assert.equal((await make([light(240)], "Tuesday")).plan.title, "Tuesday");
});

test("what does not fit a title, or is taken, is numbered", () => {
  const long = `main\n${"3' r18 light\n".repeat(20)}`;
  assert.equal(titleApart("My session", long, ["My session"]), "My session 2");
  assert.equal(titleApart("My session", "main\n3 x (\n3' r18\n)", ["My session", "My session 2"]), "My session 3");
  const named = "My session: 3' r18";
  assert.equal(titleApart("My session", "main\n3' r18", ["My session"]), named);
  assert.equal(titleApart("My session", "main\n3' r18", ["My session", named]), "My session 2");
  assert.equal(titleApart("My session", "title: My session\n\nwarm-up\n5' r18 light", ["My session"]), "My session 2");
});
