/** Sessions made for a piece by the server, kept on this device like every other plan. */
import { fetchSession } from "./api.js";
import { resultsOf, sentOf, type AthleteRecord } from "./athlete.js";
import { compiled } from "./compiling.js";
import { contentOf } from "./mending.js";
import { keepMine, type Content, type Made, type Making, type PlanRecord } from "./plans.js";

/** Has a session made and keeps it. Throws Refused or NoAnswer. */
export async function makeSession(making: Making, rower: AthleteRecord): Promise<PlanRecord> {
  return keepMine(await made(making, rower));
}

/** Whether a session was made for other results than those that are known now: its words and its goal rest on them. */
export function madeForOthers({ made }: Pick<PlanRecord, "made">, rower: AthleteRecord): boolean {
  return made !== undefined && JSON.stringify(made.results) !== JSON.stringify(resultsOf(rower));
}

/** Makes a session again in its place, for the results that are known now; it can be taken back. Throws as makeSession. */
export async function makeAgain(record: PlanRecord & { made: Made }, rower: AthleteRecord): Promise<PlanRecord> {
  const { making } = record.made;
  const content = await made({ ...making, level: rower.athlete.level ?? making.level }, rower);
  return keepMine({ ...content, undo: { label: "made again for your results", before: contentOf(record) } }, record.name);
}

async function made(making: Making, rower: AthleteRecord): Promise<Content> {
  const athlete = sentOf(rower);
  const { plan, reasons } = await fetchSession({ ...making, ...(athlete ? { athlete } : {}) });
  return { ...(await compiled(plan, rower)), reasons, made: { making, results: resultsOf(rower) } };
}
