/** Plans found by plain words, length, level, equipment and tags. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { EVERYTHING, found, isEverything, needsOf, type Findable, type Sought } from "../../static/src/plan/seeking.js";
import { areTags, tagsIn, tagsProblem } from "../../static/src/plan/tag-reading.js";
import { together } from "../../static/src/plan/tags.js";
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

test("a plan whose main piece says it comes before one that says it on the way there", () => {
  const parts = (warm: number, main: number): Plan["parts"] => [{ kind: "warm-up", blocks: [{ ...light, rate: warm }] }, { kind: "main", blocks: [{ ...light, rate: main }] }];
  const there: Findable = { plan: { ...planOf("One", []), parts: parts(20, 30) }, seconds_s: 600 };
  const then: Findable = { plan: { ...planOf("Other", []), parts: parts(18, 20) }, seconds_s: 600 };
  assert.deepEqual(found([there, then], { ...EVERYTHING, words: "r20" }), [then, there]);
  assert.deepEqual(found([there, then], EVERYTHING), [there, then]);
});

test("a number means that number, and not the beginning of another", () => {
  assert.deepEqual(titles({ words: "200 m" }), []);
  assert.deepEqual(titles({ words: "2" }), []);
  assert.deepEqual(titles({ words: "r22" }), ["Ladder of rates"]);
});

const eights: Findable = { plan: planOf("Thursday", [{ times: 8, blocks: [{ for: { metres: 500 }, rate: 28 }], between: [{ rest: true, for: { seconds: 180 } }] }] as never), seconds_s: 2600 };
const tens: Findable = { plan: planOf("Steady in threes", [{ times: 3, blocks: [{ for: { seconds: 600 }, rate: 20 }], between: [{ for: { seconds: 90 }, rate: 18 }] }] as never), seconds_s: 2000 };
const nested: Findable = { plan: planOf("Two sets", [{ times: 2, blocks: [{ times: 4, blocks: [{ for: { metres: 250 } }, { for: { strokes: 10 } }] }] }] as never), seconds_s: 900 };
const named: Findable = { plan: planOf("6 × 1'30\" / 2:00", [light]), seconds_s: 900 };
const five: Findable = { plan: planOf("Long one", [{ for: { metres: 5000 }, rate: 24 }]), seconds_s: 1300 };
const single: Findable = { plan: planOf("One by one", [{ for: { metres: 750 } }, { for: { metres: 750 } }, { for: { metres: 750 } }]), seconds_s: 700 };
const COACHES = [eights, tens, nested, named, five, single];

test("the notation of coaches is understood, in titles and in what a plan holds", () => {
  const found_ = (words: string) => found(COACHES, { ...EVERYTHING, words }).map(({ plan }) => plan.title);
  const meant: Record<string, string[]> = {
    Thursday: ["8 x 500", "8x500m", "8×500", "8 X 500 m", "8 * 500 metres", "8 x 0.5k", "8 x 500 r28", "8 x 500m / 3'", "8 x 500m / 3' rest", "8 x 500 / 3:00", "180 s rest", "r28", "R28", "rate 28", "r 28", "28 spm"],
    "Steady in threes": ["3 x 10'", "3 x 10 min", "3x10", "3 x 10:00", "3 x 600 s", "2 x 1'30\"", "2 x 90\"", "2 x 1.5 min"],
    "Two sets": ["4 x 250", "8 x 250m", "4 x 10 strokes", "4 x (10 strokes"],
    "6 × 1'30\" / 2:00": ["6 x 1'30\"", "6 x 90 s", "6x1:30", "6 x 90", "/ 120 s"],
    "Long one": ["5k", "5 km", "5000", "5,000 m"],
    "One by one": ["3 x 750", "3x750m", "750"],
  };
  for (const [title, texts] of Object.entries(meant)) for (const words of texts) assert.deepEqual(found_(words), [title], words);
  assert.deepEqual([found_("8 x "), found_("8x")], [["Thursday", "Two sets"], ["Thursday", "Two sets"]]);
  for (const words of ["8 x 50", "8 x 5000", "3 x 1", "4 x 500", "8 x 500 / 2'", "18 x 500"]) assert.deepEqual(found_(words), [], words);
});

test("a set that a text names is found by its parts too", () => {
  const plan = { plan: planOf("Tuesday 8 x 500m / 3' rest at rate 28", [light]), seconds_s: 900 };
  for (const words of ["500 m", "500", "8", "x", "3 min", "rest", "rate", "28", "8 x 500", "tues 8x500 r28"]) {
    assert.equal(found([plan], { ...EVERYTHING, words }).length, 1, words);
  }
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

test("of tags that will not do the first is named, with what is wrong with it", () => {
  assert.equal(tagsProblem("Tuesday, juniors"), "");
  assert.equal(tagsProblem(`Tuesday, ${"x".repeat(25)}, juniors`), `“${"x".repeat(25)}” is 25 characters long, and a tag has room for 24: shorten it.`);
  assert.match(tagsProblem("Tuesday, a\u202eb"), /^“a\u202eb” holds a character that no tag can hold/);
  assert.match(tagsProblem("a,b,c,d,e,f,g,h,i,A,"), /^These are 9 tags, and a plan has 8 at most/);
});

test("tags from elsewhere are looked at before they are kept", () => {
  assert.ok(areTags(["Tuesday"]));
  for (const wrong of ["Tuesday", [1], ["a", "A"], [""], ["a,b"], ["x".repeat(25)], Array(9).fill("a")]) assert.ok(!areTags(wrong));
  assert.deepEqual(together(["a"], ["A", "b"]), ["a", "b"]);
});
