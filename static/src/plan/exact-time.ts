/** Exact fractions: seconds as they cross the wire, and what is computed from them without rounding. */
import type { Pair } from "./types.js";

/** A fraction in lowest terms; `den` is positive. */
export interface Exact {
  readonly num: bigint;
  readonly den: bigint;
}

/** A fraction of two whole numbers, brought to lowest terms. Throws RangeError for a denominator of zero. */
export function exact(numerator: bigint | number, denominator: bigint | number = 1n): Exact {
  const [num, den] = [BigInt(numerator), BigInt(denominator)];
  if (den === 0n) throw new RangeError(`${num}/0 is not a number`);
  const shared = gcd(num < 0n ? -num : num, den < 0n ? -den : den) * (den < 0n ? -1n : 1n);
  return { num: num / shared, den: den / shared };
}

export const ZERO = exact(0);

/** A number of the wire that counts tenths (or hundredths, thousandths), as exactly that. */
export function inParts(value: number, parts: 1 | 10 | 100 | 1000 = 10): Exact {
  return exact(Math.round(value * parts), parts);
}

export function fromPair([num, den]: Pair): Exact {
  return exact(num, den);
}

export function toPair(value: Exact): [number, number] {
  return [Number(value.num), Number(value.den)];
}

export function plus(a: Exact, b: Exact): Exact {
  return exact(a.num * b.den + b.num * a.den, a.den * b.den);
}

export function minus(a: Exact, b: Exact): Exact {
  return plus(a, { num: -b.num, den: b.den });
}

export function times(a: Exact, b: Exact): Exact {
  return exact(a.num * b.num, a.den * b.den);
}

/** Throws RangeError when `b` is zero. */
export function over(a: Exact, b: Exact): Exact {
  return exact(a.num * b.den, a.den * b.num);
}

export function cubed(value: Exact): Exact {
  return { num: value.num ** 3n, den: value.den ** 3n };
}

/** Negative, zero or positive as `a` is below, at or above `b`. */
export function compare(a: Exact, b: Exact): number {
  const difference = a.num * b.den - b.num * a.den;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** The nearest whole number, a tie going up, as the planner rounds. */
export function roundHalfUp(value: Exact): bigint {
  return floorDivision(2n * value.num + value.den, 2n * value.den);
}

/** The nearest tenth (hundredth, thousandth), a tie going up. */
export function nearest(value: Exact, parts: 10 | 1000 = 10): Exact {
  return exact(roundHalfUp(times(value, exact(parts))), parts);
}

const PRECISION = 53;

/** The nearest floating-point number, a tie to the even one: what the planner's `float()` gives. */
export function toNumber({ num, den }: Exact): number {
  if (num < 0n) return -toNumber({ num: -num, den });
  if (num <= Number.MAX_SAFE_INTEGER && den <= Number.MAX_SAFE_INTEGER) return Number(num) / Number(den);
  // Scaled so that the quotient has at least two bits more than a double; the last one remembers the remainder.
  const shift = BigInt(Math.max(0, PRECISION + 3 - (bits(num) - bits(den))));
  const quotient = (num << shift) / den;
  const rest = (num << shift) % den;
  return Number(rest ? quotient | 1n : quotient) / 2 ** Number(shift);
}

/** Seconds of a pair, as a plain number. */
export function seconds(pair: Pair): number {
  return pair[0] / pair[1];
}

/** `count` times the seconds of a pair, divided once: never a running sum. */
export function multiple(pair: Pair, count: number): number {
  return (pair[0] * count) / pair[1];
}

function floorDivision(a: bigint, b: bigint): bigint {
  const quotient = a / b;
  return a % b < 0n ? quotient - 1n : quotient;
}

function gcd(a: bigint, b: bigint): bigint {
  while (b) [a, b] = [b, a % b];
  return a;
}

function bits(value: bigint): number {
  return value.toString(2).length;
}
