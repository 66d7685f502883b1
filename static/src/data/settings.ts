/** What a person has chosen on this device, and the few things the app has to remember about them. */
import type { Room } from "../plan/types.js";
import { database } from "./database.js";

export interface Settings {
  /** Whether the session is to be heard. */
  sound: boolean;
  /** How loud, from 0 to 1. */
  volume: number;
  /** Seconds over 2000 m as earlier versions kept them; data/athlete takes it over. */
  result_s: number | null;
  /** Minutes of warm-up, and how warm the room was, when a session was last made. */
  warmup_minutes: number;
  room: Room;
  /** Whether the cautions before the first session have been read. */
  cautions_read: boolean;
  /** The shorthand being written on the first screen. */
  draft: string;
  /** The key that a server asks for before it takes a plan, as it was last given. */
  publish_key: string;
  /** As data/preferences keeps and understands them. */
  preferences: unknown;
  /** As data/wall keeps and understands it. */
  wall: unknown;
  /** Walls whose keys are here, and what a tablet last heard, as data/afar keeps and understands them. */
  walls: unknown;
  heard: unknown;
}

export const DEFAULTS: Settings = { sound: true, volume: 0.8, result_s: null, warmup_minutes: 15, room: "normal", cautions_read: false, draft: "", publish_key: "", preferences: null, wall: null, walls: null, heard: null };

/** Every setting, those never chosen at their default. */
export async function readSettings(): Promise<Settings> {
  const stored = await database.get("settings", KEY);
  return { ...DEFAULTS, ...(stored?.values ?? {}) };
}

/** Changes some settings, or makes the change from what they are; the answer holds all of them. */
export async function changeSettings(changes: Partial<Settings> | ((before: Settings) => Partial<Settings>)): Promise<Settings> {
  const { values } = await database.change("settings", KEY, (stored) => {
    const changed = typeof changes === "function" ? changes({ ...DEFAULTS, ...stored?.values }) : changes;
    return { name: KEY, values: { ...stored?.values, ...changed } };
  });
  return { ...DEFAULTS, ...values };
}

const KEY = "all";
