/** What is felt in the hand where the device can shake: changes, the last strokes, count-ins and the end. */
import type { Cue, CueKind } from "../timeline/cue-window.js";

/** What the hand has to know of the session. */
export interface Felt {
  /** The cues of a span of the session, or none while nothing is to be felt. */
  cues(from_s: number, to_s: number): Cue[];
}

/** Milliseconds of shaking and of stillness in turn. Told apart by number and length, never by strength. */
const PATTERNS: Partial<Record<CueKind, readonly number[]>> = {
  "second-last": [60, 90, 60],
  last: [60, 90, 60, 90, 60],
  change: [400],
  "count-in": [40],
  end: [400, 150, 400, 150, 400],
};

export function canShake(): boolean {
  return typeof navigator !== "undefined" && "vibrate" in navigator;
}

export class SessionTouch {
  private until_s: number | undefined;
  private timers: ReturnType<typeof setTimeout>[] = [];

  constructor(
    private readonly felt: Felt,
    private readonly shake: (pattern: number[]) => void = (pattern) => void (canShake() && navigator.vibrate(pattern)),
  ) {}

  /** A wake-up at a moment of the session: sets out what comes before the next one. */
  tick(now_s: number, ahead_s: number): void {
    const from_s = Math.max(this.until_s ?? now_s, now_s);
    const to_s = now_s + ahead_s;
    if (to_s <= from_s) return;
    this.until_s = to_s;
    for (const { kind, at_s } of this.felt.cues(from_s, to_s)) {
      const pattern = PATTERNS[kind];
      if (pattern) this.timers.push(setTimeout(() => this.shake([...pattern]), Math.max(0, at_s - now_s) * 1000));
    }
  }

  /** The session has changed: what was set out no longer holds. */
  replan(now_s: number): void {
    this.timers.forEach(clearTimeout);
    this.timers = [];
    this.until_s = now_s;
  }
}
