/**
 * The file that holds everything a person would miss from a device: written whole, and read only when all of it will do.
 *
 * `{slipway: "everything", version: 2, made_at, sum, content}`; version 1 had no remarks on sessions. `sum` is the CRC-32 of the content as it is
 * written (JSON without blanks, in UTF-8), so that what was changed on the way is noticed. Timelines of plans are not in it:
 * they follow from the plans. Keys, to walls and for publishing, are not in it either.
 */
import * as v from "valibot";
import { checkedPlan } from "../plan/checked-plan.js";
import { sumOf } from "../plan/crc32.js";
import { FACT_BOUNDS, type Fact as PersonFact } from "../plan/fact-bounds.js";
import { resultProblem } from "../plan/result-words.js";
import { areTags } from "../plan/tag-reading.js";
import type { Athlete, Plan, Timeline } from "../plan/wire.js";
import { compiledForAnybody } from "../plan/compile.js";
import type { Fact } from "../timeline/facts.js";
import { settingsFault, type Carried } from "./carried-settings.js";
import type { PlanRecord } from "./plans.js";
import { areRemarks, type Remarks } from "./remarks.js";
import { MOST_RESULTS } from "./results.js";
import type { SessionRecord } from "./sessions.js";
import { instant, sessionFault } from "./sound-session.js";

const VERSION = 2;
export const MOST_FILE_BYTES = 64_000_000;

/** One's own plan, or one that was sent. */
export type KeptPlan = Pick<PlanRecord, "id" | "plan" | "kept_at_ms"> & Partial<Pick<PlanRecord, "tags" | "reasons" | "made" | "address">>;

/** A session that was rowed, and what was said of it. */
export interface KeptSession extends Remarks {
  record: SessionRecord;
  facts: readonly Fact[];
}

export interface Everything {
  plans: readonly KeptPlan[];
  athlete: Athlete;
  /** Those that were chosen. */
  settings: Carried;
  sessions: readonly KeptSession[];
}

/** Everything, checked, with the timelines that follow from its plans. */
export interface Checked extends Everything {
  timelines: readonly Timeline[];
}

/** What was given is no such file, or not whole: a sentence. Nothing has changed. */
export class NotEverything extends Error {
  override readonly name = "NotEverything";
}

const DAMAGED = "It is damaged: what it holds is not what was written into it. Copy it once more from where it was saved.";

/** The file's text. */
export function textOf(content: Everything, made_at: Date): string {
  const text = JSON.stringify(content);
  return `{"slipway":"everything","version":${VERSION},"made_at":${JSON.stringify(made_at.toISOString())},"sum":"${sumOf(text)}","content":${text}}\n`;
}

/** What a file holds, every part of it looked at. Throws NotEverything. */
export async function everythingIn(file: Blob): Promise<Checked> {
  if (file.size > MOST_FILE_BYTES) throw new NotEverything(`It is ${Math.ceil(file.size / 1e6)} MB long, and such a file has ${MOST_FILE_BYTES / 1e6} MB at most.`);
  const content = contentOf(documentIn(await file.arrayBuffer()));
  try {
    return checked(content);
  } catch (error) {
    // A depth that nothing can follow is damage too.
    throw error instanceof NotEverything ? error : new NotEverything(DAMAGED);
  }
}

function documentIn(bytes: ArrayBuffer): unknown {
  try {
    return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    throw new NotEverything("It cannot be read: it ends too early, was changed on the way, or is another kind of file. Choose the file that was saved under Settings, or copy it once more.");
  }
}

function contentOf(document: unknown): Everything {
  const { slipway, version, sum, content, parts } = (document ?? {}) as Record<string, unknown>;
  if (slipway !== "everything") {
    throw new NotEverything(Array.isArray(parts) ? "It is a plan file: open it on the first screen, with Open a plan file." : "It is not a file that was saved here under Settings.");
  }
  if (!Number.isInteger(version)) throw new NotEverything(DAMAGED);
  if ((version as number) > VERSION) throw new NotEverything("It was saved by a newer Slipway than this one. Close all its tabs and open it once with signal: it then brings itself up to date. Then bring the file back again.");
  if (typeof content !== "object" || sumAgain(content) !== sum) throw new NotEverything(DAMAGED);
  return content as Everything;
}

