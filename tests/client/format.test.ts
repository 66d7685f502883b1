import assert from "node:assert/strict";
import { test } from "node:test";
import { clock } from "../../static/src/plan/format.js";

test("minutes and seconds", () => assert.equal(clock(462), "7:42"));
test("hours when there are any", () => assert.equal(clock(3900), "1:05:00"));
test("never below nothing", () => assert.equal(clock(-3), "0:00"));
test("a part of a second rounds to the nearest", () => assert.equal(clock(59.6), "1:00"));
