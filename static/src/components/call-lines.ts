/** The calls of a block as lines to read: where each is said, and its words. */
import type { Call } from "../plan/wire.js";
import { strokesWords } from "./segment-words.js";

/** In a repeat, calls written at one stroke share a line: they take turns from one repetition to the next. */
export function callLines(calls: readonly Call[], repeated: boolean): [string, string][] {
  if (!repeated) return calls.map((call) => [place(call), call.text]);
  const said = new Map<string, string[]>();
  for (const call of calls) said.set(place(call), [...(said.get(place(call)) ?? []), call.text]);
  return [...said].map(([where, texts]) => [texts.length > 1 ? `${where}, in turn` : where, texts.join(" / ")]);
}

function place(call: Call): string {
  if (call.strokes_left !== undefined) return `Call, ${strokesWords(call.strokes_left)} left`;
  return call.stroke === undefined ? "Call" : `Call, stroke ${call.stroke}`;
}
