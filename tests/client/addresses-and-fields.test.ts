/** Addresses of screens, the field for a result, ticks for strokes. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { routeOf, rowAddress } from "../../static/src/components/routes.js";
import { strokesInAMark } from "../../static/src/components/tick-marks.js";
import { secondsOf } from "../../static/src/components/two-k-time.js";

const route = (address: string) => routeOf(new URL(address, "https://example.org"));

test("every address has its screen, and an unknown one the first", () => {
  assert.deepEqual(route("/"), { screen: "first" });
  assert.deepEqual(route("/plan/first-row"), { screen: "plan", source: "built-in", name: "first-row" });
  assert.deepEqual(route("/mine/abc"), { screen: "plan", source: "mine", name: "abc" });
  assert.deepEqual(route("/row"), { screen: "row" });
  assert.deepEqual(route("/elsewhere"), { screen: "first" });
});

test("the address for rowing a plan leads back to that plan", () => {
  assert.deepEqual(route(rowAddress("built-in", "first-row")), { screen: "row", source: "built-in", name: "first-row" });
  assert.deepEqual(route(rowAddress("mine", "a b&c")), { screen: "row", source: "mine", name: "a b&c" });
});

test("a broken escape in an address breaks nothing", () => {
  assert.deepEqual(route("/plan/%E0%A4%A"), { screen: "plan", source: "built-in", name: "%E0%A4%A" });
});

test("a time over 2000 m is read as people type it", () => {
  assert.deepEqual(["7:42.0", "7:42", "7.42,0", "742", "7’42”", "6:05.4"].map(secondsOf), [462, 462, 462, 462, 462, 365.4]);
});

test("what is no time over 2000 m is refused", () => {
  assert.deepEqual(["", "7", "7:62", "2:00", "45:00", "fast", "7:42.05"].map(secondsOf), Array(7).fill(undefined));
});

test("up to forty strokes have a tick each, and marks never become too many to see", () => {
  assert.equal(strokesInAMark(40), 1);
  assert.equal(strokesInAMark(200), 10);
  for (const total of [41, 600, 601, 3000, 6000]) {
    assert.ok(Math.ceil(total / strokesInAMark(total)) <= 60, `${total} strokes`);
  }
});
