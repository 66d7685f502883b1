/** What is typed into the fields of a block, as values of the plan; undefined for what cannot be read or is out of bounds. */
import { isClean } from "./clean-text.js";

/** As in planner/limits.py. */
export interface Bounds {
  low: number;
  high: number;
  /** Into how many parts a whole is divided: 10 for tenths. */
  parts?: number;
}

export function numberIn(text: string, { low, high, parts = 1 }: Bounds): number | undefined {
  const plain = text.trim().replace("−", "-").replace(",", ".");
  if (!/^[+-]?\d{1,7}(\.\d{1,2})?$/.test(plain)) return undefined;
  const value = Number(plain);
  const inSteps = Math.round(value * parts) / parts === value;
  return inSteps && value >= low && value <= high ? value : undefined;
}

/** Whole seconds of 5:00, 1:05:00, 3', 50", 1'30", or of minutes alone. */
export function secondsIn(text: string, { low, high }: Bounds): number | undefined {
  const plain = text.trim().replace(/[’′]/g, "'").replace(/[”″]|''/g, '"');
  const clock = /^(?:(\d{1,2}):)?(\d{1,3}):([0-5]\d)$/.exec(plain);
  const signs = /^(?:(\d{1,3})\s*(?:'|min))?\s*(?:(\d{1,5})\s*(?:"|s))?$/.exec(plain);
  const seconds = clock ? Number(clock[1] ?? 0) * 3600 + Number(clock[2]) * 60 + Number(clock[3])
    : /^\d{1,3}$/.test(plain) ? Number(plain) * 60
      : signs && plain ? Number(signs[1] ?? 0) * 60 + Number(signs[2] ?? 0) : NaN;
  return seconds >= low && seconds <= high ? seconds : undefined;
}

/** Seconds of a split such as 1:55 or 1:55.5, from 1:00 to 6:00. */
export function splitIn(text: string): number | undefined {
  const split = /^(\d):([0-5]\d)(?:[.,](\d))?$/.exec(text.trim());
  const tenths = split ? Number(split[1]) * 600 + Number(split[2]) * 10 + Number(split[3] ?? 0) : NaN;
  return tenths >= 600 && tenths <= 3600 ? tenths / 10 : undefined;
}

/** One line of text as the planner keeps it; "" for nothing. */
export function lineIn(text: string, longest: number): string | undefined {
  const line = text.normalize("NFC").replace(/\s+/g, " ").trim();
  return line === "" || isClean(line, longest) ? line : undefined;
}
