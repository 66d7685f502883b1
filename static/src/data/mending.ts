/** Mends applied to plans on this device, and taken back. */
import { describedAfter } from "../plan/eased.js";
import { patched } from "../plan/patch.js";
import type { Mend } from "../plan/wire.js";
import type { AthleteRecord } from "./athlete.js";
import { compiled } from "./compiling.js";
import { newId } from "./ids.js";
import { addressOf, forgetPlan, keepMine, openMine, type Before, type PlanRecord } from "./plans.js";

/**
 * Applies a mend and keeps the plan: one's own in its place, a built-in one as a copy of one's own.
 * Throws PatchError, Refused or NoAnswer, and then nothing has changed.
 */
export async function mended(record: PlanRecord, mend: Mend, rower: AthleteRecord): Promise<PlanRecord> {
  const own = record.source === "mine";
  const plan = describedAfter(mend.edits, record.plan, patched(record.plan, mend.edits));
  const content = await compiled(plan, rower);
  const undo = { label: mend.label, before: own ? contentOf(record) : addressOf(record) };
  const { reasons, made } = record;
  return keepMine({ ...content, ...(reasons ? { reasons } : {}), ...(made ? { made } : {}), undo }, own ? record.name : newId());
}

/** Takes the last mend back, and leaves those before it; the address of the plan as it was. */
export async function takenBack({ id, name }: PlanRecord): Promise<string> {
  const { undo, ...record } = await openMine(name);
  if (!undo) return addressOf(record);
  if (typeof undo.before !== "string") return addressOf(await keepMine(undo.before, name));
  await forgetPlan(id);
  return undo.before;
}

/** What a plan is, with the mends before, so that they can be taken back in their turn. */
export function contentOf({ plan, timeline, text, reasons, made, appraisal, undo }: PlanRecord): Before {
  return { plan, timeline, ...(text === undefined ? {} : { text }), ...(reasons ? { reasons } : {}), ...(made ? { made } : {}), ...(appraisal ? { appraisal } : {}), ...(undo ? { undo } : {}) };
}
