/** Walls led from afar: what they show, and what a tablet last heard of its own. */
import { canonical } from "../plan/canonical.js";
import { checkedPlan } from "../plan/checked-plan.js";
import type { Plan, Wall } from "../plan/wire.js";
import { NoAnswer, askWall } from "./api.js";
import { withKey, type KeyedWall } from "./keyed-walls.js";
import { changeSettings, readSettings } from "./settings.js";

/** What a tablet keeps of its wall, so that it stands there again after a power cut with no network. */
export interface Heard {
  id: string;
  shown: Wall;
  /** When the server last answered, in ms since 1970 by this device. */
  at_ms: number;
  /** The start that has been carried out, or missed; null where none was given. */
  done_s: number | null;
}

/** An answer, and between which the server's clock is ahead of this one, in ms. */
export interface Told {
  shown: Wall;
  ahead: { low: number; high: number };
}

export interface Look extends Pick<Told, "ahead"> {
  /** Undefined where nothing has changed. */
  shown: Wall | undefined;
  etag: string;
}

const SECOND_MS = 1000;

/** What a wall shows now, if that has changed since `etag`. Throws Refused, NoAnswer. */
export async function lookAt(id: string, etag = ""): Promise<Look> {
  const { document, headers, ahead } = await asked(id, "GET", etag ? { "If-None-Match": etag } : {});
  return { shown: document === undefined ? undefined : wallFrom(document), etag: headers.get("ETag") ?? "", ahead };
}

/** What a wall shows now, and when its tablet last asked, for who leads it. Throws Refused, NoAnswer. */
export async function lookAtLed(wall: KeyedWall): Promise<Told> {
  const { document, ahead } = await withKey(wall, (key) => asked(wall.id, "GET", { Authorization: `Bearer ${key}` }));
  return { shown: wallFrom(document), ahead };
}

/**
 * Lets a wall show these plans, the first of them starting in some seconds, at a moment, or not yet; only if it still shows
 * `version`, where that is known. Throws Refused, NoAnswer.
 */
export async function show(
  wall: KeyedWall, plans: readonly Plan[], start: { start_in_seconds?: number; starts_at_s?: number } = {}, version?: number,
): Promise<Told> {
  const seen: Record<string, string> = version === undefined ? {} : { "If-Match": `"${version}"` };
  const { document, ahead } = await withKey(wall, (key) => asked(wall.id, "PUT", { Authorization: `Bearer ${key}`, ...seen }, { plans, ...start }));
  return { shown: wallFrom(document), ahead };
}

/** An answer about a wall, with what its date tells of the server's clock; where it has none, both are taken for the same. */
async function asked(...request: Parameters<typeof askWall>) {
  const sent_ms = Date.now();
  const answer = await askWall(...request);
  const date_ms = Date.parse(answer.headers.get("Date") ?? "");
  return { ...answer, ahead: Number.isNaN(date_ms) ? { low: 0, high: 0 } : { low: date_ms - Date.now(), high: date_ms + SECOND_MS - sent_ms } };
}

/** What this tablet heard last of that wall. */
export async function readHeard(id: string): Promise<Heard | undefined> {
  const { heard } = await readSettings();
  const { id: of, shown, at_ms, done_s } = (heard ?? {}) as Partial<Heard>;
  try {
    return of === id ? { id, shown: wallFrom(shown), at_ms: Number(at_ms) || 0, done_s: done_s ?? null } : undefined;
  } catch {
    return undefined;
  }
}

/** The wall from afar that has put this plan on this tablet and started it, if one has. */
export async function wallThatLeads(plan: Plan): Promise<string | undefined> {
  const { id } = ((await readSettings()).heard ?? {}) as Partial<Heard>;
  const heard = id === undefined ? undefined : await readHeard(id);
  return heard?.done_s != null && samePlan(heard.shown.plans[0], plan) ? id : undefined;
}

export async function keepHeard(heard: Heard): Promise<void> {
  await changeSettings({ heard }).catch(() => undefined);
}

/** Whether two walls show the same first plan. */
export function samePlan(a: Plan | undefined, b: Plan | undefined): boolean {
  return a === undefined || b === undefined ? a === b : canonical(a) === canonical(b);
}

/** An answer of the server, or something that was stored, looked at before it is shown. Throws NoAnswer. */
function wallFrom(document: unknown): Wall {
  const { id, version, plans, starts_at_s, asked_s_ago } = (document ?? {}) as Partial<Wall>;
  const sound = Array.isArray(plans) && plans.every((plan) => checkedPlan(plan) !== undefined);
  const moment = starts_at_s === null || Number.isInteger(starts_at_s);
  if (typeof id !== "string" || !Number.isInteger(version) || !sound || !moment) throw new NoAnswer("an answer came that is no wall's");
  return { id, version: version!, plans, starts_at_s: starts_at_s!, ...(asked_s_ago === undefined ? {} : { asked_s_ago }) };
}
