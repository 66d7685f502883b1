/** Everything a person would miss from this device, saved to one file and brought back from one. */
import { canonical } from "../plan/canonical.js";
import { MOST_TAGS, together } from "../plan/tags.js";
import type { Athlete, Timeline } from "../plan/wire.js";
import { written } from "../plan/written.js";
import { readAthlete } from "./athlete.js";
import { carriedSettings, missingSettings, type Carried } from "./carried-settings.js";
import { database } from "./database.js";
import { STEPS_AT_ONCE } from "./disk.js";
import type { Step } from "./shape.js";
import { everythingIn, textOf, type Checked, type KeptPlan, type KeptSession } from "./everything-file.js";
import { newId } from "./ids.js";
import { everyKept, type PlanRecord } from "./plans.js";
import { remarksIn, remarksOf } from "./remarks.js";
import { joined } from "./results.js";
import { factsOf } from "./sessions.js";
import { sessionFault } from "./sound-session.js";
import { withPlanNamed } from "./wall.js";

export interface Saved {
  text: string;
  plans: number;
  sessions: number;
  /** Of what is stored here, what is damaged and could not go along. */
  left: number;
  /** Sessions in it of which storage did not hand out what was said. */
  unsaid: number;
}

/** How much of a file was not here before. */
export interface Brought {
  plans: number;
  tagged: number;
  results: number;
  sessions: number;
  /** Sessions that were here, of which it says what was not said here. */
  remarked: number;
  /** Facts about the person, settings and drafts. */
  others: number;
  /** Results that were not here either, and for which there was no room. */
  results_left: number;
  /** Tags for which there was no room, by the title of the plan that they were to stand on. */
  tags_left: readonly { title: string; tags: number }[];
}

/** All of it as a file's text. */
export async function everything(now = new Date()): Promise<Saved> {
  const { sound, unsound } = await everyKept();
  const plans = sound.filter(({ source }) => source !== "built-in").map(keptPlan);
  const { kept: sessions, left, unsaid } = await rowedSessions();
  const { athlete } = await readAthlete();
  return { text: textOf({ plans, athlete: known(athlete), settings: await carriedSettings(), sessions }, now), plans: plans.length, sessions: sessions.length, left: left + unsound.length, unsaid };
}

function keptPlan({ id, plan, kept_at_ms, tags, reasons, made, address }: PlanRecord): KeptPlan {
  return { id, plan, kept_at_ms, ...(tags?.length ? { tags } : {}), ...(reasons ? { reasons } : {}), ...(made ? { made } : {}), ...(address === undefined ? {} : { address }) };
}

async function rowedSessions(): Promise<{ kept: KeptSession[]; left: number; unsaid: number }> {
  const kept: KeptSession[] = [];
  const ids = await database.keys("log");
  let unsaid = 0;
  for (const id of ids) {
    const record = await database.get("log", id).catch(() => undefined);
    const facts = await factsOf(id).catch(() => []);
    const whole = record?.state === "ended" && sessionFault(record, facts.map((fact, number) => ({ session: id, number, fact }))) === null;
    if (!whole) continue;
    const remarks = await remarksOf(id).catch(() => undefined);
    if (!remarks) unsaid += 1;
    kept.push({ record, facts, ...remarks });
  }
  return { kept, left: ids.length - kept.length, unsaid };
}

/** The device took some of it and then no more: what it took stays, and bringing the file again adds the rest. */
export class BroughtInPart extends Error {
  override readonly name = "BroughtInPart";

  constructor(readonly brought: Brought) {
    super("this device could not store all of it");
  }
}

type Counts = Omit<Brought, "results_left" | "tags_left">;

/** What stands or falls together, and what is added by it. */
interface Unit {
  steps: Step[];
  adds: Partial<Counts>;
}

/**
 * Adds what a file holds and this device has not; what is here stays as it is. It is written in parts, so that a device is never
 * busy for long with one: each plan whole, each session with its facts, then the person and the settings.
 * Throws NotEverything, and what storage says when it refuses the first part; then nothing has changed. After that BroughtInPart.
 */
export async function bringBack(file: Blob): Promise<Brought> {
  const whole = await everythingIn(file);
  const plans = await missingPlans(whole);
  const sessions = await missingSessions(whole.sessions, plans.names);
  const person = await withMissing(whole.athlete);
  const chosen = await missingSettings(renamed(whole.settings, plans.names));
  const last: Unit = { steps: [...person.steps, ...chosen.steps], adds: { results: person.results, others: person.facts + chosen.changed } };
  const brought: Brought = { plans: 0, tagged: 0, results: 0, sessions: 0, remarked: 0, others: 0, results_left: person.left, tags_left: plans.left };
  let written = 0;
  for (const part of inParts([...plans.units, ...sessions, last])) {
    try {
      // In memory nothing is known of what the disk holds, so nothing can be told to be missing there.
      if (database.isWithout()) throw new Error("storage does not answer");
      await database.write(part.flatMap(({ steps }) => steps), "strict");
    } catch (error) {
      throw written ? new BroughtInPart(brought) : error;
    }
    written += 1;
    for (const { adds } of part) for (const [name, many] of Object.entries(adds)) brought[name as keyof Counts] += many;
  }
  return brought;
}

