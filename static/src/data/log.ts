/**
 * The log: what the sessions that were ended come to, and what their rower says of them.
 *
 * The figures of a session follow from its timeline and its facts. They are worked out once and kept beside what was said,
 * so that a list of hundreds needs no timeline; what cannot be understood of them is worked out anew.
 */
import * as v from "valibot";
import type { Timeline } from "../plan/types.js";
import { follow, replay } from "../timeline/facts.js";
import { piecesOf, rowedWhole, sumsOf, type Piece, type Sums } from "../timeline/rowed.js";
import { lineOf, type State } from "../timeline/running.js";
import { database } from "./database.js";
import { addressOf, addressOfId } from "./plans.js";
import { remarksIn, say, unsay, withUnkept, type Remarks } from "./remarks.js";
import { factsOf, madeAt, type SessionRecord } from "./sessions.js";
import { instant, sessionFault, soundHeartbeat } from "./sound-session.js";

export interface Figures {
  title: string;
  plan_id: string;
  made_at_ms: number;
  done: Sums;
  planned: Sums;
  pieces: readonly Piece[];
  /** Every block was rowed to its end. */
  whole: boolean;
}

/** Of one session, by its id. The figures are there once somebody has asked for them. */
export interface Entry extends Remarks {
  id: string;
  figures?: Figures;
}

export interface LoggedSession extends Remarks {
  id: string;
  figures: Figures;
}

const amount = v.pipe(v.number(), v.finite(), v.minValue(0));
const SUMS = v.object({ seconds_s: amount, strokes: amount, metres: v.optional(amount) });
const FIGURES = v.object({
  title: v.string(), plan_id: v.string(), made_at_ms: instant, done: SUMS, planned: SUMS, whole: v.boolean(),
  pieces: v.array(v.object({ metres: amount, seconds_s: amount, held: v.boolean(), whole: v.boolean() })),
});

/** Sessions that are sound, the newest first, and how many are not. */
export interface Logged {
  sessions: readonly LoggedSession[];
  unsound: number;
}

/** What is shown of a long log at first. */
const SHOWN_FIRST = 30;
/** Records in memory at once, for each holds its timeline. */
const READ_AT_ONCE = 50;

/**
 * The whole log. What was never worked out takes its time: the newest come first, after the one that is `opened`, and
 * `shown` is told of all there is whenever that has doubled.
 */
export async function logged(shown: (so_far: Logged) => void = () => undefined, opened = ""): Promise<Logged> {
  const [ids, entries] = await Promise.all([database.keys("log"), everyEntry()]);
  const sessions: LoggedSession[] = [];
  const add = (id: string, figures: Figures) => sessions.push({ id, figures, ...remarksIn(entries.get(id) ?? {}) });
  const so_far = () => ({ sessions: sessions.map((session) => ({ ...session, ...withUnkept(session.id, session) })).sort(byNewest), unsound });
  let unsound = 0;
  const work = async (id: string) => {
    const figures = await workOut(id);
    if (figures) add(id, figures);
    else unsound += 1;
  };
  const unknown: string[] = [];
  for (const id of ids) {
    const figures = entries.get(id)?.figures;
    if (figures) add(id, figures);
    else if (id === opened) await work(id);
    else unknown.push(id);
  }
  let told = sessions.length;
  if (told && unknown.length) shown(so_far());
  for (const id of await newestFirst(unknown)) {
    await work(id);
    if (sessions.length < Math.max(SHOWN_FIRST, 2 * told)) continue;
    told = sessions.length;
    shown(so_far());
  }
  return so_far();
}

function byNewest(a: LoggedSession, b: LoggedSession): number {
  return b.figures.made_at_ms - a.figures.made_at_ms;
}

async function newestFirst(ids: readonly string[]): Promise<string[]> {
  const made = new Map<string, number>();
  const look = async (id: string) => made.set(id, madeAt(await database.get("log", id).catch(() => undefined)));
  for (let next = 0; next < ids.length; next += READ_AT_ONCE) await Promise.all(ids.slice(next, next + READ_AT_ONCE).map(look));
  return [...ids].sort((a, b) => made.get(b)! - made.get(a)!);
}

/** Takes a session off this device, with all that was said of it. */
export async function forgetSession(id: string): Promise<void> {
  const waited = unsay(id);
  try {
    await database.write([
      { store: "log", remove: id },
      { store: "entries", remove: id },
      { store: "heartbeats", remove: id },
      { store: "facts", remove: [id, 0], to: [id, Number.MAX_SAFE_INTEGER] },
    ]);
  } catch (error) {
    if (waited) void say(id, waited);
    throw error;
  }
}

/** Where the plan of a session is opened; "" where it is not on this device any more. */
export async function addressOfPlan(plan_id: string): Promise<string> {
  if (plan_id.startsWith("built-in:")) return addressOfId(plan_id);
  const record = await database.get("plans", plan_id).catch(() => undefined);
  return record ? addressOf(record) : "";
}

/** Works the figures of a session out and keeps them; undefined where it is not sound. */
async function workOut(id: string): Promise<Figures | undefined> {
  const record = await database.get("log", id).catch(() => undefined);
  const facts = await factsOf(id).catch(() => []);
  if (record?.state !== "ended" || sessionFault(record, facts.map((fact, number) => ({ session: id, number, fact })))) return undefined;
  const alive = soundHeartbeat(await database.get("heartbeats", id).catch(() => undefined));
  const figures = figuresOf(record, ended(record.timeline, replay(record.timeline, facts), alive?.session_s ?? 0));
  await database.change("entries", id, (before) => ({ ...soundEntry(id, before), figures })).catch(() => undefined);
  return figures;
}

/** One that was left open and put away was rowed until its last sign of life. */
function ended(timeline: Timeline, state: State, alive_s: number): State {
  return state.mode === "finished" ? state : follow(timeline, state, { kind: "ended", at_s: Math.max(alive_s, state.since_s) });
}

function figuresOf({ timeline: planned, plan, plan_id, made_at_ms }: SessionRecord, state: State): Figures {
  const timeline = lineOf(planned, state);
  const { seconds_s, strokes, metres } = timeline.totals;
  return {
    title: plan.title, plan_id, made_at_ms,
    done: sumsOf(timeline, state.stints),
    planned: { seconds_s, strokes, ...(metres === undefined ? {} : { metres }) },
    pieces: piecesOf(timeline, state.stints),
    whole: rowedWhole(timeline, state.stints),
  };
}

async function everyEntry(): Promise<Map<string, Entry>> {
  const found = await database.all("entries").catch(() => entryByEntry());
  return new Map(found.map((entry) => [entry.id, soundEntry(entry.id, entry)]));
}

/** Where storage does not hand all of them out at once: those that it does hand out. */
async function entryByEntry(): Promise<Entry[]> {
  const ids = await database.keys("entries");
  const read = await Promise.all(ids.map((id) => database.get("entries", id).catch(() => undefined)));
  return read.filter((entry) => entry !== undefined);
}

/** What of it can be understood. */
function soundEntry(id: string, stored: Partial<Entry> | undefined): Entry {
  const { figures } = stored ?? {};
  return { id, ...(v.is(FIGURES, figures) ? { figures: figures as Figures } : {}), ...remarksIn(stored ?? {}) };
}
