/** A plan's repeats rolled out, and how large that becomes, found before it is done: planner/expansion.py again. */
import type { Block, Plan, Repeat, Rest, Step } from "./wire.js";

/** What an open block is taken to last until somebody taps: judgement [C]. */
export const OPEN_SECONDS = 300;
/** Seconds per 500 m, only to bound the length of metre blocks whose own split is not written. */
const SLOW_SPLIT = 150;
/** The deepest repeats in repeats, the most segments, the longest plan: planner/limits.py. */
const DEPTH = 4;
const SEGMENTS = 500;
const TOTAL_SECONDS = 43_200;

/** One step of the expanded plan: where it is written, and in which repetition it stands. */
export interface Placed {
  step: Block | Rest;
  place: string;
  repetition?: { number: number; times: number };
}

interface Size {
  segments: number;
  seconds: number;
}

/** Whether a plan is neither too large nor too deep to be expanded. */
export function fitsExpanded({ parts }: Plan): boolean {
  const sizes = parts.map((part) => (part.kind === "gap" ? { segments: 1, seconds: part.for.seconds } : sizeOf(part.blocks, 0)));
  const { segments, seconds } = sum(sizes);
  return segments <= SEGMENTS && seconds <= TOTAL_SECONDS;
}

/** The steps with their repeats rolled out, in the order in which they are rowed. */
export function expanded(steps: readonly Step[], place: string, repetition?: Placed["repetition"]): Placed[] {
  return steps.flatMap((step, index) => {
    const here = `${place}/${index}`;
    return isRepeat(step) ? rolledOut(step, here) : [{ step, place: here, ...(repetition ? { repetition } : {}) }];
  });
}

export function isRest(step: Step): step is Rest {
  return "rest" in step;
}

function isRepeat(step: Step): step is Repeat {
  return "times" in step;
}

function rolledOut({ times, blocks, between }: Repeat, place: string): Placed[] {
  return Array.from({ length: times }, (_, index) => {
    const repetition = { number: index + 1, times };
    const after = index + 1 < times ? expanded(between ?? [], `${place}/between`, repetition) : [];
    return [...expanded(blocks, `${place}/blocks`, repetition), ...after];
  }).flat();
}

/** Infinite where repeats stand too deep in each other. */
function sizeOf(steps: readonly Step[], depth: number): Size {
  return sum(steps.map((step) => (isRepeat(step) ? repeatSize(step, depth) : isRest(step) ? { segments: 1, seconds: step.for.seconds } : blockSize(step))));
}

function repeatSize({ times, blocks, between }: Repeat, depth: number): Size {
  if (depth === DEPTH) return { segments: Infinity, seconds: 0 };
  const [once, apart] = [sizeOf(blocks, depth + 1), sizeOf(between ?? [], depth + 1)];
  return {
    segments: once.segments * times + (times > 1 ? apart.segments * (times - 1) : 0),
    seconds: once.seconds * times + apart.seconds * (times - 1),
  };
}

function blockSize(block: Block): Size {
  const sides = block.drill?.sides ?? 1;
  return { segments: sides + (block.drill?.swap_seconds ? sides - 1 : 0), seconds: roughSeconds(block) };
}

function roughSeconds({ for: length, effort, rate }: Block): number {
  if (!length) return OPEN_SECONDS;
  if ("seconds" in length) return length.seconds;
  if ("strokes" in length) return Math.floor((length.strokes * 60) / (rate ?? 20));
  const tenths = effort && "split" in effort ? Math.round(effort.split * 10) : SLOW_SPLIT * 10;
  return Math.floor((length.metres * tenths) / 5000);
}

function sum(sizes: readonly Size[]): Size {
  return sizes.reduce((all, { segments, seconds }) => ({ segments: all.segments + segments, seconds: all.seconds + seconds }), { segments: 0, seconds: 0 });
}
