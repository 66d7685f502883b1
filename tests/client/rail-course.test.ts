/** The course of the rail's seat: the phases at their exact share of the stroke. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { seatCourse, sweptCourse } from "../../static/src/components/rail-course.js";

const shape = (course: Keyframe[]) => course.map(({ offset, transform }) => [offset, transform]);

test("the seat is at the finish when the drive ends, and back at the catch with the next stroke", () => {
  assert.deepEqual(shape(seatCourse(0.36, false)), [[0, "translateX(0%)"], [0.36, "translateX(100%)"], [1, "translateX(0%)"]]);
});

test("the drive's sweep ends with the drive", () => {
  const course = sweptCourse(0.36, false);
  assert.deepEqual(shape(course), [[0, "scaleX(0)"], [0.36, "scaleX(1)"], [1, "scaleX(0)"]]);
  assert.equal(course[1]!.easing, "step-start");
});

test("calm, it stands at the finish, half way and at the catch, and never glides", () => {
  assert.deepEqual(shape(seatCourse(0.4, true)), [
    [0, "translateX(100%)"], [0.4, "translateX(50%)"], [0.7, "translateX(0%)"], [1, "translateX(0%)"],
  ]);
  assert.deepEqual(shape(sweptCourse(0.4, true)), [[0, "scaleX(1)"], [0.4, "scaleX(0)"], [1, "scaleX(0)"]]);
  for (const frame of [...seatCourse(0.4, true), ...sweptCourse(0.4, true)]) assert.ok(frame.offset === 1 || frame.easing === "step-end");
});
