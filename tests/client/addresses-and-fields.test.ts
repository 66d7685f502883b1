/** Addresses of screens, the field for a result, ticks for strokes. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { isHereOnly } from "../../static/src/components/here-only.js";
import { routeOf, rowAddress } from "../../static/src/components/routes.js";
import { strokesInAMark } from "../../static/src/components/tick-marks.js";
import { metresOf, resultProblem, resultWords, timeOf } from "../../static/src/plan/result-words.js";
import type { Result } from "../../static/src/plan/types.js";

const route = (address: string) => routeOf(new URL(address, "https://example.org"));

test("every address has its screen, and an unknown one the first", () => {
  assert.deepEqual(route("/"), { screen: "first" });
  assert.deepEqual(route("/plan/first-row"), { screen: "plan", source: "built-in", name: "first-row" });
  assert.deepEqual(route("/mine/abc"), { screen: "plan", source: "mine", name: "abc" });
  assert.deepEqual(route("/p#AQab-_9"), { screen: "link", carried: "AQab-_9" });
  assert.deepEqual(route("/wall/mfrggzdfmztwq2lk"), { screen: "afar", wall: "mfrggzdfmztwq2lk" });
  assert.deepEqual(route("/walls"), { screen: "walls", key: "" });
  assert.deepEqual(route("/walls?mine=abc#aaa.bbb"), { screen: "walls", key: "aaa.bbb", source: "mine", name: "abc" });
  assert.deepEqual(route("/p"), { screen: "link", carried: "" });
  assert.deepEqual(route("/p/mfrggzdfmztwq2lk"), { screen: "link", id: "mfrggzdfmztwq2lk" });
  assert.deepEqual(route("/row"), { screen: "row" });
  assert.deepEqual(route("/athlete"), { screen: "athlete" });
  assert.deepEqual(route("/settings"), { screen: "settings" });
  assert.deepEqual(route("/log"), { screen: "log", session: "" });
  assert.deepEqual(route("/log#abc"), { screen: "log", session: "abc" });
  assert.deepEqual(route("/wall"), { screen: "wall" });
  assert.deepEqual(route("/prompter?plan=first-row"), { screen: "prompter", source: "built-in", name: "first-row" });
  assert.deepEqual(route("/wall?mine=abc"), { screen: "wall", source: "mine", name: "abc" });
  assert.deepEqual(route("/elsewhere"), { screen: "first" });
});

test("the address for rowing a plan leads back to that plan", () => {
  assert.deepEqual(route(rowAddress("built-in", "first-row")), { screen: "row", source: "built-in", name: "first-row" });
  assert.deepEqual(route(rowAddress("mine", "a b&c")), { screen: "row", source: "mine", name: "a b&c" });
  assert.deepEqual(route(rowAddress("sent", "0a1b2c3d")), { screen: "row", source: "sent", name: "0a1b2c3d" });
});

// RFC 1122, 3.2.1.3 (127/8); RFC 4291, 2.5.3 (::1); RFC 6761, 6.3 (localhost and what lies under it).
test("addresses by which a device means itself are told from those that others reach", () => {
  for (const host of ["localhost:8000", "localhost.", "row.localhost", "127.0.0.1", "127.1.2.3:8000", "127.1", "[::1]:8000", "LOCALHOST"]) {
    assert.ok(isHereOnly(`http://${host}/p`), host);
  }
  for (const host of ["192.168.1.20:8443", "row.example", "localhost.example", "notlocalhost", "128.0.0.1", "[::2]", "127.0.0.1.example"]) {
    assert.ok(!isHereOnly(`https://${host}/p#localhost`), host);
  }
});

test("a broken escape in an address breaks nothing", () => {
  assert.deepEqual(route("/plan/%E0%A4%A"), { screen: "plan", source: "built-in", name: "%E0%A4%A" });
});

test("a time is read as people type it", () => {
  assert.deepEqual(["7:42.0", "7:42", "7.42,0", "742", "7’42”", "6:05.4"].map(timeOf), [462, 462, 462, 462, 462, 365.4]);
  assert.deepEqual(["17.5", "58", "1:25:10", "1:25:10.5", "85:10"].map(timeOf), [17.5, 58, 5110, 5110.5, 5110]);
});

test("what is no time is refused", () => {
  assert.deepEqual(["", "7:62", "fast", "7:42.05", "1:75:00", "-7:42", "7:4"].map(timeOf), Array(7).fill(undefined));
});

test("metres are read with the marks that people put between digits, and nothing else is", () => {
  assert.deepEqual(["7105", "7 105 m", "7,105", "10'000"].map(metresOf), [7105, 7105, 7105, 10_000]);
  assert.deepEqual(["", "7:05", "seven", "-5", "7.42", "7.1055"].map(metresOf), Array(6).fill(undefined));
});

test("a result that nobody rows is a slip, and is said with its digits", () => {
  assert.equal(resultProblem({ metres: 2000, seconds: 462 }), "");
  assert.match(resultProblem({ metres: 2000, seconds: 180 }), /^2000 m in 3:00\.0 is quicker than anybody rows/);
  assert.match(resultProblem({ metres: 2000, seconds: 4620 }), /^2000 m in 1:17:00 is slower than 6:00 per 500 m/);
  assert.match(resultProblem({ metres: 50, seconds: 10 }), /from 100 m to 42 195 m/);
});

test("a result is kept here just when the planner takes it", () => {
  const pairs = JSON.parse(readFileSync("tests/shared/results/kept.json", "utf8")) as (Result & { kept: boolean })[];
  assert.ok(pairs.some(({ kept }) => kept) && pairs.some(({ kept }) => !kept));
  for (const { metres, seconds, kept } of pairs) {
    assert.equal(resultProblem({ metres, seconds }) === "", kept, `${metres} m in ${seconds} s`);
  }
});

test("a result over whole minutes is told by its metres", () => {
  assert.deepEqual([{ metres: 2000, seconds: 462 }, { metres: 7105, seconds: 1800 }, { metres: 21_097, seconds: 5470 }].map(resultWords),
    ["2000 m in 7:42.0", "7105 m in 30 min", "21 097 m in 1:31:10"]);
});

test("up to forty strokes have a tick each, and marks never become too many to see", () => {
  assert.equal(strokesInAMark(40), 1);
  assert.equal(strokesInAMark(200), 10);
  for (const total of [41, 600, 601, 3000, 6000]) {
    assert.ok(Math.ceil(total / strokesInAMark(total)) <= 60, `${total} strokes`);
  }
});
