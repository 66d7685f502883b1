/** What was really rowed: stretches of segments, and their sums. */
import { multiple, seconds } from "../plan/exact-time.js";
import { isRowed, type Segment, type Timeline } from "../plan/types.js";

/** A stretch of one segment that was gone through without a break, in seconds from the segment's start. */
export interface Stint {
  readonly index: number;
  readonly from_s: number;
  readonly to_s: number;
}

/** Sums of a session or of a part of it; `metres` only where every split was known. Rests count in the seconds. */
export interface Sums {
  seconds_s: number;
  strokes: number;
  metres?: number;
}

/** The sums over what was gone through. */
export function sumsOf(timeline: Timeline, stints: readonly Stint[]): Sums {
  const sums: Sums = { seconds_s: 0, strokes: 0 };
  let metres: number | undefined = 0;
  for (const stint of stints) {
    const segment = timeline.segments[stint.index]!;
    sums.seconds_s += stint.to_s - stint.from_s;
    sums.strokes += strokesIn(segment, stint);
    const covered = metresIn(segment, stint);
    metres = metres === undefined || covered === undefined ? undefined : metres + covered;
  }
  return metres ? { ...sums, metres } : sums;
}

/** A metre block that was rowed to its end, and how long that took by the taps. */
export interface Piece {
  metres: number;
  seconds_s: number;
}

/** The metre blocks that were rowed to their end; `whole` says whether the last block was. */
export function piecesOf(timeline: Timeline, stints: readonly Stint[], whole: boolean): Piece[] {
  const last = stints.at(-1)?.index;
  return timeline.segments.flatMap(({ index, metres_asked: metres }) => {
    const mine = stints.filter((stint) => stint.index === index);
    if (metres === undefined || !mine.length || (index === last && !whole)) return [];
    return [{ metres, seconds_s: mine.reduce((sum, { from_s, to_s }) => sum + to_s - from_s, 0) }];
  });
}

/** Strokes finished in a stint. A billionth of a second is forgiven, so that a whole block has all its strokes. */
function strokesIn(segment: Segment, stint: Stint): number {
  if (!segment.stroke) return 0;
  const finished = (at_s: number) => Math.floor((at_s + 1e-9) / multiple(segment.stroke!, 1));
  return finished(stint.to_s) - finished(stint.from_s);
}

function metresIn(segment: Segment, stint: Stint): number | undefined {
  if (!isRowed(segment)) return 0;
  if (segment.metres_asked !== undefined && stint.from_s === 0 && stint.to_s >= seconds(segment.duration) - 1e-9) {
    return segment.metres_asked;
  }
  const split_s = segment.target?.split_s;
  return split_s === undefined ? undefined : ((stint.to_s - stint.from_s) * 500) / split_s;
}
