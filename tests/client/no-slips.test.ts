/** Presses on screens whose buttons change under the finger. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { NoSlips } from "../../static/src/components/no-slips.js";

/** A click at this moment, as far as it is listened to; answers whether it reaches what is pressed. */
function press(slips: NoSlips, timeStamp: number, { localName = "button", clientX = 100, clientY = 400 } = {}): boolean {
  let reached = true;
  const stop = () => (reached = false);
  const composedPath = () => [{ localName: "span" }, { localName }];
  slips.handleEvent({ timeStamp, clientX, clientY, composedPath, preventDefault: () => undefined, stopImmediatePropagation: stop } as never);
  return reached;
}

test("a second press at once is none, whatever stands under the finger by then, and a later one counts", () => {
  const slips = new NoSlips();
  assert.deepEqual([0, 120, 299, 300, 500, 650].map((at_ms) => press(slips, at_ms)), [true, false, false, true, false, true]);
});

test("a finger does not come down twice on the very same point, and another button is another press", () => {
  const slips = new NoSlips();
  assert.deepEqual([press(slips, 0), press(slips, 90, { clientX: 108, clientY: 391 }), press(slips, 200, { clientY: 470 })], [true, false, true]);
});

test("a link that brings a button under the finger counts as a press, and what is no button is let through", () => {
  const slips = new NoSlips();
  assert.deepEqual([press(slips, 0, { localName: "a" }), press(slips, 50), press(slips, 60, { localName: "input" })], [true, false, true]);
});
