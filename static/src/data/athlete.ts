/** Who rows on this device: results, limits and level. Kept here only; sent as part of a computation, never stored there. */
import { inParts } from "../plan/exact-time.js";
import { twoKFrom, type TwoK } from "../plan/prediction.js";
import type { Athlete, AthleteAnswer, Result } from "../plan/wire.js";
import { fetchAthleteAnswer } from "./api.js";
import { database } from "./database.js";
import type { PlanRecord } from "./plans.js";
import { MOST_RESULTS, byNearness, isSame } from "./results.js";
import { changeSettings, readSettings } from "./settings.js";

export interface AthleteRecord {
  id: "me";
  /** Its results begin with the one nearest to 2000 m, which sets the splits. */
  athlete: Athlete;
  /** What was worked out from exactly this athlete; null until there has been signal. */
  answer: AthleteAnswer | null;
}

const NOBODY: AthleteRecord = { id: "me", athlete: {}, answer: null };

/** What is known about the person; a 2000 m time that an earlier version kept among the settings is taken over. */
export async function readAthlete(): Promise<AthleteRecord> {
  const kept = await database.get("athletes", "me");
  if (kept) return kept;
  const { result_s } = await readSettings();
  if (result_s === null) return NOBODY;
  const taken = await change(NOBODY, () => ({ results: [{ metres: 2000, seconds: result_s }] }));
  await changeSettings({ result_s: null });
  return taken;
}

/** Changes some of it; what follows from it has to be worked out anew. */
export async function changeAthlete(changes: Partial<Athlete>): Promise<AthleteRecord> {
  return change(await readAthlete(), (athlete) => ({ ...athlete, ...changes }));
}

/** Adds a result; when there are as many as can be sent, the one furthest from 2000 m makes room. */
export async function addResult(result: Result): Promise<AthleteRecord> {
  return changeResults((results) => {
    const others = results.filter((other) => !isSame(other, result));
    return [...others.sort(byNearness).slice(0, MOST_RESULTS - 1), result].sort(byNearness);
  });
}

/** Adds a result; true when it really stands in storage. */
export async function keepResult(result: Result): Promise<boolean> {
  await addResult(result);
  return resultsOf(await readAthlete()).some((kept) => isSame(kept, result));
}

export async function removeResult(result: Result): Promise<AthleteRecord> {
  return changeResults((results) => results.filter((other) => !isSame(other, result)));
}

/** Takes everything about the person off this device: results, facts, and what was said about plans for them. */
export async function forgetAthlete(): Promise<AthleteRecord> {
  await database.remove("athletes", "me");
  for (const plan of await database.all("plans")) await database.put("plans", unappraised(plan));
  return NOBODY;
}

function unappraised({ appraisal: _appraisal, undo: _undo, made, ...plan }: PlanRecord): PlanRecord {
  return made ? { ...plan, made: { ...made, results: [] } } : plan;
}

/** Has what follows from the results worked out by the server, and keeps it. Throws Refused or NoAnswer. */
export async function workOut(record: AthleteRecord): Promise<AthleteRecord> {
  const known = sentOf(record);
  if (!known) return record;
  const answered: AthleteRecord = { ...record, answer: await fetchAthleteAnswer(known) };
  const unchanged = ({ athlete }: AthleteRecord) => JSON.stringify(athlete) === JSON.stringify(record.athlete);
  await database.change("athletes", "me", (kept) => (kept && !unchanged(kept) ? kept : answered)).catch(() => undefined);
  return answered;
}

/** What goes out with a computation; undefined where nothing is known. */
export function sentOf({ athlete }: AthleteRecord): Athlete | undefined {
  const known = Object.entries(athlete).filter(([, value]) => value !== undefined && !(Array.isArray(value) && !value.length));
  return known.length ? (Object.fromEntries(known) as Athlete) : undefined;
}

export function resultsOf({ athlete }: AthleteRecord): readonly Result[] {
  return athlete.results ?? [];
}

/** The 2 km split to scale timelines by: the server's where it is known, else by the first result; null without any. */
export function twoKOf(record: AthleteRecord): TwoK | null {
  const known = record.answer?.two_k;
  if (known) return { split: inParts(known.split_s), low: inParts(known.low_s), high: inParts(known.high_s) };
  const [first] = resultsOf(record);
  return first ? twoKFrom(first) : null;
}

async function changeResults(next: (results: readonly Result[]) => Result[]): Promise<AthleteRecord> {
  return change(await readAthlete(), (athlete) => ({ ...athlete, results: next(athlete.results ?? []) }));
}

/** Keeps what `next` makes of the athlete; one that cannot be kept is answered all the same. */
async function change(known: AthleteRecord, next: (athlete: Athlete) => Athlete): Promise<AthleteRecord> {
  const changed = ({ athlete }: AthleteRecord): AthleteRecord => ({ id: "me", athlete: next(athlete), answer: null });
  return database.change("athletes", "me", (kept) => changed(kept ?? known)).catch(() => changed(known));
}
