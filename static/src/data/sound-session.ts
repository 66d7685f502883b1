/**
 * Whether what was read from storage can be run: the whole of it, or else a fault that says what is wrong and where.
 * Nothing is run from a guess, so there is nothing in between.
 */
import * as v from "valibot";
import { PLAN, PLAN_FORMAT, TIMELINE } from "../plan/sound-timeline.js";
import { replay, type Fact } from "../timeline/facts.js";
import { placeAt } from "../timeline/place.js";
import { lineOf } from "../timeline/running.js";
import type { FactRecord, Heartbeat, SessionRecord } from "./sessions.js";

/** The newest formats of what is stored that this build can read; a new kind of fact makes that of a session grow. */
export const FORMATS = { session: 1, plan: 1 };

/**
 * `newer`: written by a later build; `half-saved`: its start was never written; `unreadable`: storage does not hand
 * it out; `damaged`: it is not what was written, at the place `where`.
 */
export interface Fault {
  kind: "newer" | "half-saved" | "unreadable" | "damaged";
  where: string;
}

/** What is stored cannot be used; the message is a sentence for people. */
export class Unsound extends Error {
  override readonly name = "Unsound";

  constructor(readonly fault: Fault) {
    super(faultWords(fault));
  }
}

/** What is wrong, and that nothing is run from a guess. */
export function faultWords({ kind, where }: Fault): string {
  if (kind === "newer") return "It was saved by a newer Slipway than the one that is open. Close all its tabs and open it once with signal: it then brings itself up to date.";
  if (kind === "half-saved") return "It was only half saved, before its first stroke: there is nothing to go on with.";
  if (kind === "unreadable") return "This device’s storage does not hand it out any more, so it cannot be used.";
  return `What is stored of it is damaged${where ? ` (${where})` : ""}, and nothing is run from a guess.`;
}

const moment = v.pipe(v.number(), v.finite(), v.minValue(0));
const span = moment;
/** In ms since 1970, up to where dates end (ECMA-262, 21.4.1.1): what lies beyond cannot be shown. */
export const instant = v.pipe(moment, v.maxValue(8.64e15));

type Fields<Kind extends Fact["kind"]> = v.GenericSchema<Omit<Extract<Fact, { kind: Kind }>, "kind">>;

const FACTS: { [Kind in Fact["kind"]]: Fields<Kind> } = {
  started: v.object({ at_s: moment, count_in_s: span, by_clock: v.optional(v.literal(true)) }),
  held: v.object({ at_s: moment }),
  "went-on": v.object({ at_s: moment, count_in_s: span }),
  skipped: v.object({ at_s: moment, count_in_s: span }),
  "stepped-back": v.object({ at_s: moment }),
  tapped: v.object({ at_s: moment, ago_s: span, count_in_s: span }),
  "start-set": v.object({ at_s: moment, start_s: v.nullable(v.pipe(v.number(), v.finite())) }),
  returned: v.object({ at_s: moment, since_s: moment, how: v.picklist(["by-clock", "where-stopped"]), count_in_s: span }),
  extended: v.object({ at_s: moment }),
  ended: v.object({ at_s: moment }),
};

const FACT_RECORD = v.object({ number: v.number(), fact: v.looseObject({ kind: v.string() }) });

const SESSION = v.object({
  id: v.string(),
  plan_id: v.string(),
  plan: PLAN,
  timeline: TIMELINE,
  app: v.string(),
  made_at_ms: instant,
  state: v.picklist(["open", "ended"]),
  led_by: v.optional(v.picklist(["wall", "prompter"])),
});

const HEARTBEAT = v.object({
  session: v.string(),
  session_s: moment,
  wall_ms: moment,
  wall_zero_ms: v.pipe(v.number(), v.finite()),
});

const PLAN_RECORD = v.object({
  id: v.string(),
  source: v.string(),
  name: v.string(),
  kind: v.string(),
  plan: PLAN,
  timeline: TIMELINE,
  text: v.optional(v.string()),
  tags: v.optional(v.array(v.string())),
  reasons: v.optional(v.array(v.string())),
  appraisal: v.optional(v.object({ asked_for: v.string(), findings: v.array(v.object({ sentence: v.string() })) })),
  undo: v.optional(v.object({ label: v.string() })),
  kept_at_ms: instant,
});

/** What is wrong with a plan kept here; null when it can be shown and rowed. */
export function planFault(record: unknown): Fault | null {
  return newer(record, FORMATS.plan) ?? fault(PLAN_RECORD, record);
}

/** What is wrong with a plan of which no timeline can be made. */
export function uncompiledFault(plan: unknown): Fault {
  return newer({ plan }, FORMATS.plan) ?? { kind: "damaged", where: "plan" };
}

/** What is wrong with a stored session and its facts, in the order of their numbers; null when it can be gone on with. */
export function sessionFault(record: unknown, facts: readonly FactRecord[]): Fault | null {
  return newer(record, FORMATS.session) ?? fault(SESSION, record) ?? factsFault(facts) ?? placeFault(record as SessionRecord, facts);
}

/** A sign of life, if it is whole: without one a session still goes on, and then asks. */
export function soundHeartbeat(stored: Heartbeat | undefined): Heartbeat | undefined {
  return v.is(HEARTBEAT, stored) ? stored : undefined;
}

function newer(record: unknown, known: number): Fault | null {
  const { format, plan } = (record ?? {}) as { format?: unknown; plan?: { format?: unknown } };
  const later = isLater(format, known) || isLater(plan?.format, PLAN_FORMAT);
  return later ? { kind: "newer", where: "" } : null;
}

function isLater(format: unknown, ours: number): boolean {
  return typeof format === "number" && format > ours;
}

function factsFault(records: readonly FactRecord[]): Fault | null {
  if (!records.length) return { kind: "half-saved", where: "" };
  const wrong = records.findIndex((record, index) => !isFact(record, index));
  return wrong < 0 ? null : { kind: "damaged", where: `entry ${wrong + 1} of its log` };
}

function isFact(record: unknown, index: number): boolean {
  if (!v.is(FACT_RECORD, record) || record.number !== index) return false;
  const { kind } = record.fact;
  return (index > 0 || kind === "started") && Object.hasOwn(FACTS, kind) && v.is(FACTS[kind as Fact["kind"]], record.fact);
}

/** Each fact may be well and yet lead nowhere. */
function placeFault({ timeline }: SessionRecord, records: readonly FactRecord[]): Fault | null {
  try {
    const state = replay(timeline, records.map(({ fact }) => fact));
    const { index, elapsed_s } = placeAt(timeline, state, state.since_s);
    if (lineOf(timeline, state).segments[index] && Number.isFinite(elapsed_s)) return null;
  } catch {
    // Told below: such facts belong to another timeline.
  }
  return { kind: "damaged", where: "its log, which does not fit its plan" };
}

function fault(schema: v.GenericSchema, value: unknown): Fault | null {
  const { issues } = v.safeParse(schema, value, { abortEarly: true });
  return issues ? { kind: "damaged", where: placeOf(issues[0]) } : null;
}

/** "segment 3 of its timeline (start)", or the name of the field. */
function placeOf({ path }: v.BaseIssue<unknown>): string {
  const keys = (path ?? []).map(({ key }) => key);
  const at = keys.indexOf("segments");
  if (at < 0 || at === keys.length - 1) return keys.join(", ");
  const inside = keys.slice(at + 2).join(", ");
  return `segment ${Number(keys[at + 1]) + 1} of its timeline${inside ? ` (${inside})` : ""}`;
}
