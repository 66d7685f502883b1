/** The course of the rail's seat through one stroke, as keyframes (Web Animations): to the finish and back. */

/** A body speeds up and slows down within each phase as half a wave does; the phases keep their exact length. */
const HALF_A_WAVE = "cubic-bezier(0.364, 0, 0.636, 1)";

/** Where the seat is, 0 at the catch and 1 at the finish; `drive` is the share of the stroke that is drive. */
export function seatCourse(drive: number, calm: boolean): Keyframe[] {
  const at = (along: number) => `translateX(${along * 100}%)`;
  if (calm) return steps([0, at(1)], [drive, at(0.5)], [(1 + drive) / 2, at(0)]);
  return [
    { offset: 0, transform: at(0), easing: HALF_A_WAVE },
    { offset: drive, transform: at(1), easing: HALF_A_WAVE },
    { offset: 1, transform: at(0) },
  ];
}

/** What of the track the drive has swept over; nothing in the recovery. */
export function sweptCourse(drive: number, calm: boolean): Keyframe[] {
  const over = (along: number) => `scaleX(${along})`;
  if (calm) return steps([0, over(1)], [drive, over(0)]);
  return [
    { offset: 0, transform: over(0), easing: HALF_A_WAVE },
    { offset: drive, transform: over(1), easing: "step-start" },
    { offset: 1, transform: over(0) },
  ];
}

function steps(...moments: [number, string][]): Keyframe[] {
  const kept = moments.map(([offset, transform]) => ({ offset, transform, easing: "step-end" }));
  return [...kept, { offset: 1, transform: moments.at(-1)![1] }];
}
