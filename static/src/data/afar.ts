/** Walls led from afar: their keys on a phone, what they show, and what a tablet last heard of its own. */
import { canonical } from "../plan/canonical.js";
import { checkedPlan } from "../plan/checked-plan.js";
import type { Plan, Wall } from "../plan/wire.js";
import { NoAnswer, askWall, makeWall, renewWallKey } from "./api.js";
import { changeSettings, readSettings } from "./settings.js";

/** A wall whose key is on this device; `name` is what its owner calls it. */
export interface KeyedWall {
  id: string;
  key: string;
  name: string;
}

/** What a tablet keeps of its wall, so that it stands there again after a power cut with no network. */
export interface Heard {
  id: string;
  shown: Wall;
  /** When the server last answered, in ms since 1970 by this device. */
  at_ms: number;
  /** The start that has been carried out, or missed; null where none was given. */
  done_s: number | null;
}

export interface Look {
  /** Undefined where nothing has changed. */
  shown: Wall | undefined;
  etag: string;
  /** Between these the server's clock is ahead of this one, in ms. */
  ahead: { low: number; high: number };
}

const ID = /^[a-z2-7]{16}$/;
const KEY_LINK = /^([a-z2-7]{16})\.([A-Za-z0-9_-]{43})$/;
const SECOND_MS = 1000;

/** The walls whose keys are here. */
export async function readWalls(): Promise<readonly KeyedWall[]> {
  return wallsIn((await readSettings()).walls);
}

/** Keeps a wall's key; one that is known already is only given another key. */
export async function keepWall({ id, key }: Pick<KeyedWall, "id" | "key">, name?: string): Promise<readonly KeyedWall[]> {
  return change((walls) => {
    const known = walls.find((wall) => wall.id === id);
    const kept = { id, key, name: name ?? known?.name ?? `Wall ${walls.length + 1}` };
    return known ? walls.map((wall) => (wall === known ? kept : wall)) : [...walls, kept];
  });
}

/** Takes a wall's key off this device. */
export function forgetWall(id: string): Promise<readonly KeyedWall[]> {
  return change((walls) => walls.filter((wall) => wall.id !== id));
}

/** A new wall, whose key is kept here. Throws Refused, NoAnswer. */
export async function newWall(): Promise<readonly KeyedWall[]> {
  return keepWall(await makeWall((await readSettings()).publish_key));
}

/** Another key for a wall: the one before is worth nothing from now on. Throws Refused, NoAnswer. */
export async function newKey({ id, key }: KeyedWall): Promise<readonly KeyedWall[]> {
  return keepWall(await renewWallKey(id, key));
}

/** What the tablet of a wall opens. */
export function tabletAddress({ id }: Pick<KeyedWall, "id">): string {
  return `${location.origin}/wall/${id}`;
}

/** What gives another phone the key; behind the #, which no server sees. */
export function keyLink({ id, key }: KeyedWall): string {
  return `${location.origin}/walls#${id}.${key}`;
}

/** The wall and key of such a link; undefined for anything else. */
export function fromKeyLink(fragment: string): Pick<KeyedWall, "id" | "key"> | undefined {
  const found = KEY_LINK.exec(fragment.trim());
  return found ? { id: found[1]!, key: found[2]! } : undefined;
}

/** What a wall shows now, if that has changed since `etag`. Throws Refused, NoAnswer. */
export async function lookAt(id: string, etag = ""): Promise<Look> {
  const sent_ms = Date.now();
  const { document, headers } = await askWall(id, "GET", etag ? { "If-None-Match": etag } : {});
  const date_ms = Date.parse(headers.get("Date") ?? "");
  const ahead = Number.isNaN(date_ms) ? { low: 0, high: 0 } : { low: date_ms - Date.now(), high: date_ms + SECOND_MS - sent_ms };
  return { shown: document === undefined ? undefined : wallFrom(document), etag: headers.get("ETag") ?? "", ahead };
}

/** Lets a wall show these plans, the first of them starting in some seconds, at a moment, or not yet. Throws Refused, NoAnswer. */
export async function show(
  { id, key }: KeyedWall, plans: readonly Plan[], start: { start_in_seconds?: number; starts_at_s?: number } = {}, etag = "",
): Promise<Wall> {
  const headers = { Authorization: `Bearer ${key}`, ...(etag ? { "If-Match": etag } : {}) };
  return wallFrom((await askWall(id, "PUT", headers, { plans, ...start })).document);
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

export async function keepHeard(heard: Heard): Promise<void> {
  await changeSettings({ heard }).catch(() => undefined);
}

/** Whether two walls show the same first plan. */
export function samePlan(a: Plan | undefined, b: Plan | undefined): boolean {
  return a === undefined || b === undefined ? a === b : canonical(a) === canonical(b);
}

/** An answer of the server, or something that was stored, looked at before it is shown. Throws NoAnswer. */
function wallFrom(document: unknown): Wall {
  const { id, version, plans, starts_at_s } = (document ?? {}) as Partial<Wall>;
  const sound = Array.isArray(plans) && plans.every((plan) => checkedPlan(plan) !== undefined);
  const moment = starts_at_s === null || Number.isInteger(starts_at_s);
  if (typeof id !== "string" || !Number.isInteger(version) || !sound || !moment) throw new NoAnswer("an answer came that is no wall's");
  return { id, version: version!, plans, starts_at_s: starts_at_s! };
}

async function change(next: (walls: readonly KeyedWall[]) => readonly KeyedWall[]): Promise<readonly KeyedWall[]> {
  const { walls } = await changeSettings((before) => ({ walls: next(wallsIn(before.walls)) }));
  return wallsIn(walls);
}

function wallsIn(stored: unknown): readonly KeyedWall[] {
  const walls = Array.isArray(stored) ? (stored as Partial<KeyedWall>[]) : [];
  return walls.filter((wall): wall is KeyedWall => ID.test(wall?.id ?? "") && typeof wall.key === "string" && typeof wall.name === "string");
}
