/** What storage hands back: whole, or told plainly; nothing in between. */
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { afterEach, test } from "node:test";
import type { InferInput } from "valibot";
import { database } from "../../static/src/data/database.js";
import { addressOfId, everyKept, openMine, type PlanRecord } from "../../static/src/data/plans.js";
import { discardSession, isSound, openSession, putAside, saveSession, type FactRecord, type SessionRecord } from "../../static/src/data/sessions.js";
import { planFault, sessionFault, type Fault } from "../../static/src/data/sound-session.js";
import type { TIMELINE } from "../../static/src/plan/sound-timeline.js";
import type { Segment, Timeline } from "../../static/src/plan/wire.js";
import { replay, type Fact } from "../../static/src/timeline/facts.js";
import { placeAt } from "../../static/src/timeline/place.js";
import { chance, gap, metres, rest, row, timeline } from "./builders.js";

const FOLDER = "tests/shared";
const mixed = timeline(row(60, 24), rest(30), metres(500, 110, 28), gap(60), row(60, 30));
/** The compiler holds: every timeline of the wire can be checked. */
const checkable: InferInput<typeof TIMELINE> = mixed;

const facts: Fact[] = [
  { kind: "started", at_s: 0, count_in_s: 10 },
  { kind: "held", at_s: 20 },
  { kind: "went-on", at_s: 30, count_in_s: 5 },
  { kind: "tapped", at_s: 200, ago_s: 5, count_in_s: 0 },
  { kind: "start-set", at_s: 210, start_s: 260 },
  { kind: "extended", at_s: 215 },
  { kind: "skipped", at_s: 220, count_in_s: 10 },
  { kind: "stepped-back", at_s: 240 },
  { kind: "returned", at_s: 400, since_s: 260, how: "where-stopped", count_in_s: 5 },
  { kind: "ended", at_s: 410 },
];

function sessionOf(plan: Timeline): SessionRecord {
  return { id: "a", plan_id: "built-in:x", plan: plan.plan, timeline: plan, app: "main", made_at_ms: 1_795_000_000_000, state: "open" };
}

function recordOf(plan: Timeline): PlanRecord {
  return { id: "mine:a", source: "mine", name: "a", kind: "", plan: plan.plan, timeline: plan, kept_at_ms: 1 };
}

function numbered(all: readonly Fact[] = facts): FactRecord[] {
  return all.map((fact, number) => ({ session: "a", number, fact }));
}

/** The same with one place changed. */
function changed<Whole>(whole: Whole, change: (copy: Whole) => void): Whole {
  const copy = structuredClone(whole);
  change(copy);
  return copy;
}

test("every timeline that the planner compiles, plain or for a result, is sound", () => {
  for (const file of readdirSync(FOLDER).filter((name) => name.endsWith(".json"))) {
    const pair = JSON.parse(readFileSync(`${FOLDER}/${file}`, "utf8")) as Record<"timeline_plain" | "timeline_scaled", Timeline>;
    assert.deepEqual([planFault(recordOf(pair.timeline_plain)), planFault(recordOf(pair.timeline_scaled))], [null, null], file);
  }
});

test("a session with every kind of fact is sound", () => {
  assert.equal(sessionFault(sessionOf(checkable as Timeline), numbered()), null);
});

const damages: [string, (segments: Segment[]) => void][] = [
  ["segment 2 of its timeline (kind)", (segments) => Object.assign(segments[1]!, { kind: "swim" })],
  ["segment 3 of its timeline", (segments) => void segments.splice(2, 1)],
  ["segment 1 of its timeline (duration)", (segments) => Object.assign(segments[0]!, { duration: [60, 0] })],
  ["segment 2 of its timeline", (segments) => Object.assign(segments[1]!, { start: [61, 1] })],
  ["segment 1 of its timeline", (segments) => Object.assign(segments[0]!, { strokes: 25 })],
  ["segment 5 of its timeline", (segments) => Object.assign(segments[4]!, { start_s: 300 })],
  ["segment 1 of its timeline (calls)", (segments) => Object.assign(segments[0]!, { calls: null })],
  ["segment 1 of its timeline (stroke, 0)", (segments) => Object.assign(segments[0]!, { stroke: [NaN, 1] })],
  ["totals", (segments) => void segments.pop()],
  ["segments", (segments) => void segments.splice(0)],
];

for (const [where, damage] of damages) {
  test(`a damaged timeline is found, and where: ${where}`, () => {
    const damaged = changed(mixed, ({ segments }) => damage(segments));
    const found = planFault(recordOf(damaged));
    assert.equal(found?.kind, "damaged");
    assert.ok(found.where.includes(where), found.where);
    assert.equal(sessionFault(sessionOf(damaged), numbered([facts[0]!]))?.kind, "damaged");
  });
}

