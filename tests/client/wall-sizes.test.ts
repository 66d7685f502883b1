/** How large things are on a wall, and which lanes are on it. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { CLEAR_S, pagesOf, turnAt, type Turn } from "../../static/src/components/lane-turns.js";
import { callSize, DIGIT, figureSize, legibleSize, readFrom, shiftAt, wallSizes } from "../../static/src/components/wall-sizes.js";

const INCH_MM = 25.4;
const television = { width: 1920, height: 1080 };
const tablet = { width: 1280, height: 800 };
const phone = { width: 390, height: 844 };

test("a capital is 32 mm high where it is to be read from 5 m, 22 minutes of arc", () => {
  const diagonal_mm = 55 * INCH_MM;
  const pixels_per_mm = Math.hypot(1920, 1080) / diagonal_mm;
  const size = legibleSize({ distance_m: 5, diagonal_mm }, television);
  assert.ok(Math.abs((size * 0.67) / pixels_per_mm - 32) < 1e-9);
  const arc_minutes = (2 * Math.atan(32 / 2 / 5000) * 180 * 60) / Math.PI;
  assert.ok(Math.abs(arc_minutes - 22) < 0.05, `${arc_minutes}`);
  assert.ok(Math.abs(readFrom(size, diagonal_mm, television) - 5) < 1e-9);
});

test("the time left is read from further away than anything else", () => {
  for (const screen of [television, tablet, phone]) {
    for (const lanes of [0, 1, 6, 16]) {
      const sizes = wallSizes(screen, lanes);
      const time = figureSize(sizes, "0:18");
      for (const other of [sizes.pair, sizes.call, sizes.lane, sizes.top, sizes.next]) assert.ok(time > other);
    }
  }
});

test("beside lanes a line above the figure leaves it no taller than the time of a block, which the call is placed by", () => {
  for (const screen of [television, tablet]) {
    const sizes = wallSizes(screen, 7);
    const time = figureSize(sizes, "1:16");
    for (const noted of ["4", "1:16"]) assert.ok(figureSize(sizes, noted, true) + 1.55 * sizes.top <= time + 1);
  }
});

test("a call or a focus is as large as two lines hold it, down to where it would not be read from afar", () => {
  const sizes = wallSizes(tablet, 5);
  const letters = (count: number) => callSize(sizes, "x".repeat(count));
  assert.equal(letters(0), sizes.call);
  assert.equal(letters(20), sizes.call);
  assert.ok(letters(80) < sizes.call && letters(80) * 0.54 * 80 < 2 * sizes.call_width);
  assert.equal(letters(1000), sizes.call * 0.6);
  assert.ok(sizes.call_width < wallSizes(tablet, 0).call_width, "lanes stand beside it");
});

test("the longest figure stays in its column", () => {
  for (const screen of [television, tablet, phone]) {
    for (const lanes of [0, 16]) {
      const sizes = wallSizes(screen, lanes, 400);
      const width = figureSize(sizes, "1:05:00") * DIGIT * 7;
      assert.ok(width <= sizes.figure_width + 1e-9);
      assert.ok(sizes.figure_width + (sizes.layout === "upright" ? 0 : sizes.side) < screen.width * 0.96);
    }
  }
});

test("lanes are as large as the distance asks, as far as they fit side by side", () => {
  const near = wallSizes(television, 16, 60);
  const far = wallSizes(television, 16, 90);
  assert.equal(near.lane, 60);
  assert.equal(far.lane, 90);
  assert.ok(far.rows < near.rows);
  const too_far = wallSizes(television, 16, 300);
  assert.ok(too_far.lane < 110);
  assert.ok(too_far.side < television.width * 0.56);
});

test("a few lanes use the room that there is", () => {
  assert.ok(wallSizes(television, 4).lane > wallSizes(television, 16).lane);
  for (const lanes of [1, 4, 8, 16]) {
    const { lane, rows } = wallSizes(television, lanes);
    assert.ok(rows >= 1 && (rows + 0.5) * lane * 1.36 < television.height * 0.79);
  }
});

test("six lanes fit a tablet on its side at once", () => {
  assert.equal(wallSizes(tablet, 6).rows >= 6, true);
});

test("lanes that do not fit stand on pages as even as can be, each lane on one", () => {
  assert.deepEqual(pagesOf(16, 7).map((page) => page.length), [6, 6, 4]);
  assert.deepEqual(pagesOf(8, 8), [[0, 1, 2, 3, 4, 5, 6, 7]]);
  assert.deepEqual(pagesOf(0, 7), []);
  for (let lanes = 0; lanes <= 16; lanes += 1) {
    for (let rows = 1; rows <= 9; rows += 1) {
      const pages = pagesOf(lanes, rows);
      assert.deepEqual(pages.flat(), Array.from({ length: lanes }, (_, index) => index));
      assert.ok(pages.every((page) => page.length <= rows && page.length > 0));
    }
  }
});

/** Turns over blocks of one length, looked at four times a second: when pages changed, and to which. */
function changes(block_s: number, pages: number, seconds: number): { at_s: number; page: number }[] {
  let turn: Turn = { page: 0, since_s: 0 };
  const seen: { at_s: number; page: number }[] = [];
  for (let at_s = 0; at_s < seconds; at_s += 0.25) {
    const since = at_s % block_s;
    const next = turnAt(turn, at_s, pages, since, block_s - since);
    if (next.page !== turn.page) seen.push({ at_s, page: next.page });
    turn = next;
  }
  return seen;
}

test("no page changes within 5 s of a change of block, and each lane has its turn", () => {
  for (const block_s of [11, 21.4, 30, 47, 60, 300]) {
    const seen = changes(block_s, 3, 600);
    for (const { at_s } of seen) assert.ok(at_s % block_s >= CLEAR_S && block_s - (at_s % block_s) >= CLEAR_S, `${at_s} in ${block_s}`);
    assert.deepEqual(new Set(seen.map(({ page }) => page)), new Set([0, 1, 2]));
  }
});

test("in blocks too short for it nothing changes", () => {
  assert.deepEqual(changes(8, 3, 200), []);
});

test("a page that is gone gives way to the first, and a single page never turns", () => {
  assert.deepEqual(turnAt({ page: 2, since_s: 0 }, 3, 2, 1, 1), { page: 0, since_s: 3 });
  assert.equal(turnAt({ page: 0, since_s: 0 }, 100, 1, 50, 50).page, 0);
});

test("the picture is never moved by more than three pixels, and comes back", () => {
  const shifts = Array.from({ length: 9 }, (_, minute) => shiftAt(minute));
  assert.ok(shifts.every(({ x, y }) => Math.abs(x) <= 3 && Math.abs(y) <= 3));
  assert.equal(new Set(shifts.map(({ x, y }) => `${x} ${y}`)).size, 9);
  assert.deepEqual(shiftAt(9), shiftAt(0));
});
