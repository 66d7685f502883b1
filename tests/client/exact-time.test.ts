/** Exact fractions: what the planner does with Python's Fraction. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { compare, exact, inParts, minus, multiple, nearest, over, plus, roundHalfUp, times, toNumber, toPair } from "../../static/src/plan/exact-time.js";
import { chance } from "./builders.js";

test("a fraction comes in lowest terms with a positive denominator", () => {
  assert.deepEqual(toPair(exact(10, -4)), [-5, 2]);
  assert.deepEqual(toPair(exact(0, -7)), [0, 1]);
  assert.throws(() => exact(1, 0), RangeError);
});

test("the four operations are exact", () => {
  const third = exact(1, 3);
  assert.deepEqual(toPair(plus(third, exact(1, 6))), [1, 2]);
  assert.deepEqual(toPair(minus(third, exact(1, 2))), [-1, 6]);
  assert.deepEqual(toPair(times(third, exact(3, 5))), [1, 5]);
  assert.deepEqual(toPair(over(third, exact(2, 9))), [3, 2]);
  assert.throws(() => over(third, exact(0)), RangeError);
});

test("rounding goes to the nearest whole number, a tie up, below zero too", () => {
  const halves = [-3, -1, 1, 3, 5].map((half) => Number(roundHalfUp(exact(half, 2))));
  assert.deepEqual(halves, [-1, 0, 1, 2, 3]);
  assert.equal(Number(roundHalfUp(exact(249, 100))), 2);
  assert.deepEqual(toPair(nearest(exact(12345, 1000))), [123, 10]);
});

test("a tenth of the wire is exactly a tenth", () => {
  assert.deepEqual(toPair(inParts(115.3)), [1153, 10]);
  assert.deepEqual(toPair(inParts(0.615, 1000)), [123, 200]);
  assert.deepEqual(toPair(inParts(-1.5)), [-3, 2]);
});

test("a number is the nearest one, like a division of exact whole numbers", () => {
  // Python: float(Fraction(10**40 + 1, 3 * 10**39)) == 3.3333333333333335, float(Fraction(2**60 + 129, 2**60)) == 1.0
  assert.equal(toNumber(exact(10n ** 40n + 1n, 3n * 10n ** 39n)), 3.3333333333333335);
  assert.equal(toNumber(exact(2n ** 60n + 129n, 2n ** 60n)), 1.0000000000000002);
  assert.equal(toNumber(exact(2n ** 60n + 128n, 2n ** 60n)), 1);
  assert.equal(toNumber(exact(-(10n ** 30n), 7n)), -(10 ** 30) / 7);
});

test("numbers from large fractions agree with the same fraction in small terms", () => {
  const next = chance(3);
  for (let count = 0; count < 300; count += 1) {
    const [num, den] = [1 + Math.floor(next() * 1e6), 1 + Math.floor(next() * 1e6)];
    // A little above, by less than any double can show and not on a tie.
    const large = { num: BigInt(num) * 10n ** 30n, den: BigInt(den) * 10n ** 30n };
    assert.equal(toNumber(large), num / den);
    assert.equal(compare(large, exact(num, den)), 0);
  }
});

test("a multiple of a pair is divided once", () => {
  assert.equal(multiple([15, 7], 7_000_000), 15_000_000);
  assert.equal(multiple([10, 3], 3), 10);
});
