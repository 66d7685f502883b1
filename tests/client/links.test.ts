/** Plans that come by links are kept under one name each; links for plans are whole addresses. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { beforeEach, test } from "node:test";
import { NoAnswer, Refused } from "../../static/src/data/api.js";
import { LinkError, decode, encode } from "../../static/src/data/link-codec.js";
import { crc32 } from "../../static/src/plan/crc32.js";
import { carryingAddress, keepReceived, needsKey, openCarried, openShort, shortAddress } from "../../static/src/data/links.js";
import { addressOf, forgetPlan, keep, keptPlans, openPlan } from "../../static/src/data/plans.js";
import { changeSettings, readSettings } from "../../static/src/data/settings.js";
import { canonical } from "../../static/src/plan/canonical.js";
import type { Plan } from "../../static/src/plan/wire.js";
import { network } from "./network.js";

const { payload, plan } = JSON.parse(readFileSync("tests/shared/links/version-1.json", "utf8")) as { payload: string; plan: Plan };
const ID = "mfrggzdfmztwq2lk";

Object.assign(globalThis, { location: { origin: "https://row.example" } });

beforeEach(async () => {
  for (const { id } of await keptPlans()) await forgetPlan(id);
  await changeSettings({ publish_key: "" });
  network({});
});

test("a link that carries its plan opens with no signal, and is one plan however often it is opened", async () => {
  const first = await openCarried(payload);
  const again = await openCarried(`${payload}.`);
  assert.deepEqual([first.source, first.plan, again.id], ["sent", plan, first.id]);
  assert.ok(first.timeline.segments.length > 5);
  assert.equal((await keptPlans()).length, 1);
  assert.deepEqual(decode(addressOf(first).split("#")[1]!), plan);
  assert.deepEqual((await openPlan("sent", first.name)).plan, plan);
});

test("two plans never share a name, even where their checksum is the same", async () => {
  const sum = crc32(new TextEncoder().encode(canonical(plan))).toString(16).padStart(8, "0");
  const first = await openCarried(payload);
  assert.equal(first.name, sum);
  await keep({ ...first, plan: { ...plan, title: "Another" } });
  assert.notEqual((await openCarried(payload)).name, sum);
  assert.equal((await openPlan("sent", sum)).plan.title, "Another");
});

test("a damaged link keeps nothing", async () => {
  await assert.rejects(openCarried(payload.slice(0, 50)), LinkError);
  assert.deepEqual(await keptPlans(), []);
});

test("a short link needs signal the first time and none after that", async () => {
  await assert.rejects(openShort(ID), NoAnswer);
  const asked = network({ [`/api/links/${ID}`]: [200, { id: ID, plan }] });
  const opened = await openShort(ID);
  assert.deepEqual([opened.name, opened.plan, addressOf(opened)], [ID, plan, `/p/${ID}`]);
  network({});
  assert.deepEqual((await openShort(ID)).plan, plan);
  assert.equal(asked.length, 1);
});

test("a plan of a later format under a short link is told as made by a newer version", async () => {
  network({ [`/api/links/${ID}`]: [200, { id: ID, plan: { ...plan, format: 2 } }] });
  await assert.rejects(openShort(ID), (error: LinkError) => error.fault === "future");
  network({ [`/api/links/${ID}`]: [200, { id: ID, plan: { ...plan, format: 0 } }] });
  await assert.rejects(openShort(ID), (error: LinkError) => error.fault === "no-plan");
});

test("what a server sends under a short link is looked at before it is kept", async () => {
  network({ [`/api/links/${ID}`]: [200, { id: ID, plan: { ...plan, title: { strange: true } } }] });
  await assert.rejects(openShort(ID), LinkError);
  network({ [`/api/links/${ID}`]: [410, { status: 410, detail: "this plan was taken down" }] });
  await assert.rejects(openShort(ID), /taken down/);
  assert.deepEqual(await keptPlans(), []);
});

test("links for a plan are whole addresses; one that is too long for a link has none", async () => {
  network({ "/api/links": [201, { id: ID, url: `/p/${ID}` }] });
  assert.equal(await shortAddress(plan), `https://row.example/p/${ID}`);
  network({ "/api/links": [201, { id: ID, url: `https://elsewhere.example/p/${ID}` }] });
  assert.equal(await shortAddress(plan), `https://elsewhere.example/p/${ID}`);
  assert.equal(carryingAddress(plan), `https://row.example/p#${encode(plan)}`);
  assert.equal(carryingAddress(tooLong()), undefined);
});

test("a plan from a wall that is too long for a link is kept as one's own, once", async () => {
  const long = tooLong();
  const first = await keepReceived(long);
  assert.deepEqual([first.source, first.plan, (await keepReceived(long)).id], ["mine", long, first.id]);
  assert.equal((await keptPlans()).length, 1);
  assert.equal(addressOf(first), `/mine/${first.name}`);
  assert.deepEqual((await openPlan("mine", first.name)).plan, long);
  assert.equal((await keepReceived(plan)).source, "sent");
});

function tooLong(): Plan {
  const noise = (length: number) => Array.from({ length }, () => Math.random().toString(36).slice(2, 12)).join(" ").slice(0, 119);
  const calls = () => Array.from({ length: 20 }, (_, index) => ({ text: noise(12), stroke: index + 1 }));
  return { format: 1, title: "Long", parts: [{ kind: "main", blocks: Array.from({ length: 9 }, () => ({ for: { seconds: 600 }, rate: 20, calls: calls() })) }] };
}

test("a key is kept once it was the right one", async () => {
  network({ "/api/links": [401, { status: 401, detail: "this server asks for a key" }] });
  await assert.rejects(shortAddress(plan, "wrong"), needsKey);
  assert.equal((await readSettings()).publish_key, "");
  network({ "/api/links": [201, { id: ID, url: `/p/${ID}` }] });
  await shortAddress(plan, "the right key, of some length");
  assert.equal((await readSettings()).publish_key, "the right key, of some length");
  assert.ok(!needsKey(new Refused(403, "closed", [])));
});
