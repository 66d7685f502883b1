/** What a wall screen needs to know once: the lanes of the room, and from how far away how large a screen is read. */
import { laneFrom, MOST_LANES, type Lane } from "../plan/lanes.js";
import type { Source } from "./plans.js";
import { keepSettings, readSettings } from "./settings.js";

/** How far away people look from, and the screen's diagonal. */
export interface Sight {
  distance_m: number;
  diagonal_mm: number;
}

export const DISTANCE_M = { low: 0.5, high: 20 } as const;
/** From a small phone to a projected picture. */
export const DIAGONAL_MM = { low: 100, high: 10_000 } as const;

export interface WallSettings {
  lanes: readonly Lane[];
  /** Null until it has been said. */
  sight: Sight | null;
  /** The plan that was shown last. */
  plan: { source: Source; name: string } | null;
}

const VERSION = 1;
const SOURCES: readonly Source[] = ["built-in", "mine", "sent"];

/** What is kept, and how many lanes of it could not be read. */
export async function readWall(): Promise<{ wall: WallSettings; lost: number }> {
  return wallFrom((await readSettings()).wall);
}

/** Changes some of it, at least for this page; the answer holds all. Rejects when the device could not keep it. */
export async function changeWall(changes: Partial<WallSettings>): Promise<WallSettings> {
  const settings = await keepSettings(({ wall }) => ({ wall: { version: VERSION, ...wallFrom(wall).wall, ...changes } }));
  return wallFrom(settings.wall).wall;
}

/** What was stored, without what makes no sense. */
export function wallFrom(stored: unknown): { wall: WallSettings; lost: number } {
  const { version, lanes, sight, plan } = (stored ?? {}) as Record<string, unknown>;
  if (version !== VERSION) return { wall: { lanes: [], sight: null, plan: null }, lost: 0 };
  const given = Array.isArray(lanes) ? lanes.slice(0, MOST_LANES) : [];
  const read = given.map(laneFrom).filter((lane) => lane !== undefined);
  return { wall: { lanes: read, sight: sightFrom(sight), plan: planFrom(plan) }, lost: given.length - read.length };
}

/** What was stored, with its plan under another name: `named` gives the id of a plan here for the one there. */
export function withPlanNamed(stored: unknown, named: (id: string) => string): unknown {
  const { plan } = wallFrom(stored).wall;
  if (!plan) return stored;
  const { source, name } = plan;
  return { ...(stored as object), plan: { source, name: named(`${source}:${name}`).slice(source.length + 1) } };
}

function sightFrom(stored: unknown): Sight | null {
  const { distance_m, diagonal_mm } = (stored ?? {}) as Record<string, unknown>;
  return isWithin(distance_m, DISTANCE_M) && isWithin(diagonal_mm, DIAGONAL_MM) ? { distance_m, diagonal_mm } : null;
}

function planFrom(stored: unknown): WallSettings["plan"] {
  const { source, name } = (stored ?? {}) as Record<string, unknown>;
  return SOURCES.includes(source as Source) && typeof name === "string" ? { source: source as Source, name } : null;
}

export function isWithin(value: unknown, { low, high }: { low: number; high: number }): value is number {
  return typeof value === "number" && value >= low && value <= high;
}