const faults: [Fault["kind"], string, SessionRecord, FactRecord[]][] = [
  ["newer", "a session of a format to come", { ...sessionOf(mixed), format: 99 }, numbered()],
  ["newer", "a plan of a format to come", changed(sessionOf(mixed), ({ plan }) => Object.assign(plan, { format: 2 })), numbered()],
  ["half-saved", "a session without its start", sessionOf(mixed), []],
  ["damaged", "a log that begins in its middle", sessionOf(mixed), numbered().slice(1)],
  ["damaged", "a log with a gap", sessionOf(mixed), numbered().toSpliced(3, 1)],
  ["damaged", "a fact of no known kind", sessionOf(mixed), numbered([facts[0]!, { kind: "toString", at_s: 3 } as unknown as Fact])],
  ["damaged", "a fact without its moment", sessionOf(mixed), numbered([facts[0]!, { kind: "held" } as Fact])],
  ["damaged", "a fact at no number", sessionOf(mixed), numbered([{ kind: "started", at_s: 0, count_in_s: NaN }])],
  ["damaged", "a record that is none", null as unknown as SessionRecord, numbered()],
];

for (const [kind, name, record, log] of faults) {
  test(`${name} is ${kind}`, () => assert.equal(sessionFault(record, log)?.kind, kind));
}

test("whatever one field of a session becomes, it is either sound and leads to a place, or told as a fault", () => {
  const next = chance(7);
  const junk = [null, undefined, NaN, -1, 1e300, "", "x", [], {}, true];
  for (let round = 0; round < 2000; round += 1) {
    const record = structuredClone(sessionOf(mixed)) as object;
    const log = structuredClone(numbered());
    const [holder, key] = pick(next() < 0.7 ? record : log, next);
    (holder as Record<string, unknown>)[key] = junk[Math.floor(next() * junk.length)];
    if (sessionFault(record as SessionRecord, log)) continue;
    const { timeline } = record as SessionRecord;
    for (const at_s of [0, 15, 205, 300, 1000]) {
      const { index, elapsed_s } = placeAt(timeline, replay(timeline, log.map(({ fact }) => fact)), at_s);
      assert.ok(timeline.segments[index] && Number.isFinite(elapsed_s), `${key} of ${JSON.stringify(holder)}`);
    }
  }
});

/** Some place inside: what holds it, and its key. */
function pick(inside: object, next: () => number): [object, string] {
  const keys = Object.keys(inside);
  const key = keys[Math.floor(next() * keys.length)]!;
  const value = (inside as Record<string, unknown>)[key];
  const deeper = typeof value === "object" && value !== null && Object.keys(value).length > 0;
  return deeper && next() < 0.85 ? pick(value, next) : [inside, key];
}

afterEach(async () => {
  for (const id of await database.keys("sessions")) await discardSession(id);
  for (const id of await database.keys("plans")) await database.remove("plans", id);
});

test("a damaged session that was left open is offered with its title and its plan, not as one to row", async () => {
  await saveSession(changed(sessionOf(mixed), (record) => Object.assign(record.timeline, { segments: [] })), facts[0]!);
  const open = await openSession();
  assert.ok(open && !isSound(open));
  assert.deepEqual([open.title, addressOfId(open.plan_id), open.fault.kind], ["A test", "/plan/x", "damaged"]);
});

test("put aside, it is not offered again, and all there is of it stays", async () => {
  const record = { ...sessionOf(mixed), format: 99 };
  await saveSession(record, facts[0]!);
  await putAside("a");
  assert.equal(await openSession(), undefined);
  assert.deepEqual(await database.get("log", "a"), record);
});

test("a session is saved with its first fact or not at all", async () => {
  await saveSession(sessionOf(mixed), facts[0]!);
  const open = await openSession();
  assert.ok(open && isSound(open));
  assert.deepEqual(open.facts, [facts[0]]);
});

test("a sign of life that is damaged counts for nothing, and the session is sound", async () => {
  await saveSession(sessionOf(mixed), facts[0]!);
  await database.put("heartbeats", { session: "a", session_s: NaN, wall_ms: 0, wall_zero_ms: 0 });
  const open = await openSession();
  assert.ok(open && isSound(open));
  assert.equal(open.heartbeat, undefined);
});

test("a damaged plan is told by its address and opened with a sentence; the others are as they were", async () => {
  await database.put("plans", recordOf(mixed));
  await database.put("plans", { ...recordOf(mixed), id: "mine:b", name: "b", timeline: undefined as unknown as Timeline });
  const { sound, unsound } = await everyKept();
  assert.deepEqual([sound.map(({ name }) => name), unsound], [["a"], [{ address: "/mine/b", title: "A test" }]]);
  await assert.rejects(openMine("b"), /damaged \(timeline\), and nothing is run from a guess/);
});
