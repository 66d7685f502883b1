/**
 * How a person wants the app on this device: each choice with what may be chosen, and what holds until it is.
 *
 * Kept among the settings. What cannot be understood there, of another version or damaged, counts as not chosen.
 */
import { BEATS, type Beat } from "../plan/beats.js";
import { keepSettings, readSettings } from "./settings.js";
import { THEMES, type Theme } from "./theme-mirror.js";

/** The largest figure while rowing. */
export const FIGURES = ["time", "strokes", "rate", "split"] as const;
export type FigureKind = (typeof FIGURES)[number];

/** How the effort asked for is shown while rowing. */
export const EFFORT_UNITS = ["split", "watts", "two-k-power", "words"] as const;
export type EffortUnit = (typeof EFFORT_UNITS)[number];

export const HANDS = ["right", "left"] as const;
export type Hand = (typeof HANDS)[number];

/** Larger ones leave less room for everything else. */
export const BUTTONS = ["usual", "large"] as const;
export type Buttons = (typeof BUTTONS)[number];

/** The longest count-in, in seconds. */
export const LONGEST_COUNT_S = 30;

export interface Preferences {
  biggest: FigureKind;
  effort: EffortUnit;
  theme: Theme;
  /** The hand that reaches for the phone. */
  hand: Hand;
  buttons: Buttons;
  beat: Beat;
  /** Whether the last two strokes of a block are marked. */
  last_strokes: boolean;
  /** Whether changes, count-ins and the end are told by a sound. */
  changes: boolean;
  /** Whether a voice names the next block and says the calls. */
  voice: boolean;
  /** The address of the voice that was chosen; "" for the first there is. */
  voice_uri: string;
  /** Whether the device shakes at changes and last strokes, where it can. */
  shakes: boolean;
  /** Whether the screen is kept on while a session runs. */
  keep_awake: boolean;
  /** Whether keys steer a session: those of a keyboard or a clicker. */
  keys: boolean;
  /** Whether the keys of headphones and the lock screen are taken, which may stop other music. */
  media_keys: boolean;
  /** Seconds to sit down and take the handle: at the start, and after a gap. */
  start_count_s: number;
  /** Seconds to take up the handle again after a hold. */
  hold_count_s: number;
}

const VERSION = 1;

interface Choice<Value> {
  usual: Value;
  allows(value: unknown): value is Value;
}

const CHOICES: { readonly [Name in keyof Preferences]: Choice<Preferences[Name]> } = {
  biggest: oneOf(FIGURES),
  effort: oneOf(EFFORT_UNITS),
  theme: oneOf(THEMES),
  hand: oneOf(HANDS),
  buttons: oneOf(BUTTONS),
  beat: oneOf(BEATS),
  last_strokes: onOrOff(true),
  changes: onOrOff(true),
  voice: onOrOff(true),
  voice_uri: { usual: "", allows: (value) => typeof value === "string" },
  shakes: onOrOff(true),
  keep_awake: onOrOff(true),
  keys: onOrOff(true),
  media_keys: onOrOff(false),
  start_count_s: wholeSeconds(10),
  hold_count_s: wholeSeconds(5),
};

/** What holds where nothing was chosen. */
export const USUAL: Preferences = preferencesFrom(undefined);

/** What was stored, with the usual for each choice that is missing or makes no sense. */
export function preferencesFrom(stored: unknown): Preferences {
  const values = valuesOf(stored);
  const read = Object.entries(CHOICES).map(([name, { usual, allows }]) => [name, allows(values[name]) ? values[name] : usual]);
  return Object.fromEntries(read) as Preferences;
}

/** What was chosen of what was stored, as it is stored, and makes sense. */
export function chosenIn(stored: unknown): Partial<Preferences> {
  const values = valuesOf(stored);
  return Object.fromEntries(Object.entries(CHOICES).flatMap(([name, { allows }]) => (allows(values[name]) ? [[name, values[name]]] : []))) as Partial<Preferences>;
}

/** What is chosen on this device. */
export async function readPreferences(): Promise<Preferences> {
  return preferencesFrom((await readSettings()).preferences);
}

/** Changes some of it, and leaves alone what another tab has changed meanwhile; the answer holds all. */
export async function changePreferences(changes: Partial<Preferences>): Promise<Preferences> {
  const settings = await keepSettings(({ preferences }) => ({
    preferences: { version: VERSION, values: { ...valuesOf(preferences), ...changes } },
  }));
  return preferencesFrom(settings.preferences);
}

function valuesOf(stored: unknown): Record<string, unknown> {
  const { version, values } = (stored ?? {}) as { version?: unknown; values?: unknown };
  return version === VERSION && typeof values === "object" ? { ...values } : {};
}

/** One of several; the first of them is the usual. */
function oneOf<Value extends string>(values: readonly [Value, ...Value[]]): Choice<Value> {
  return { usual: values[0], allows: (value): value is Value => values.includes(value as Value) };
}

function onOrOff(usual: boolean): Choice<boolean> {
  return { usual, allows: (value) => typeof value === "boolean" };
}

function wholeSeconds(usual: number): Choice<number> {
  return { usual, allows: isCount };
}

/** Whether it is a length that a count-in may have, in seconds. */
export function isCount(value: unknown): value is number {
  return Number.isInteger(value) && (value as number) >= 0 && (value as number) <= LONGEST_COUNT_S;
}
