/**
 * Split, distance and power under the air-machine display convention, exactly as planner/pace.py has them.
 *
 * The cubic P = 2.80 v^3 (W, m/s) is how air machines show power: a named convention [S2], not physics (facts 1.1).
 */
import { cubed, exact, over, times, type Exact } from "./exact-time.js";

/** Watts per (m/s) cubed; a calibration constant of the convention [S2]. */
const CUBIC = exact(14, 5);
const SPLIT_METRES = exact(500);

/** Watts shown at a split in seconds per 500 m. */
export function powerOfSplit(split: Exact): Exact {
  return times(CUBIC, cubed(over(SPLIT_METRES, split)));
}

/** Seconds per 500 m of a distance covered in a time: total time over total distance. */
export function splitOf(metres: Exact, seconds: Exact): Exact {
  return over(times(seconds, SPLIT_METRES), metres);
}

/** Metres covered in a time at a split. */
export function metresIn(seconds: Exact, split: Exact): Exact {
  return over(times(seconds, SPLIT_METRES), split);
}

/** Seconds that a distance takes at a split. */
export function secondsFor(metres: number, split: Exact): Exact {
  return over(times(exact(metres), split), SPLIT_METRES);
}
