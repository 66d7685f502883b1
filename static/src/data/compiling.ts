/** A plan made ready for this device: its timeline for anybody, and what there is to say about it for one athlete. */
import type { Energy, Finding, Plan, Readiness, Timeline } from "../plan/wire.js";
import { Refused, fetchTimeline, writeShorthand } from "./api.js";
import { sentOf, type AthleteRecord } from "./athlete.js";
import { DEFAULTS, readSettings } from "./settings.js";

/** What the planner has to say about a plan, for one athlete. */
export interface Appraisal {
  /** Whom it was asked for: what was sent about the person, as JSON; "" for anybody. */
  asked_for: string;
  findings: readonly Finding[];
  /** Absent where there is nothing to be ready for. */
  readiness?: Readiness;
  /** Absent where the power of some of the rowing is not known. */
  energy?: Energy;
}

export interface Compiled {
  plan: Plan;
  timeline: Timeline;
  appraisal: Appraisal;
  text?: string;
}

/** Compiles a plan twice, for anybody and for this athlete, and writes it as shorthand. Throws Refused, NoAnswer. */
export async function compiled(plan: Plan, rower: AthleteRecord): Promise<Compiled> {
  const [anybody, appraisal, text] = await Promise.all([fetchTimeline(plan), appraised(plan, rower), shorthandOf(plan)]);
  return { plan, timeline: forAnybody(anybody), appraisal, ...(text === undefined ? {} : { text }) };
}

/** What there is to say about a plan for this athlete in the room that was chosen last. Throws Refused, NoAnswer. */
export async function appraised(plan: Plan, rower: AthleteRecord, signal?: AbortSignal): Promise<Appraisal> {
  const { room } = await readSettings();
  const { findings, readiness, energy } = await fetchTimeline(plan, sentOf(rower), room === DEFAULTS.room ? undefined : room, signal);
  return { asked_for: askedFor(rower), findings, ...(readiness ? { readiness } : {}), ...(energy ? { energy } : {}) };
}

/** A kept appraisal, if it was made for just this athlete. */
export function appraisalFor(appraisal: Appraisal | undefined, rower: AthleteRecord): Appraisal | undefined {
  return appraisal?.asked_for === askedFor(rower) ? appraisal : undefined;
}

function askedFor(rower: AthleteRecord): string {
  const sent = sentOf(rower);
  return sent ? JSON.stringify(sent) : "";
}

/** Readiness and energy rest on the athlete, so they are no part of a timeline for anybody. */
function forAnybody({ readiness: _readiness, energy: _energy, ...timeline }: Timeline): Timeline {
  return timeline;
}

/** Undefined for the rare plan that shorthand has no words for. */
async function shorthandOf(plan: Plan): Promise<string | undefined> {
  try {
    return await writeShorthand(plan);
  } catch (error) {
    if (error instanceof Refused) return undefined;
    throw error;
  }
}
