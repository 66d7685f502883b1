/** Links on the phone: the same plans, the same timelines and the same refusals as on the server. */
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { LinkError, decode, encode } from "../../static/src/data/link-codec.js";
import { crc32 } from "../../static/src/plan/crc32.js";
import { canonical } from "../../static/src/plan/canonical.js";
import { checkedPlan } from "../../static/src/plan/checked-plan.js";
import { compiledForAnybody } from "../../static/src/plan/compile.js";
import type { Plan } from "../../static/src/plan/wire.js";
import { chance } from "./builders.js";

const FOLDER = "tests/shared/links";
const MUTATIONS = Number(process.env["MUTATIONS"] ?? 5000);

function shared<Rows>(name: string): Rows {
  return JSON.parse(readFileSync(`${FOLDER}/${name}.json`, "utf8")) as Rows;
}

const opened = shared<[payload: string, digest: string][]>("opened");

test("a link of version 1 opens for ever", () => {
  const { payload, plan } = shared<{ payload: string; plan: Plan }>("version-1");
  assert.deepEqual(decode(payload), plan);
});

test("a plan is compiled to the very timeline that the planner compiles", () => {
  for (const [payload, digest] of opened) {
    const timeline = compiledForAnybody(decode(payload));
    assert.equal(createHash("sha256").update(canonical(timeline)).digest("hex"), digest, canonical(timeline.plan));
  }
});

test("a plan that is packed here opens again as the same plan", () => {
  for (const [payload] of opened) assert.deepEqual(decode(encode(decode(payload))), decode(payload));
});

test("the planner's verdict on a plan from outside is also the phone's", () => {
  for (const [document, taken] of shared<[unknown, boolean][]>("verdicts")) {
    assert.equal(checkedPlan(document) !== undefined, taken, JSON.stringify(document));
  }
});

test("a link that cannot be opened is told by its kind", () => {
  for (const [fault, payload] of shared<[string, string][]>("faults")) {
    assert.throws(() => decode(payload), (error: LinkError) => error instanceof LinkError && error.fault === fault, `${fault}: ${payload.slice(0, 60)}`);
  }
});

test("what messages put behind a link or into it does no harm", () => {
  const [payload] = opened[0]!;
  for (const text of [`${payload}.`, `${payload}).\n`, `${payload.slice(0, 9)}\r\n${payload.slice(9)}`]) assert.deepEqual(decode(text), decode(payload));
});

test("mutated links raise the codec's own error and no other", () => {
  const random = chance(26);
  for (let done = 0; done < MUTATIONS; done += 1) {
    const mutated = mutation(opened[Math.floor(random() * opened.length)]![0], random);
    try {
      canonical(decode(mutated));
    } catch (error) {
      assert.ok(error instanceof LinkError, `${String(error)}: ${mutated}`);
    }
  }
});

function mutation(payload: string, random: () => number): string {
  const at = Math.floor(random() * payload.length);
  const bytes = [...Buffer.from(payload, "base64url")];
  const place = 5 + Math.floor(random() * (bytes.length - 5));
  const kind = Math.floor(random() * 6);
  if (kind === 0) return payload.slice(0, at);
  if (kind === 1) return payload + payload.slice(at);
  if (kind === 2) return payload.slice(0, at) + "AZaz09-_é#\n %"[Math.floor(random() * 13)] + payload.slice(at + 1);
  if (kind === 3) bytes[place]! ^= 1 << Math.floor(random() * 8);
  if (kind === 4) bytes.splice(place, 1 + Math.floor(random() * 8));
  if (kind === 5) bytes.splice(place, 0, Math.floor(random() * 256), Math.floor(random() * 256));
  const body = bytes.slice(5);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32([1], body));
  return Buffer.from([1, ...sum, ...body]).toString("base64url");
}

test("the checksum is the published one", () => {
  // CRC-32/ISO-HDLC, check value of "123456789".
  assert.equal(crc32([...Buffer.from("123456789")]), 0xcbf43926);
});

test("canonical JSON writes and sorts as its RFC does, and refuses what JSON has no form for", () => {
  // RFC 8785: the samples of sections 3.2.2 to 3.2.4.
  const numbers = JSON.parse(String.raw`{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001], "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}`);
  assert.equal(canonical(numbers), String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`);
  const named = { "\u20ac": 5, "\r": 1, "\ufb33": 7, 1: 2, "\u{1f600}": 6, "\u0080": 3, "\u00f6": 4 };
  assert.equal(canonical(named), '{"\\r":1,"1":2,"\u0080":3,"\u00f6":4,"\u20ac":5,"\u{1f600}":6,"\ufb33":7}');
  for (const value of [NaN, Infinity, "\ud800"]) assert.throws(() => canonical([value]), TypeError);
});

test("a link with any number of stops behind it is answered at once", () => {
  const stops = `${".".repeat(2_000_000)}a`;
  assert.throws(() => decode(stops), LinkError);
  assert.deepEqual(decode(`${opened[0]![0]}${stops.slice(0, -1)}`), decode(opened[0]![0]));
});
