/** A timeline that waits for nobody: on a wall, the clock alone says when a block is over. Pure. */
import type { Segment, Timeline } from "../plan/types.js";

/** Every segment goes on by itself; where its length is a guess or an estimate, that length counts. */
export function byClock(timeline: Timeline): Timeline {
  return { ...timeline, segments: timeline.segments.map(goingOn) };
}

function goingOn(segment: Segment): Segment {
  const ends = segment.ends === "tap" ? "time" : segment.ends;
  return { ...segment, waits: false, ends, basis: segment.basis === "assumed" ? "split" : segment.basis };
}

/** Whether some of it is rowed to a distance or until one likes, so that by the clock its length is a guess. */
export function guesses({ segments }: Timeline): boolean {
  return segments.some(({ ends }) => ends === "metres" || ends === "tap");
}
