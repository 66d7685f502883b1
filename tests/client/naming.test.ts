/** Plans without a title of their own: the first keeps the usual one, the next are told apart. */
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { readAthlete } from "../../static/src/data/athlete.js";
import { forgetPlan, keptPlans, makePlan } from "../../static/src/data/plans.js";
import { titleApart } from "../../static/src/plan/naming.js";
import { row, timeline } from "./builders.js";
import { network } from "./network.js";

/** Answers as the server does: in canonical shorthand, with the usual title where none is given. */
beforeEach(async () => {
  network({
    "/api/shorthand": ({ text, plan }: { text?: string; plan?: { title: string } }): [number, unknown] => {
      const title = /^title: (.*)/.exec(text ?? "")?.[1] ?? plan?.title ?? "My session";
      const body = (text ?? "").replace(/^title: .*\n+/, "");
      return [200, { plan: { format: 1, title, parts: [] }, text: `title: ${title}\n\n${body}` }];
    },
    "/api/timeline": ({ plan }: { plan: object }): [number, unknown] => [200, { ...timeline(row(60, 24)), plan, findings: [] }],
  });
  for (const { id } of await keptPlans()) await forgetPlan(id);
});

const make = async (text: string) => makePlan(text, await readAthlete());

test("the second untitled plan is named after what is rowed in it, in its text too", async () => {
  await make("main\n3' r18 light");
  const second = await make("main\n6 x 700m r28 / 3' rest\n  focus: Long\n2' r18 light");
  assert.equal(second.plan.title, "My session: 6 x 700m r28 / 3' rest, 2' r18 light");
  assert.ok(second.text!.startsWith("title: My session: 6 x 700m r28 / 3' rest, 2' r18 light\n"));
});

test("an untitled plan made again is the same plan under the same name", async () => {
  const one = await make("main\n3' r18 light");
  const two = await make("main\n6 x 700m r28");
  assert.deepEqual([(await make("main\n3' r18 light")).id, (await make("main\n6 x 700m r28")).id], [one.id, two.id]);
  assert.equal((await keptPlans()).length, 2);
});

test("a title that somebody gave stays, though another plan has it", async () => {
  await make("title: Tuesday\nmain\n3' r18 light");
  assert.equal((await make("title: Tuesday\nmain\n4' r18 light")).plan.title, "Tuesday");
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
