/** When the screen of a session looks different again. The rail is not asked: the browser moves it by itself. */
import type { Snapshot } from "../state/snapshot.js";

/** For all that has no moment of its own here, such as a call. */
const AT_LEAST_EVERY_S = 0.1;

/** Seconds until a figure or the phase of the stroke is another one; 0 to look in every frame. */
export function secondsToNextPaint(snapshot: Snapshot): number {
  const { phase, elapsed_s, left_s, beat } = snapshot;
  if (phase === "count-in") return 0;
  if (!moves(snapshot)) return AT_LEAST_EVERY_S;
  const phaseEnds_s = beat ? ((beat.phase === "drive" ? beat.drive : 1) - beat.share) * beat.stroke_s : Infinity;
  const secondEnds_s = Math.min(1 - (elapsed_s % 1), left_s === null ? Infinity : left_s % 1);
  return Math.min(AT_LEAST_EVERY_S, phaseEnds_s, secondEnds_s);
}

/** Whether strokes go by: not while it is held, or a question stands. */
export function moves({ phase }: Snapshot): boolean {
  return phase === "running" || phase === "waiting";
}

/**
 * Paints again and again, whenever something will have changed, and not while nobody sees it. Not by asking for a
 * frame, which costs six times as much as finding that nothing has to be drawn.
 */
export class Painting {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private frame = 0;

  /** `paint` tells after how many seconds it is to be called again. */
  constructor(private readonly paint: () => number) {}

  start(): void {
    this.frame = requestAnimationFrame(this.next);
  }

  stop(): void {
    clearTimeout(this.timer);
    cancelAnimationFrame(this.frame);
  }

  private readonly next = (): void => {
    const wait_s = this.paint();
    if (wait_s <= 0 || document.hidden) return this.start();
    this.timer = setTimeout(this.next, wait_s * 1000);
  };
}