/** Units together as long as they are few steps. */
function inParts(units: readonly Unit[]): Unit[][] {
  const parts: Unit[][] = [];
  let room = 0;
  for (const unit of units.filter(({ steps }) => steps.length)) {
    if (room < unit.steps.length) {
      parts.push([]);
      room = STEPS_AT_ONCE;
    }
    parts.at(-1)!.push(unit);
    room -= unit.steps.length;
  }
  return parts;
}

/** Puts in what is not there yet, by what the plans say; a name that is taken by another plan is not taken from it. */
async function missingPlans({ plans, timelines }: Checked): Promise<{ units: Unit[]; names: Map<string, string>; left: Brought["tags_left"] }> {
  const { sound } = await everyKept();
  const here = sound.filter(({ source }) => source !== "built-in");
  const units = new Map<string, Unit>();
  const names = new Map<string, string>();
  const left = new Map<string, { title: string; tags: number }>();
  for (const [index, kept] of plans.entries()) {
    const same = here.find((record) => sourceOf(record.id) === sourceOf(kept.id) && canonical(record.plan) === canonical(kept.plan));
    const record = same ? tagged(same, kept) : recordOf(kept, timelines[index]!, here);
    const untaken = together(record.tags ?? [], kept.tags).length - (record.tags ?? []).length;
    if (untaken) left.set(record.id, { title: record.plan.title, tags: untaken });
    names.set(kept.id, record.id);
    if (record === same) continue;
    const adds = units.get(record.id)?.adds ?? (same ? { tagged: 1 } : { plans: 1 });
    units.set(record.id, { steps: [{ store: "plans", put: record }], adds });
    here.splice(same ? here.indexOf(same) : here.length, same ? 1 : 0, record);
  }
  return { units: [...units.values()], names, left: [...left.values()] };
}

/** The plan here, with the tags of the one in the file; itself where that adds none. */
function tagged(here: PlanRecord, { tags = [] }: KeptPlan): PlanRecord {
  const all = together(here.tags ?? [], tags).slice(0, MOST_TAGS);
  return all.length === (here.tags ?? []).length ? here : { ...here, tags: all };
}

function recordOf({ id, ...kept }: KeptPlan, timeline: Timeline, here: readonly PlanRecord[]): PlanRecord {
  const taken = here.some((record) => record.id === id);
  const source = sourceOf(id);
  const name = taken ? newId() : id.slice(source.length + 1);
  return { ...kept, id: `${source}:${name}`, source, name, kind: "", timeline, ...(source === "mine" ? { text: written(kept.plan) } : {}) };
}

function sourceOf(id: string): "mine" | "sent" {
  return id.startsWith("sent:") ? "sent" : "mine";
}

/** Sessions that are not here, under the names that their plans have here, and of those that are the remarks that nobody has made here. */
async function missingSessions(sessions: readonly KeptSession[], names: ReadonlyMap<string, string>): Promise<Unit[]> {
  const here = new Set([...(await database.keys("log")), ...(await database.keys("sessions"))]);
  const units: Unit[] = [];
  for (const { record, facts, ...brought } of new Map(sessions.map((session) => [session.record.id, session])).values()) {
    const isHere = here.has(record.id);
    const steps: Step[] = isHere ? [] : [
      { store: "log", put: { ...record, plan_id: names.get(record.plan_id) ?? record.plan_id } },
      ...facts.map((fact, number): Step => ({ store: "facts", put: { session: record.id, number, fact } })),
    ];
    const before = isHere ? await database.get("entries", record.id) : undefined;
    const said = remarksIn(before ?? {});
    const missing = Object.entries(remarksIn(brought)).filter(([name]) => !(name in said));
    if (missing.length) steps.push({ store: "entries", put: { ...before, ...Object.fromEntries(missing), id: record.id } });
    units.push({ steps, adds: isHere ? { remarked: 1 } : { sessions: 1 } });
  }
  return units;
}

/** Results of both; each fact as it is here, and where nothing is said here as in the file. */
async function withMissing(brought: Athlete): Promise<{ steps: Step[]; results: number; facts: number; left: number }> {
  const { athlete } = await readAthlete();
  const before = known(athlete);
  const { results, left } = joined(before.results ?? [], brought.results ?? []);
  const after = known({ ...brought, ...before, results });
  if (canonical(after) === canonical(before)) return { steps: [], results: 0, facts: 0, left };
  const more = results.length - (before.results ?? []).length;
  const facts = Object.keys(after).filter((name) => name !== "results" && !(name in before)).length;
  return { steps: [{ store: "athletes", put: { id: "me", athlete: after, answer: null } }], results: more, facts, left };
}

function known(athlete: Athlete): Athlete {
  return Object.fromEntries(Object.entries(athlete).filter(([, value]) => value !== undefined && !(Array.isArray(value) && !value.length))) as Athlete;
}

/** Drafts, and the plan that a wall showed last, stand under the names that their plans have here. */
function renamed({ drafts, wall, ...settings }: Carried, names: ReadonlyMap<string, string>): Carried {
  const named = (id: string) => names.get(id) ?? id;
  return {
    ...settings,
    ...(drafts && { drafts: Object.fromEntries(Object.entries(drafts).map(([id, text]) => [named(id), text])) }),
    ...(wall !== undefined && { wall: withPlanNamed(wall, named) }),
  };
}
