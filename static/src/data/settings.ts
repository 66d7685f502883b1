/** What a person has chosen on this device, and the few things the app has to remember about them. */
import * as v from "valibot";
import type { Room } from "../plan/types.js";
import { database } from "./database.js";
import type { Step } from "./shape.js";

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
  /** The shorthand of a new plan being written. */
  draft: string;
  /** Shorthand being written in place of a plan, by the plan's id. */
  drafts: Readonly<Record<string, string>>;
  /** The key that a server asks for before it takes a plan, as it was last given. */
  publish_key: string;
  /** As data/preferences keeps and understands them. */
  preferences: unknown;
  /** As data/wall keeps and understands it. */
  wall: unknown;
  /** As data/prompter keeps and understands it. */
  prompter: unknown;
  /** Walls whose keys are here, and what a tablet last heard, as data/afar keeps and understands them. */
  walls: unknown;
  heard: unknown;
}

export const DEFAULTS: Settings = {
  sound: true, volume: 0.8, result_s: null, warmup_minutes: 15, room: "normal", cautions_read: false, draft: "", drafts: {}, publish_key: "",
  preferences: null, wall: null, prompter: null, walls: null, heard: null,
};

const CHECKS: { readonly [Name in keyof Settings]: v.GenericSchema<Settings[Name]> } = {
  sound: v.boolean(),
  volume: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  result_s: v.nullable(v.pipe(v.number(), v.finite(), v.minValue(1))),
  warmup_minutes: v.pipe(v.number(), v.integer()),
  room: v.picklist(["cold", "normal", "hot"]),
  cautions_read: v.boolean(),
  draft: v.string(),
  drafts: v.record(v.string(), v.string()),
  publish_key: v.string(),
  preferences: v.unknown(),
  wall: v.unknown(),
  prompter: v.unknown(),
  walls: v.unknown(),
  heard: v.unknown(),
};

/** What this page has changed and the device could not keep: it counts while the page is open. */
let unkept: Partial<Settings> = {};

/** Every setting, those never chosen, damaged or not handed out by storage at their default. */
export async function readSettings(): Promise<Settings> {
  const stored = await database.get("settings", KEY).catch(() => undefined);
  return { ...settingsFrom(stored?.values), ...unkept };
}

type Changes = Partial<Settings> | ((before: Settings) => Partial<Settings>);

/** Changes some settings, or makes the change from what they are, at least for this page; the answer holds all of them. */
export async function changeSettings(changes: Changes): Promise<Settings> {
  return keepSettings(changes).catch(readSettings);
}

/** The same, and rejects when the device could not keep it. */
export async function keepSettings(changes: Changes): Promise<Settings> {
  const changedFrom = (before: Settings) => (typeof changes === "function" ? changes(before) : changes);
  try {
    const { values } = await database.change("settings", KEY, (stored) => {
      const changed = changedFrom({ ...settingsFrom(stored?.values), ...unkept });
      return { name: KEY, values: { ...stored?.values, ...unkept, ...changed } };
    });
    unkept = {};
    return settingsFrom(values);
  } catch (error) {
    unkept = { ...unkept, ...changedFrom(await readSettings()) };
    throw error;
  }
}

/** Those settings that were chosen here: stored, sound, and another than the default. */
export async function chosenSettings(): Promise<Partial<Settings>> {
  const all = Object.entries(await readSettings());
  return Object.fromEntries(all.filter(([name, value]) => JSON.stringify(value) !== JSON.stringify(DEFAULTS[name as keyof Settings]))) as Partial<Settings>;
}

export function isSetting(name: keyof Settings, value: unknown): boolean {
  return v.is(CHECKS[name], value);
}

/** The change of some settings as one of several that are made together. */
export async function settingsStep(changes: Partial<Settings>): Promise<Step> {
  const stored = await database.get("settings", KEY);
  return { store: "settings", put: { name: KEY, values: { ...stored?.values, ...changes } } };
}

function settingsFrom(values: unknown): Settings {
  const read = Object.entries(CHECKS).flatMap(([name, check]) => {
    const value = (values as Record<string, unknown> | undefined)?.[name];
    return value !== undefined && v.is(check, value) ? [[name, value]] : [];
  });
  return { ...DEFAULTS, ...(Object.fromEntries(read) as Partial<Settings>) };
}

const KEY = "all";
