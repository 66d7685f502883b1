/** From how far away a screen is read: what people type about it, and what that comes to. Pure. */
import { DIAGONAL_MM, DISTANCE_M, isWithin, type Sight } from "../data/wall.js";
import { figureSize, legibleSize, readFrom, wallSizes, type Screen } from "./wall-sizes.js";

/** The bar that can be measured instead of the diagonal, in CSS pixels. */
export const BAR_PX = 300;

export const UNITS = { inches: 25.4, cm: 10 } as const;
export type Unit = keyof typeof UNITS;

/** "2.5" or "2,5"; NaN for anything else. */
export function numberOf(text: string): number {
  return /^\d{1,5}([.,]\d{1,2})?$/.test(text.trim()) ? Number(text.trim().replace(",", ".")) : NaN;
}

export function distanceProblem(text: string): string {
  return isWithin(numberOf(text), DISTANCE_M) ? "" : `Write metres from ${DISTANCE_M.low} to ${DISTANCE_M.high}, such as 5.`;
}

export function diagonalProblem(text: string, unit: Unit): string {
  const [low, high] = [DIAGONAL_MM.low, DIAGONAL_MM.high].map((mm) => Math.round(mm / UNITS[unit]));
  return isWithin(numberOf(text) * UNITS[unit], DIAGONAL_MM) ? "" : `Write the diagonal in ${unit}, from ${low} to ${high}: “${text}” cannot be it.`;
}

export function barProblem(text: string, screen: Screen): string {
  return isWithin(diagonalByBar(numberOf(text), screen), DIAGONAL_MM) ? "" : `Write the bar’s length in millimetres, such as 62: “${text}” cannot be it.`;
}

/** The screen's diagonal in mm, from the length at which the bar was measured. */
export function diagonalByBar(bar_mm: number, { width, height }: Screen): number {
  return (Math.hypot(width, height) * bar_mm) / BAR_PX;
}

/** What is read from there on the whole screen, and from where the rest. */
export function readWords(sight: Sight, screen: Screen, lanes: number): string {
  const [width, height] = [Math.max(screen.width, screen.height), Math.min(screen.width, screen.height)];
  const sizes = wallSizes({ width, height }, lanes, legibleSize(sight, screen));
  const all: [string, number][] = [
    ["the time left", figureSize(sizes, "10:00")], ["rate and strokes", sizes.pair], ...(lanes ? [["lanes", sizes.lane] as [string, number]] : []), ["calls", sizes.call],
  ];
  const from = all.map(([name, size]) => ({ name, metres: Math.floor(readFrom(size, sight.diagonal_mm, screen) * 10) / 10 }));
  const near = from.filter(({ metres }) => metres < sight.distance_m - 0.05);
  const far = from.filter((item) => !near.includes(item)).map(({ name }) => name);
  const rest = near.map(({ name, metres }) => `${name} from ${metres} m`);
  const first = far.length ? `From ${sight.distance_m} m one reads ${joined(far)} well.` : `From ${sight.distance_m} m nothing is read well on this screen.`;
  return [first, rest.length ? `${capital(joined(rest))}.` : ""].filter(Boolean).join(" ");
}

function joined(words: readonly string[]): string {
  return words.length > 1 ? `${words.slice(0, -1).join(", ")} and ${words.at(-1)}` : (words[0] ?? "");
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
