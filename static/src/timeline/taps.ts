/** Which block a tap means: where metre blocks go on by an estimate, it may be late for the one before. Pure. */
import { seconds } from "../plan/exact-time.js";
import type { Segment, Timeline } from "../plan/types.js";
import { segmentAt, zeroOf, type Running } from "./running.js";

/** Rowed this much quicker than planned, a run of metre blocks is still believed to be over: judgement [C]. */
const QUICKER_SHARE = 0.15;

/**
 * Whether a block that ended at this moment is the one before. A rower may be half a block late, but the nearer
 * change counts; and in the last block of a run, where the screen asks for Done, the whole run is over if it can be.
 */
export function meansTheOneBefore(timeline: Timeline, running: Running, ended_s: number): boolean {
  const late_s = ended_s - zeroOf(timeline, running);
  const [previous, current] = [running.index - 1, running.index].map((index) => seconds(segmentAt(timeline, index).duration)) as [number, number];
  const early_s = current - late_s;
  if (late_s < 0) return true;
  if (late_s > previous / 2) return false;
  if (!segmentAt(timeline, running.index).waits) return late_s < early_s;
  return early_s > QUICKER_SHARE * (byEstimate(timeline, running) + current);
}

/** Planned seconds of the blocks that went on by their estimates, one after the other, before the one that runs. */
function byEstimate(timeline: Timeline, { index, stints }: Running): number {
  let sum_s = 0;
  for (let back = 1; stints.at(-back)?.index === index - back && stints.at(-back)!.ended === "itself"; back += 1) {
    const segment = segmentAt(timeline, index - back);
    if (segment.ends !== "metres") break;
    sum_s += seconds(segment.duration);
  }
  return sum_s;
}

/** Of what has just gone on by the estimate of a metre block: that block, still running; else undefined. */
export function beforeItWentOn(timeline: Timeline, running: Running): Running | undefined {
  const last = running.stints.at(-1);
  const index = running.index - 1;
  if (last?.index !== index || last.ended !== "itself" || segmentAt(timeline, index).ends !== "metres") return undefined;
  const from_s = running.base_s + seconds(segmentAt(timeline, index).start) + last.from_s;
  return { ...running, index, from_s, resumed: last.resumed ?? false, stints: running.stints.slice(0, -1) };
}

/** Whether a tap can end it. */
export function endsByTap(segment: Segment): boolean {
  return segment.kind === "gap" || segment.ends === "metres" || segment.ends === "tap";
}
