/** A plan that was written here, made one of one's own. */
import { compiledForAnybody } from "../plan/compile.js";
import { UNTITLED, retitled, titleApart, untitled } from "../plan/naming.js";
import type { Plan } from "../plan/wire.js";
import { written } from "../plan/written.js";
import type { Shorthand } from "./api.js";
import type { Appraisal } from "./compiling.js";
import { contentOf } from "./mending.js";
import { keepMine, keptPlans, type PlanRecord } from "./plans.js";

/**
 * Keeps a plan that was written here, with no need of signal: in place of one's own plan it was written from, which can
 * be had back, or else as a new one; the same again is the same record. `appraisal`: what is known to be said about it.
 */
export async function keepWritten(plan: Plan, from?: PlanRecord, appraisal?: Appraisal): Promise<PlanRecord> {
  const own = from?.source === "mine";
  const read: Shorthand = own ? { plan, text: written(plan) } : await titled({ plan, text: written(plan) });
  if (own && read.text === from.text) return from;
  const timeline = compiledForAnybody(read.plan);
  const content = { ...read, timeline, ...(appraisal ? { appraisal } : {}) };
  if (!own) return keepMine(content);
  const { undo: _earlier, ...before } = contentOf(from);
  return keepMine({ ...content, undo: { label: "your changes", before } }, from.name);
}

/** A plan without a title of its own is told apart from those kept here; one made again has the title it had. */
async function titled(read: Shorthand): Promise<Shorthand> {
  if (read.plan.title !== UNTITLED) return read;
  const kept = (await keptPlans()).filter(({ source }) => source === "mine");
  const same = kept.find((record) => record.plan.title.startsWith(UNTITLED) && untitled(record.text ?? "") === untitled(read.text));
  const title = same?.plan.title ?? titleApart(UNTITLED, read.text, kept.map(({ plan }) => plan.title));
  return { plan: { ...read.plan, title }, text: retitled(read.text, title) };
}