function sumAgain(content: unknown): string | undefined {
  try {
    return sumOf(JSON.stringify(content));
  } catch {
    return undefined;
  }
}

const RESULT = v.pipe(
  v.strictObject({ metres: v.pipe(v.number(), v.integer()), seconds: v.pipe(v.number(), v.check((value) => Math.round(value * 10) / 10 === value)) }),
  v.check((result) => !resultProblem(result)),
);
const RESULTS = v.pipe(v.array(RESULT), v.maxLength(MOST_RESULTS));
const LEVEL = v.picklist(["novice", "club", "trained"]);

const ATHLETE = v.strictObject({
  results: v.optional(RESULTS), level: v.optional(LEVEL),
  age: fact("age"), mass_kg: fact("mass_kg"), heart_rate_rest: fact("heart_rate_rest"), heart_rate_max: fact("heart_rate_max"),
});

/** A piece goes nowhere but to the server, which looks at it whenever a session is made. */
const MADE = v.strictObject({
  making: v.strictObject({
    piece: v.record(v.string(), v.unknown()), level: LEVEL, only_warm_up: v.boolean(),
    room: v.picklist(["cold", "normal", "hot"]), warmup_minutes: v.pipe(v.number(), v.integer()),
  }),
  results: RESULTS,
});

const PLAN = v.strictObject({
  id: v.pipe(v.string(), v.regex(/^(mine|sent):[\w-]{1,64}$/)),
  plan: v.custom<Plan>((value) => checkedPlan(value) !== undefined),
  kept_at_ms: instant,
  tags: v.optional(v.custom<string[]>(areTags)),
  reasons: v.optional(v.array(v.pipe(v.string(), v.maxLength(2000)))),
  made: v.optional(MADE),
  address: v.optional(v.pipe(v.string(), v.regex(/^\/p(\/[a-z2-7]{16,64}|#[\w-]{1,100000})$/))),
});

function checked(content: Everything): Checked {
  const { plans, athlete, settings, sessions } = content;
  if (!Array.isArray(plans) || !Array.isArray(sessions)) throw new NotEverything(DAMAGED);
  plans.forEach((plan, index) => {
    const wellMade = v.is(PLAN, plan) && plan.id.startsWith("sent:") === (plan.address !== undefined);
    if (!wellMade) throw broken(`Plan ${index + 1}`, (plan as KeptPlan | null)?.plan?.title);
  });
  if (!v.is(ATHLETE, athlete)) throw broken("What it says of the person", "");
  if (settingsFault(settings)) throw broken("A setting", settingsFault(settings));
  sessions.forEach((session, index) => {
    if (!isRowed(session)) throw broken(`Session ${index + 1}`, (session as KeptSession | null)?.record?.plan?.title);
  });
  return { ...content, timelines: plans.map(({ plan }: KeptPlan) => compiledForAnybody(plan)) };
}

/** Ended, and whole in itself. */
function isRowed(session: unknown): boolean {
  const { record, facts, ...remarks } = (session ?? {}) as Partial<KeptSession>;
  if (!record || !Array.isArray(facts) || record.state !== "ended" || record.led_by !== undefined || !areRemarks(remarks)) return false;
  return sessionFault(record, facts.map((each: Fact, number) => ({ session: record.id, number, fact: each }))) === null;
}

function broken(what: string, title: unknown): NotEverything {
  return new NotEverything(`${what} in it${typeof title === "string" && title ? ` (${title.slice(0, 80)})` : ""} is not whole, so none of it was taken. Copy the file once more from where it was saved.`);
}

function fact(name: PersonFact) {
  const { low, high, whole } = FACT_BOUNDS[name];
  const parts = whole ? 1 : 10;
  return v.optional(v.pipe(v.number(), v.minValue(low), v.maxValue(high), v.check((value) => Math.round(value * parts) / parts === value)));
}
