/**
 * A rower on the machine, seen from the side and facing left, as joints worked out from a pose of three numbers.
 *
 * Centimetres of a rower of 175 cm; x to the right, y up from the floor, the ankle at x = 0. Every limb keeps its
 * length in every pose: knees and elbows are found where two circles meet.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** `seat` from 0 at the catch to 1 with flat legs; `lean` of the body in degrees, forward positive; `draw` of the
 * arms from 0, straight, to 1, handle at the ribs. */
export type Pose = readonly [seat: number, lean: number, draw: number];

export interface Joints {
  readonly ankle: Point;
  readonly toe: Point;
  readonly heel: Point;
  readonly knee: Point;
  readonly hip: Point;
  readonly shoulder: Point;
  readonly elbow: Point;
  readonly hand: Point;
  readonly head: Point;
}

/** Shares of body height: Drillis and Contini 1966, as in Winter, Biomechanics and Motor Control of Human Movement [M]. */
export const SHARES = { shank: 0.246, thigh: 0.245, trunk: 0.288, upperArm: 0.186, forearm: 0.146, hand: 0.108, head: 0.13, neckAndHead: 0.182, foot: 0.152 };
const HEIGHT = 175;
/** The handle lies in the middle of the hand. */
export const LIMBS = {
  shank: SHARES.shank * HEIGHT,
  thigh: SHARES.thigh * HEIGHT,
  trunk: SHARES.trunk * HEIGHT,
  upperArm: SHARES.upperArm * HEIGHT,
  forearm: (SHARES.forearm + SHARES.hand / 2) * HEIGHT,
  neck: (SHARES.neckAndHead - SHARES.head / 2) * HEIGHT,
  foot: SHARES.foot * HEIGHT,
};
export const HEAD_RADIUS = (SHARES.head * HEIGHT) / 2;

/** The machine, as far as the rower touches it [C]: heights of seat, foot and handle, and the slope of the foot. */
const ANKLE: Point = { x: 0, y: 27 };
export const HIP_HEIGHT = 45;
export const HANDLE_HEIGHT = 69;
const FOOT_SLOPE = 42;
/** Soles stand this far below the ankle. */
const SOLE = 7;
/** At the catch shins stand upright; flat legs keep a little bend. */
const CATCH_HIP = Math.sqrt(LIMBS.thigh ** 2 - (ANKLE.y + LIMBS.shank - HIP_HEIGHT) ** 2);
const FLAT_HIP = Math.sqrt((LIMBS.shank + LIMBS.thigh - 0.7) ** 2 - (HIP_HEIGHT - ANKLE.y) ** 2);
/** Where the handle touches: this share up the trunk, this far in front of it. */
const RIBS = 0.46;
const CHEST = 11;

export function jointsOf([seat, lean, draw]: Pose): Joints {
  const hip = { x: CATCH_HIP + seat * (FLAT_HIP - CATCH_HIP), y: HIP_HEIGHT };
  const shoulder = along(hip, lean, LIMBS.trunk);
  const hand = handOf(hip, shoulder, lean, draw);
  return {
    ankle: ANKLE,
    ...foot(),
    knee: legTo(hip),
    hip,
    shoulder,
    elbow: meet(shoulder, hand, LIMBS.upperArm, LIMBS.forearm),
    hand,
    head: along(shoulder, lean * 0.35 + 4, LIMBS.neck),
  };
}

/** A leg whose foot stands on the floor beside the rail. */
export function floorLeg(hip: Point): { knee: Point; ankle: Point; toe: Point } {
  const ankle = { x: hip.x - 44, y: SOLE };
  return { ankle, knee: meet(ankle, hip, LIMBS.shank, LIMBS.thigh), toe: { x: ankle.x - 16, y: 4 } };
}

/** An arm whose hand lies on the thigh, as far towards the knee as it comes without stretching. */
export function restingArm({ shoulder, hip, knee }: Joints): { elbow: Point; hand: Point } {
  const hand = between(hip, knee, 0.72);
  return { hand, elbow: meet(shoulder, hand, LIMBS.upperArm, LIMBS.forearm) };
}

export function between(a: Point, b: Point, share: number): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

function legTo(hip: Point): Point {
  return meet(ANKLE, hip, LIMBS.shank, LIMBS.thigh);
}

function foot(): { heel: Point; toe: Point } {
  const heel = along(ANKLE, 180 - FOOT_SLOPE + 22, SOLE);
  return { heel, toe: along(heel, 90 - FOOT_SLOPE, LIMBS.foot) };
}

/** Straight arms reach for the handle's level; drawn ones bring it to the ribs. */
function handOf(hip: Point, shoulder: Point, lean: number, draw: number): Point {
  const reach = LIMBS.upperArm + LIMBS.forearm;
  const straight = shoulder.x - Math.sqrt(reach ** 2 - (shoulder.y - HANDLE_HEIGHT) ** 2);
  const ribs = along(hip, lean, LIMBS.trunk * RIBS).x - CHEST;
  return { x: straight + (ribs - straight) * draw, y: HANDLE_HEIGHT };
}

/** The point so far from another, in degrees from straight up, towards the feet. */
function along({ x, y }: Point, degrees: number, length: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return { x: x - Math.sin(angle) * length, y: y + Math.cos(angle) * length };
}

/** The joint between two limbs of these lengths, to the left of the way from `a` to `b`. */
function meet(a: Point, b: Point, first: number, second: number): Point {
  const distance = Math.hypot(b.x - a.x, b.y - a.y);
  const on = (first ** 2 - second ** 2 + distance ** 2) / (2 * distance);
  const off = Math.sqrt(Math.max(0, first ** 2 - on ** 2));
  const way = { x: (b.x - a.x) / distance, y: (b.y - a.y) / distance };
  return { x: a.x + way.x * on - way.y * off, y: a.y + way.y * on + way.x * off };
}
