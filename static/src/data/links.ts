/** Plans that come by links, and links for plans: short ones from the server, and those that carry the plan. */
import { canonical } from "../plan/canonical.js";
import { checkedPlan } from "../plan/checked-plan.js";
import { compiledForAnybody } from "../plan/compile.js";
import { sumOf } from "../plan/crc32.js";
import type { Plan } from "../plan/wire.js";
import { Refused, fetchPublished, publishPlan } from "./api.js";
import { LinkError, decode, encode } from "./link-codec.js";
import { keep, openPlan, type PlanRecord } from "./plans.js";
import { changeSettings, readSettings } from "./settings.js";

/** Of the plans that this version understands. */
const FORMAT = 1;

/** Opens the plan that stands in an address behind its #, and keeps it. Throws LinkError. */
export async function openCarried(payload: string): Promise<PlanRecord> {
  return keepReceived(decode(payload));
}

/** Keeps a plan that came some other way, such as from a wall's server: like one that came by a link, or as one's own where no link holds it. */
export async function keepReceived(plan: Plan): Promise<PlanRecord> {
  const address = carrying(plan);
  const source = address === undefined ? "mine" : "sent";
  return keepAs(source, await nameFor(source, plan), plan, address);
}

/** Opens a published plan and keeps it; one that is kept already needs no signal. Throws Refused, NoAnswer, LinkError. */
export async function openShort(id: string): Promise<PlanRecord> {
  const kept = await soundOne("sent", id);
  if (kept) return kept;
  const published: unknown = await fetchPublished(id);
  const plan = checkedPlan(published);
  if (!plan) throw new LinkError(isOfLaterFormat(published) ? "future" : "no-plan");
  return keepAs("sent", id, plan, `/p/${id}`);
}

/** A whole address that carries the plan; undefined for a plan that is too long for one. */
export function carryingAddress(plan: Plan): string | undefined {
  const address = carrying(plan);
  return address && `${location.origin}${address}`;
}

function carrying(plan: Plan): string | undefined {
  try {
    return `/p#${encode(plan)}`;
  } catch (error) {
    if (error instanceof LinkError) return undefined;
    throw error;
  }
}

/** A whole short address for a plan; a key that is given is kept for next time. Throws Refused (401: a key is needed), NoAnswer. */
export async function shortAddress(plan: Plan, key?: string): Promise<string> {
  const { publish_key } = await readSettings();
  const { url } = await publishPlan(plan, key ?? publish_key);
  if (key !== undefined) await changeSettings({ publish_key: key }).catch(() => undefined);
  return new URL(url, location.origin).href;
}

/** Whether a server asks for a key before it takes a plan. */
export function needsKey(error: unknown): error is Refused {
  return error instanceof Refused && error.status === 401;
}

function isOfLaterFormat(plan: unknown): boolean {
  const format = (plan as { format?: unknown } | null | undefined)?.format;
  return typeof format === "number" && format > FORMAT;
}

async function keepAs(source: "sent" | "mine", name: string, plan: Plan, address: string | undefined): Promise<PlanRecord> {
  const kept = await soundOne(source, name);
  if (kept) return kept;
  const brought = address === undefined ? {} : { address };
  return keep({ id: `${source}:${name}`, source, name, ...brought, kind: "", plan, timeline: compiledForAnybody(plan), kept_at_ms: Date.now() });
}

/** What is kept under that name; what is damaged there is written anew. */
function soundOne(source: "sent" | "mine", name: string): Promise<PlanRecord | undefined> {
  return openPlan(source, name).catch(() => undefined);
}

/** The same plan has the same name on this device, and no two have one. */
async function nameFor(source: "sent" | "mine", plan: Plan): Promise<string> {
  const text = canonical(plan);
  for (let name = sumOf(text); ; name += "-") {
    const kept = await soundOne(source, name);
    if (!kept || canonical(kept.plan) === text) return name;
  }
}
