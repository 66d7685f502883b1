/** Plans as cards to choose from; `href`: where a card leads, by itself to the plan. */
import { addressOf, type PlanRecord } from "../data/plans.js";
import type { LibraryPlan } from "../plan/wire.js";
import type { PlanCard } from "./plan-library.js";

export function libraryCard({ slug, kind, level, plan, seconds_s, estimated }: LibraryPlan, href = addressOf({ source: "built-in", name: slug })): PlanCard {
  const { title, summary } = plan;
  return { href, title, plan, seconds_s, estimated, saved: false, kind, level, ...(summary ? { summary } : {}) };
}

/** `saved`: it is proved to run with no signal. */
export function keptCard(record: PlanRecord, saved: boolean, href = addressOf(record)): PlanCard {
  const { plan, timeline, tags } = record;
  const { seconds_s, estimated } = timeline.totals;
  const opened = record.source === "mine" ? { opened_ms: record.kept_at_ms } : {};
  return { href, title: plan.title, plan, seconds_s, estimated, saved, ...opened, ...(tags ? { tags } : {}), ...(plan.summary ? { summary: plan.summary } : {}) };
}
