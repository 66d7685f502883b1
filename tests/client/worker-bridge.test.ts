/** The page's side of the service worker, where there is none, and what it lets scripts be loaded from. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { canSave, ourScript, register, savedProof, updateIsReady } from "../../static/src/offline/worker-bridge.js";

test("scripts are loaded from our own addresses only", () => {
  assert.equal(ourScript("/sw.js"), "/sw.js");
  assert.equal(ourScript("/static/dist/ticker-worker-5DE33SWV.js"), "/static/dist/ticker-worker-5DE33SWV.js");
  for (const address of ["https://example.test/sw.js", "//example.test/sw.js", "/static/dist/../evil.js", "/static/dist/a/b.js", "data:,x"]) {
    assert.throws(() => ourScript(address), /no script may be loaded/);
  }
});

test("where there can be no service worker nothing is proved, and nothing fails", async () => {
  await register();
  assert.equal(canSave(), false);
  assert.deepEqual(await savedProof(), { state: "impossible", missing: [] });
  assert.equal(await updateIsReady(), false);
});
