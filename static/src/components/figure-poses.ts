/** The drawings: for each position and drill the poses it goes through, the last one drawn in full. */
import type { Pose } from "./figure-geometry.js";

export interface Drawing {
  readonly poses: readonly Pose[];
  /** A stop, or the way the handle goes. */
  readonly mark?: "pause" | "to catch" | "to finish" | "to and fro";
  /** What one limb does that the others do not; feet are loose when no strap holds them. */
  readonly limb?: "foot on floor" | "hand on thigh" | "feet loose";
}

const CATCH: Pose = [0, 28, 0];
const FINISH: Pose = [1, -22, 1];
const AWAY: Pose = [1, -19, 0];
const OVER: Pose = [1, 24, 0];
const HALF: Pose = [0.5, 26, 0];

export const DRAWINGS: { readonly [name: string]: Drawing } = {
  catch: { poses: [CATCH] },
  drive: { poses: [[0.55, 14, 0]], mark: "to finish" },
  finish: { poses: [FINISH] },
  recovery: { poses: [[0.8, 25, 0]], mark: "to catch" },
  "arms only": { poses: [AWAY, [1, -19, 1]], mark: "to and fro" },
  "arms and swing": { poses: [OVER, FINISH] },
  "quarter slide": { poses: [[0.75, 25, 0], FINISH] },
  "half slide": { poses: [HALF, FINISH] },
  "pick drill": { poses: [CATCH, HALF, OVER, FINISH] },
  "legs only": { poses: [CATCH, [1, 26, 0]] },
  "legs and swing": { poses: [CATCH, [1, -16, 0]] },
  "reverse pick drill": { poses: [CATCH, [1, 26, 0], [1, -16, 0], FINISH] },
  "pause at the finish": { poses: [FINISH], mark: "pause" },
  "pause at hands away": { poses: [FINISH, AWAY], mark: "pause" },
  "pause at body over": { poses: [AWAY, OVER], mark: "pause" },
  "pause at half slide": { poses: [OVER, HALF], mark: "pause" },
  "pause at the catch": { poses: [HALF, CATCH], mark: "pause" },
  "front quarter": { poses: [CATCH, [0.25, 27, 0]] },
  "feet out": { poses: [OVER, [1, -17, 1]], limb: "feet loose" },
  "single foot": { poses: [[0.5, 20, 0], [1, -14, 1]], limb: "foot on floor" },
  "single arm": { poses: [[1, 14, 0], [1, -10, 1]], limb: "hand on thigh" },
  "cut the cake": { poses: [OVER, FINISH], mark: "to and fro" },
  "slow slide": { poses: [OVER, [0.65, 26, 0], [0.3, 27, 0]], mark: "to catch" },
};
