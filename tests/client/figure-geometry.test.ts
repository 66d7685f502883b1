/** The drawn rower: limbs of one length in every pose, in the positions that coaches teach. */
import assert from "node:assert/strict";
import { test } from "node:test";
import {
  HANDLE_HEIGHT, HEAD_RADIUS, LIMBS, floorLeg, jointsOf, restingArm, type Joints, type Point, type Pose,
} from "../../static/src/components/figure-geometry.js";
import { DRAWINGS } from "../../static/src/components/figure-poses.js";

const POSES = Object.entries(DRAWINGS).flatMap(([name, { poses }]) => poses.map((pose, index) => ({ name: `${name} ${index}`, pose })));
const GRID: Pose[] = [0, 0.25, 0.5, 0.75, 1].flatMap((seat) => [-22, -10, 0, 14, 28].flatMap((lean) => [0, 0.5, 1].map((draw): Pose => [seat, lean, draw])));

const far = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);
const near = (actual: number, expected: number, what: string) => assert.ok(Math.abs(actual - expected) < 1e-9, `${what}: ${actual}, not ${expected}`);
const now = (name: string): Joints => jointsOf(DRAWINGS[name]!.poses.at(-1)!);

function limbsOf(at: Joints): Record<keyof typeof LIMBS, number> {
  return {
    shank: far(at.ankle, at.knee),
    thigh: far(at.knee, at.hip),
    trunk: far(at.hip, at.shoulder),
    upperArm: far(at.shoulder, at.elbow),
    forearm: far(at.elbow, at.hand),
    neck: far(at.shoulder, at.head),
    foot: far(at.heel, at.toe),
  };
}

test("every limb keeps its length in every drawn pose and in all between", () => {
  for (const pose of [...POSES.map(({ pose }) => pose), ...GRID]) {
    const found = limbsOf(jointsOf(pose));
    for (const [limb, length] of Object.entries(found)) near(length, LIMBS[limb as keyof typeof LIMBS], `${limb} at ${pose}`);
  }
});

// Drillis and Contini 1966, as in Winter, Biomechanics and Motor Control of Human Movement: shares of body height, from memory.
test("the limbs are those of a person", () => {
  const height = (share: number) => share * 175;
  near(LIMBS.shank, height(0.246), "shank");
  near(LIMBS.thigh, height(0.245), "thigh");
  near(LIMBS.trunk, height(0.288), "trunk");
  near(LIMBS.upperArm, height(0.186), "upper arm");
  near(LIMBS.forearm, height(0.146 + 0.108 / 2), "forearm and half a hand");
  near(LIMBS.foot, height(0.152), "foot");
  near(LIMBS.neck + HEAD_RADIUS, height(0.182), "neck and head");
});

test("the other leg on the floor and the other arm on the thigh are as long as their fellows", () => {
  const foot = now("single foot");
  const leg = floorLeg(foot.hip);
  near(far(foot.hip, leg.knee), LIMBS.thigh, "thigh");
  near(far(leg.knee, leg.ankle), LIMBS.shank, "shank");
  const arm = now("single arm");
  const { elbow, hand } = restingArm(arm);
  near(far(arm.shoulder, elbow), LIMBS.upperArm, "upper arm");
  near(far(elbow, hand), LIMBS.forearm, "forearm");
});

// What follows is common practice of coaches, without a source.
test("at the catch shins stand upright, arms are straight, the body is tipped forward", () => {
  const at = now("catch");
  near(at.knee.x, at.ankle.x, "the knee over the ankle");
  near(far(at.shoulder, at.hand), LIMBS.upperArm + LIMBS.forearm, "straight arms");
  assert.ok(at.shoulder.x < at.hip.x);
  assert.ok(at.hand.x < at.toe.x);
});

test("in the drive legs push while arms are straight and the body is still tipped forward", () => {
  const at = now("drive");
  near(far(at.shoulder, at.hand), LIMBS.upperArm + LIMBS.forearm, "straight arms");
  assert.ok(at.shoulder.x < at.hip.x);
  assert.ok(now("catch").hip.x < at.hip.x && at.hip.x < now("finish").hip.x);
});

test("at the finish legs are flat, the body is behind upright, elbows are past it", () => {
  const at = now("finish");
  assert.ok(far(at.ankle, at.hip) > 0.99 * (LIMBS.shank + LIMBS.thigh));
  assert.ok(at.shoulder.x > at.hip.x);
  assert.ok(at.elbow.x > at.shoulder.x);
  assert.ok(at.hand.x > at.knee.x);
});

test("in the recovery hands are past the knees before these have risen, and the body is over", () => {
  const at = now("recovery");
  assert.ok(at.hand.x < at.knee.x);
  assert.ok(at.knee.y < at.hand.y);
  assert.ok(at.shoulder.x < at.hip.x);
});

test("the handle stays on one level, above the knees, wherever a drawing has it", () => {
  for (const { name, pose } of POSES) {
    const at = jointsOf(pose);
    assert.equal(at.hand.y, HANDLE_HEIGHT, name);
    if (Math.abs(at.hand.x - at.knee.x) < 8) assert.ok(at.knee.y < at.hand.y - 6, name);
  }
});

test("everything stays inside the picture", () => {
  for (const { name, pose } of POSES) {
    const at = jointsOf(pose);
    for (const { x, y } of Object.values(at)) assert.ok(x > -118 && x < 126 && y > 4, name);
    assert.ok(at.head.x + HEAD_RADIUS < 128 && at.head.y + HEAD_RADIUS < 128, name);
  }
});

test("no two drawings are alike", () => {
  const drawn = Object.values(DRAWINGS).map((drawing) => JSON.stringify(drawing));
  assert.equal(new Set(drawn).size, drawn.length);
});
