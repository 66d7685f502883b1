/** The server's answers, refusals and silences as they reach the app. */
import assert from "node:assert/strict";
import { afterEach, test } from "node:test";
import { NoAnswer, Refused, fetchLibrary, readShorthand } from "../../static/src/data/api.js";
import { openBuiltIn } from "../../static/src/data/plans.js";
import { Unsound } from "../../static/src/data/sound-session.js";
import { network } from "./network.js";

const realFetch = globalThis.fetch;
afterEach(() => void (globalThis.fetch = realFetch));

const problems = [{ pointer: "/text", sentence: "line 1: rate 62 is above 50 strokes a minute", line: 1, column: 4, received: "r62", accepted: ["r10 to r50"] }];

test("a refusal is an error with its status and its problems", async () => {
  network({ "/api/shorthand": [422, { type: "about:blank", title: "x", status: 422, detail: "rate 62", problems }] });
  await assert.rejects(readShorthand("3' r62"), (error) => {
    assert.ok(error instanceof Refused);
    assert.deepEqual([error.status, error.message, error.problems], [422, "rate 62", problems]);
    return true;
  });
});

test("no signal is an error of its own", async () => {
  network({});
  await assert.rejects(fetchLibrary(), NoAnswer);
});

test("a page of some gateway in between is no answer of ours", async () => {
  network({ "/api/library": [200, "<html>sign in to the wifi</html>"] });
  await assert.rejects(fetchLibrary(), (error) => error instanceof NoAnswer && /status 200/.test(error.message));
});

const STEADY = { format: 1, title: "Steady", parts: [{ kind: "main", blocks: [{ for: { seconds: 60 }, rate: 24 }] }] };
const library = (plan: unknown) => ({
  "/api/library": [200, { plans: [{ slug: "a", kind: "steady", seconds_s: 60, estimated: false, plan, findings: [] }] }] as [number, unknown],
});

test("a plan opened once is there when there is no signal", async () => {
  network(library(STEADY));
  await openBuiltIn("a");
  network({});
  const kept = await openBuiltIn("a");
  assert.deepEqual([kept.name, kept.kind, kept.timeline.segments.length], ["a", "steady", 1]);
  await assert.rejects(openBuiltIn("never-opened"), NoAnswer);
});

test("a plan that cannot be compiled here is damaged, or of a newer Slipway", async () => {
  for (const [plan, kind] of [[{ ...STEADY, parts: [{ kind: "main" }] }, "damaged"], [{ format: 2, title: "Newer", legs: [] }, "newer"]] as const) {
    network(library(plan));
    await assert.rejects(openBuiltIn("a"), (error) => error instanceof Unsound && error.fault.kind === kind);
  }
});

test("a plan that the server does not know is refused, even with a copy of another one kept", async () => {
  network({ "/api/library": [200, { plans: [] }] });
  await assert.rejects(openBuiltIn("b"), (error) => error instanceof Refused && error.status === 404);
});

test("a request is given up with its signal, where AbortSignal.any is not known", async () => {
  const any = Object.getOwnPropertyDescriptor(AbortSignal, "any")!;
  Reflect.deleteProperty(AbortSignal, "any");
  try {
    let sent: AbortSignal | null | undefined;
    globalThis.fetch = (_path, options) => new Promise((_answer, refuse) => {
      sent = options?.signal;
      if (sent?.aborted) refuse(sent.reason as Error);
      sent?.addEventListener("abort", () => refuse(sent!.reason as Error));
    });
    const given_up = new AbortController();
    const asked = readShorthand("3' r24", given_up.signal);
    assert.equal(sent?.aborted, false);
    given_up.abort();
    await assert.rejects(asked, NoAnswer);
    assert.equal(sent.aborted, true);
    await assert.rejects(readShorthand("3' r24", AbortSignal.abort()), NoAnswer);
  } finally {
    Object.defineProperty(AbortSignal, "any", any);
  }
});
