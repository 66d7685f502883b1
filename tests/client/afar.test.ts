/** Walls led from afar: what is asked and answered, and the server's clock. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { beforeEach, test } from "node:test";
import { NoAnswer, Refused } from "../../static/src/data/api.js";
import { keepHeard, lookAt, lookAtLed, readHeard, samePlan, show } from "../../static/src/data/afar.js";
import { changeSettings } from "../../static/src/data/settings.js";
import { hereAt, narrowed } from "../../static/src/state/server-time.js";
import type { Plan } from "../../static/src/plan/wire.js";

const { plan } = JSON.parse(readFileSync("tests/shared/links/version-1.json", "utf8")) as { plan: Plan };
const ID = "a".repeat(16);
const KEY = "k".repeat(43);
const wall = { id: ID, key: KEY, name: "Wall 1" };
const shown = { id: ID, version: 2, plans: [plan], starts_at_s: null };

interface Sent {
  path: string;
  method: string;
  headers: Record<string, string>;
  body: unknown;
}

/** Answers every request alike; what was sent can be looked at. */
function server(status: number, document?: unknown, headers: Record<string, string> = {}): Sent[] {
  const sent: Sent[] = [];
  globalThis.fetch = async (path, options) => {
    sent.push({ path: String(path), method: options?.method ?? "GET", headers: (options?.headers ?? {}) as Record<string, string>, body: options?.body ? JSON.parse(String(options.body)) : undefined });
    return new Response(status === 304 ? null : JSON.stringify(document), { status, headers });
  };
  return sent;
}

beforeEach(() => changeSettings({ walls: null, heard: null }));

test("a tablet asks with the tag it has, and is told when nothing has changed", async () => {
  const first = server(200, shown, { ETag: 'W/"2"', Date: new Date(1_800_000_000_000).toUTCString() });
  const look = await lookAt(ID);
  assert.deepEqual(look.shown, shown);
  assert.deepEqual(first[0]!.headers, {});
  const again = server(304, undefined, { ETag: 'W/"2"' });
  assert.equal((await lookAt(ID, look.etag)).shown, undefined);
  assert.equal(again[0]!.headers["If-None-Match"], 'W/"2"');
});

test("what is no wall's is not shown", async () => {
  for (const bad of [{}, { ...shown, plans: [{ ...plan, title: "" }] }, { ...shown, starts_at_s: "soon" }, null]) {
    server(200, bad);
    await assert.rejects(lookAt(ID), NoAnswer);
  }
  server(404, { status: 404, detail: "there is no wall of that name" });
  await assert.rejects(lookAt(ID), Refused);
});

test("a phone changes the wall by its key, from what it has seen", async () => {
  const sent = server(200, shown);
  await show(wall, [plan], { start_in_seconds: 10 }, 1);
  assert.equal(sent[0]!.method, "PUT");
  assert.deepEqual(sent[0]!.headers, { "Content-Type": "application/json", Authorization: `Bearer ${KEY}`, "If-Match": '"1"' });
  assert.deepEqual(sent[0]!.body, { plans: [plan], start_in_seconds: 10 });
});

test("a phone looks with its key, and is told when a tablet last asked", async () => {
  const sent = server(200, { ...shown, asked_s_ago: 12 });
  assert.equal((await lookAtLed(wall)).shown.asked_s_ago, 12);
  assert.deepEqual(sent[0]!.headers, { Authorization: `Bearer ${KEY}` });
  server(200, shown);
  assert.equal((await lookAtLed(wall)).shown.asked_s_ago, undefined, "a server of an earlier version does not tell");
});

test("a phone learns the server's clock from what it looks at and from what it changes", async () => {
  const minutes_ms = 180_000;
  for (const tell of [() => lookAtLed(wall), () => show(wall, [plan])]) {
    server(200, shown, { Date: new Date(Date.now() - minutes_ms).toUTCString() });
    const { ahead } = await tell();
    assert.ok(ahead.low <= -minutes_ms && ahead.high >= -minutes_ms && ahead.high - ahead.low >= 1000, JSON.stringify(ahead));
  }
});

test("what was heard stands there again, but not on another wall's tablet, nor damaged", async () => {
  const heard = { id: ID, shown, at_ms: 5, done_s: 7 };
  await keepHeard(heard);
  assert.deepEqual(await readHeard(ID), heard);
  assert.equal(await readHeard("b".repeat(16)), undefined);
  await changeSettings({ heard: { ...heard, shown: { ...shown, plans: "none" } } });
  assert.equal(await readHeard(ID), undefined);
});

test("plans are the same when they say the same", () => {
  assert.ok(samePlan(plan, { ...plan }));
  assert.ok(!samePlan(plan, { ...plan, title: "Another" }));
  assert.ok(samePlan(undefined, undefined) && !samePlan(plan, undefined));
});

test("answers dated to the second tell the server's clock better and better, until a clock is set anew", () => {
  // The server is 2.3 s ahead: a date is cut to its second, so that it says from 1.3 to 2.3 s, and up to a second more.
  const first = narrowed(undefined, { low: 1400, high: 2450 });
  const second = narrowed(first, { low: 2250, high: 3300 });
  assert.deepEqual(second, { low: 2250, high: 2450 });
  assert.equal(hereAt(10_000, second), 7650);
  assert.deepEqual(narrowed(second, { low: 60_000, high: 61_000 }), { low: 60_000, high: 61_000 });
  assert.equal(hereAt(10_000, undefined), 10_000);
});
