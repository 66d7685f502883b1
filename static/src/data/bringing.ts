/** What a one-file page brings along is put where every screen looks for it. */
import type { Alone } from "../plan/alone.js";
import { database } from "./database.js";
import { addressOf, keep, type PlanRecord } from "./plans.js";

/** Keeps the plan, and the athlete where this device knows none; the plan's address. */
export async function keepBrought({ id, plan, timeline, athlete, answer }: Alone): Promise<string> {
  const record: PlanRecord = { id: `mine:${id}`, source: "mine", name: id, kind: "", plan, timeline, kept_at_ms: Date.now() };
  await keep(record);
  if (athlete && !(await database.get("athletes", "me"))) await database.put("athletes", { id: "me", athlete, answer: answer ?? null });
  return addressOf(record);
}
