/** Canonical JSON (RFC 8785): one spelling for each value, so that the same plan is always the same text. */

/** The one spelling of a JSON value. Throws TypeError for what JSON has no form for: NaN, infinity, half a character. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (typeof value === "object" && value !== null) return `{${Object.entries(value).filter(isGiven).sort(byName).map(field).join(",")}}`;
  if (typeof value === "number" && !Number.isFinite(value)) throw new TypeError(`${value} is no number in JSON`);
  if (typeof value === "string" && HALF_A_CHARACTER.test(value)) throw new TypeError("a text ends in half a character");
  return JSON.stringify(value);
}

const HALF_A_CHARACTER = /\p{Surrogate}/u;

function field([name, value]: [string, unknown]): string {
  return `${canonical(name)}:${canonical(value)}`;
}

function isGiven([, value]: [string, unknown]): boolean {
  return value !== undefined;
}

/** By UTF-16 code units, as the RFC asks and as JavaScript compares. */
function byName([a]: [string, unknown], [b]: [string, unknown]): number {
  return a < b ? -1 : 1;
}
