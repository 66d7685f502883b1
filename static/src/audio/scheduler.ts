/**
 * Hands cues to the audio clock ahead of time: each wake-up schedules what has come within reach since the last.
 * How often it is woken does not matter, as long as it is before what was scheduled runs out.
 */
import type { Cue } from "../timeline/cue-window.js";
import { schedule } from "./sounds.js";

/** How far ahead while the page is in sight: survives 2 s of a blocked page (stack.md 11). */
export const AHEAD_S = 2;
/** How far ahead while it is hidden: it may then be frozen without a word. */
export const AHEAD_WHEN_HIDDEN_S = 90;
/** A cue later than this is left out: never a burst of what was missed. */
const LATE_S = 0.15;

export interface Source {
  /** The cues at or after the first moment and before the second. */
  cues(from_s: number, to_s: number): Cue[];
  /** The context's time at a moment of the session. */
  audioTime(session_s: number): number;
}

export class Scheduler {
  /** Up to this moment of the session everything is scheduled. */
  private until_s = -Infinity;
  private nodes: { node: AudioScheduledSourceNode; at_s: number }[] = [];

  /** Schedules what lies between what is scheduled already and `ahead_s` from now. */
  fill(source: Source, bus: AudioNode, now_s: number, ahead_s: number): void {
    const from_s = Math.max(this.until_s, now_s - LATE_S);
    const to_s = now_s + ahead_s;
    if (to_s <= from_s) return;
    const earliest_s = bus.context.currentTime;
    this.nodes = this.nodes.filter(({ at_s }) => at_s > earliest_s - 2);
    for (const cue of source.cues(from_s, to_s)) {
      const wanted_s = source.audioTime(cue.at_s);
      if (wanted_s < earliest_s - LATE_S) continue;
      const at_s = Math.max(wanted_s, earliest_s);
      this.nodes.push(...schedule(cue.kind, at_s, bus).map((node) => ({ node, at_s })));
    }
    this.until_s = to_s;
  }

  /** Takes back everything that has not been heard yet; from this moment of the session on, all is scheduled anew. */
  cancel(from_s: number): void {
    for (const { node } of this.nodes) {
      node.stop();
      node.disconnect();
    }
    this.nodes = [];
    this.until_s = from_s;
  }
}
