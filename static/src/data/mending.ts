/** Mends applied to plans on this device, and taken back. */
import { patched } from "../plan/patch.js";
import type { Mend } from "../plan/wire.js";
import type { AthleteRecord } from "./athlete.js";
import { compiled } from "./compiling.js";
import { newId } from "./ids.js";
import { addressOf, forgetPlan, keepMine, openMine, type Content, type PlanRecord } from "./plans.js";

/**
 * Applies a mend and keeps the plan: one's own in its place, a built-in one as a copy of one's own.
 * Throws PatchError, Refused or NoAnswer, and then nothing has changed.
 */
export async function mended(record: PlanRecord, mend: Mend, rower: AthleteRecord): Promise<PlanRecord> {
  const own = record.source === "mine";
  const content = await compiled(patched(record.plan, mend.edits), rower);
  const undo = { label: mend.label, before: own ? contentOf(record) : addressOf(record) };
  return keepMine({ ...content, ...(record.reasons ? { reasons: record.reasons } : {}), undo }, own ? record.name : newId());
}

/** Takes the last mend back; the address of the plan as it was. */
export async function takenBack({ id, name }: PlanRecord): Promise<string> {
  const { undo, ...record } = await openMine(name);
  if (!undo) return addressOf(record);
  if (typeof undo.before !== "string") return addressOf(await keepMine(undo.before, name));
  await forgetPlan(id);
  return undo.before;
}

function contentOf({ plan, timeline, text, reasons, appraisal }: PlanRecord): Content {
  return { plan, timeline, ...(text === undefined ? {} : { text }), ...(reasons ? { reasons } : {}), ...(appraisal ? { appraisal } : {}) };
}
