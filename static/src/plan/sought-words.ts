/** Words as plans and searches write them, brought to one spelling: "2k", "2 km" and "2000 m"; "8 x 500", "8×500m". */
import type { Block, Step } from "./wire.js";

const LENGTH = /(\d+(?:[.,]\d+)?)\s*(kilometres?|km|k|metres?|meters?|m|minutes?|mins?|seconds?|secs?|s|strokes?|['’′]|["”″])(?![\p{L}\p{N}])/gu;
/** As it stands once lengths have their one spelling; a set may lack the unit, or the length while it is being typed. */
const ONE = String.raw`\d+(?:\.\d+)?(?:min|strokes|m|s)`;
const SET = new RegExp(String.raw`(\d+)\s*[x×*]\s*\(?\s*(?:(${ONE}|\d+(?:\.\d+)?)(?![\p{L}\p{N}])|$)`, "gu");
const REST = new RegExp(String.raw`/\s*(${ONE})(?:\s*rest\b)?|(${ONE})\s*rest\b`, "gu");
const RATE = /\b(?:rate|r)\s+(\d+)(?![\p{L}\p{N}])|(?<![\p{L}\p{N}])(\d+)\s*(?:strokes a minute|spm)(?![\p{L}\p{N}])/gu;

/** What a text says: its words, and beside those of a set, a rest or a rate what they mean together. */
export function wordsOf(text: string): string[] {
  const plain = inOneSpelling(text);
  return [...split(plain), ...[RATE, REST, SET].flatMap((notation) => [...plain.matchAll(notation)].map((match) => meant(notation, match)))];
}

/** What is sought by a text: of a set, a rest or a rate only what its words mean together. */
export function soughtIn(text: string): string[] {
  return split([RATE, REST, SET].reduce((plain, notation) => plain.replace(notation, (...match) => ` ${meant(notation, match as unknown as RegExpMatchArray)} `), inOneSpelling(text)));
}

/** A number by itself, and a set without a unit, are any of that number; a word, and a set without a length, are the beginning of one. */
export function isMeant(word: string, said: string): boolean {
  if (/^\d+(x\d+(\.\d+)?)?$/.test(word)) return said.replace(/^r(?=\d)|(min|strokes|m|s)$/g, "") === word;
  return /^\d/.test(word) && !/^\d+x$/.test(word) ? said === word : said.startsWith(word);
}

/** The sets that steps come to, those inside others too, and their rests: "8x500m", "rest3min". */
export function setWords(steps: readonly Step[]): string[] {
  const sets = [steps, ...repeatsIn(steps).map((repeat) => [repeat])];
  const rests = restsIn(steps).flatMap((rest) => spellings(rest).map((length) => `rest${length}`));
  return [...sets.flatMap((set) => [...counted(set)].flatMap(([length, times]) => (times > 1 ? [`${times}x${length}`] : []))), ...rests];
}

/** Small letters, and lengths without a blank before their unit. */
function inOneSpelling(text: string): string {
  const plain = text.toLowerCase().replace(/half an hour|half hour/g, "30 min").replace(/(\d),(?=\d{3}\b)/g, "$1");
  const whole = plain.replace(/(\d+)\s*['’′]\s*(\d{1,2})\s*["”″]|(?<=[x×*/]\s*)(\d+):(\d\d)(?!\d)/g, (_, minutes = "", seconds = "", more = "", rest = "") =>
    `${Number(minutes || more) * 60 + Number(seconds || rest)} s`);
  return whole.replace(LENGTH, (_, number: string, unit: string) => {
    const value = Number(number.replace(",", "."));
    return ` ${unit.startsWith("k") ? `${Math.round(value * 1000)}m` : `${value}${UNITS.find(([written]) => written.test(unit))![1]}`} `;
  });
}

const UNITS: readonly (readonly [RegExp, string])[] = [[/^(min|['’′])/, "min"], [/^m/, "m"], [/^stroke/, "strokes"], [/./, "s"]];

function meant(notation: RegExp, [, first, second]: RegExpMatchArray): string {
  if (notation === SET) return `${first}x${second ?? ""}`;
  return `${notation === RATE ? "r" : "rest"}${first ?? second}`;
}

function split(text: string): string[] {
  return text.split(/[^\p{L}\p{N}\p{M}.]+|\.(?!\d)|(?<!\d)\./u).filter(Boolean);
}

function repeatsIn(steps: readonly Step[]): Step[] {
  return steps.flatMap((step) => ("times" in step ? [step, ...repeatsIn(step.blocks), ...repeatsIn(step.between ?? [])] : []));
}

function restsIn(steps: readonly Step[]): Block["for"][] {
  return steps.flatMap((step) => ("times" in step ? [...restsIn(step.blocks), ...restsIn(step.between ?? [])] : "rest" in step ? [step.for] : []));
}

/** How often each length is rowed in all. */
function counted(steps: readonly Step[], times = 1, into = new Map<string, number>()): Map<string, number> {
  for (const step of steps) {
    if ("times" in step) {
      counted(step.blocks, times * step.times, into);
      counted(step.between ?? [], times * (step.times - 1), into);
    } else if (!("rest" in step)) for (const length of spellings(step.for)) into.set(length, (into.get(length) ?? 0) + times);
  }
  return into;
}

/** A length as it may be written: 90 s, 1.5 min. */
function spellings(length: Block["for"]): string[] {
  if (!length) return [];
  if ("metres" in length) return [`${length.metres}m`];
  if ("strokes" in length) return [`${length.strokes}strokes`];
  return [`${length.seconds}s`, ...(length.seconds % 6 ? [] : [`${length.seconds / 60}min`])];
}
