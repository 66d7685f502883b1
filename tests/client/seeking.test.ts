/** Plans found by plain words, length, level, equipment and tags. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { EVERYTHING, found, isEverything, needsOf, type Findable, type Sought } from "../../static/src/plan/seeking.js";
import { areTags, tagsIn, together } from "../../static/src/plan/tags.js";
import type { Block, Plan } from "../../static/src/plan/wire.js";

const planOf = (title: string, blocks: Block[], more: Partial<Plan> = {}): Plan => ({ format: 1, title, parts: [{ kind: "main", blocks }], ...more });
const light: Block = { for: { seconds: 300 }, rate: 18, effort: { pressure: "light" }, focus: "Long arms, legs first" };

const test2k: Findable = { plan: planOf("A test", [{ for: { metres: 2000 }, rate: 28, effort: { split_offset: 0 } }]), seconds_s: 460, kind: "test", level: "club" };
const ladder: Findable = { plan: planOf("Ladder of rates", [light, { ...light, rate: 22 }]), seconds_s: 900, kind: "ladder", level: "novice" };
const pulse: Findable = { plan: planOf("Easy", [{ for: { seconds: 1800 }, rate: 20, effort: { heart_rate: { percent_max: 70 } } }]), seconds_s: 1800, level: "trained" };
const feet: Findable = { plan: planOf("Balance", [{ ...light, drill: { name: "feet out of the straps" } }], { setting: { drag_factor: 120 } }), seconds_s: 3700, tags: ["Tuesday", "Juniors"] };
const ALL = [test2k, ladder, pulse, feet];

const titles = (sought: Partial<Sought>) => found(ALL, { ...EVERYTHING, ...sought }).map(({ plan }) => plan.title);

test("with nothing sought everything is found, in its order", () => {
  assert.ok(isEverything(EVERYTHING));
  assert.deepEqual(titles({ words: "  " }), ["A test", "Ladder of rates", "Easy", "Balance"]);
});

test("a piece is found however its length is written", () => {
  for (const words of ["2k", "2 km", "2km", "2000m", "2000 metres", "2,000 m", "2000"]) assert.deepEqual(titles({ words }), ["A test"], words);
  for (const words of ["30 min", "30'", "half an hour", "30"]) assert.deepEqual(titles({ words }), ["Easy"], words);
});

test("a number means that number, and not the beginning of another", () => {
  assert.deepEqual(titles({ words: "200 m" }), []);
  assert.deepEqual(titles({ words: "2" }), []);
  assert.deepEqual(titles({ words: "r22" }), ["Ladder of rates"]);
});

test("words are begun anywhere in what a plan says, and all of them have to be there", () => {
  assert.deepEqual(titles({ words: "LADD" }), ["Ladder of rates"]);
  assert.deepEqual(titles({ words: "long arms" }), ["Ladder of rates", "Balance"]);
  assert.deepEqual(titles({ words: "long arms ladder" }), ["Ladder of rates"]);
  assert.deepEqual(titles({ words: "heart rate" }), ["Easy"]);
  assert.deepEqual(titles({ words: "tuesday" }), ["Balance"]);
  assert.deepEqual(titles({ words: "beginner" }), ["Ladder of rates"]);
  assert.deepEqual(titles({ words: "zebra" }), []);
});

test("what says it in its title comes first", () => {
  assert.deepEqual(found([pulse, { ...ladder, plan: planOf("Easy 30 min", [light]) }], { ...EVERYTHING, words: "30 min" }).map(({ plan }) => plan.title), ["Easy 30 min", "Easy"]);
});

test("a length at an edge belongs to the shorter", () => {
  assert.deepEqual(titles({ range: "short" }), ["A test", "Ladder of rates"]);
  assert.deepEqual(titles({ range: "half-hour" }), ["Easy"]);
  assert.deepEqual(titles({ range: "hour" }), []);
  assert.deepEqual(titles({ range: "long" }), ["Balance"]);
});

test("who is new is shown what is for those who are, and who is trained everything that says a level", () => {
  assert.deepEqual(titles({ level: "novice" }), ["Ladder of rates"]);
  assert.deepEqual(titles({ level: "club" }), ["A test", "Ladder of rates"]);
  assert.deepEqual(titles({ level: "trained" }), ["A test", "Ladder of rates", "Easy"]);
});

test("what needs a thing that is lacking is left out", () => {
  assert.deepEqual(ALL.map(({ plan }) => needsOf(plan)), [["splits"], [], ["pulse"], ["straps", "drag"]]);
  assert.deepEqual(titles({ lacking: "pulse" }), ["A test", "Ladder of rates", "Balance"]);
  assert.deepEqual(titles({ lacking: "drag" }), ["A test", "Ladder of rates", "Easy"]);
});

test("a tag is met as a whole", () => {
  assert.deepEqual(titles({ tag: "Tuesday" }), ["Balance"]);
  assert.deepEqual(titles({ tag: "Tues" }), []);
});

test("tags are written with commas between, each once", () => {
  assert.deepEqual(tagsIn(" Tuesday,juniors ,, TUESDAY"), ["Tuesday", "juniors"]);
  assert.deepEqual(tagsIn(""), []);
  assert.equal(tagsIn("x".repeat(25)), undefined);
  assert.equal(tagsIn("a,b,c,d,e,f,g,h,i"), undefined);
  assert.equal(tagsIn("a\u202eb"), undefined);
});

test("tags from elsewhere are looked at before they are kept", () => {
  assert.ok(areTags(["Tuesday"]));
  for (const wrong of ["Tuesday", [1], ["a", "A"], [""], ["a,b"], ["x".repeat(25)], Array(9).fill("a")]) assert.ok(!areTags(wrong));
  assert.deepEqual(together(["a"], ["A", "b"]), ["a", "b"]);
});
