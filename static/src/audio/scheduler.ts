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
/** No cue rings longer than this. */
const RINGS_S = 2;
/** What begins this soon may be on its way already; scheduled anew it could be heard twice. */
const ON_ITS_WAY_S = 0.05;

export interface Source {
  /** The cues at or after the first moment and before the second. */
  cues(from_s: number, to_s: number): Cue[];
  /** The context's time at a moment of the session. */
  audioTime(session_s: number): number;
}

/** A cue on the audio clock: its moment there and in the session, and what has to be stopped to take it back. */
interface Scheduled {
  at_s: number;
  cue_s: number;
  nodes: AudioScheduledSourceNode[];
}

export class Scheduler {
  /** Up to this moment of the session everything is scheduled. */
  private until_s = -Infinity;
  private scheduled: Scheduled[] = [];

  /** Schedules what lies between what is scheduled already and `ahead_s` from now. */
  fill(source: Source, bus: AudioNode, now_s: number, ahead_s: number): void {
    const from_s = Math.max(this.until_s, now_s - LATE_S);
    const to_s = now_s + ahead_s;
    if (to_s <= from_s) return;
    const earliest_s = bus.context.currentTime;
    this.scheduled = this.scheduled.filter(({ at_s }) => at_s > earliest_s - RINGS_S);
    for (const cue of source.cues(from_s, to_s)) {
      const wanted_s = source.audioTime(cue.at_s);
      if (wanted_s < earliest_s - LATE_S) continue;
      const at_s = Math.max(wanted_s, earliest_s);
      this.scheduled.push({ at_s, cue_s: cue.at_s, nodes: schedule(cue.kind, at_s, bus) });
    }
    this.until_s = to_s;
  }

  /**
   * The audio clock has another place in the session than it had: what has not begun yet is to be scheduled anew.
   * Where it has only moved a little, what begins at once is left as it is.
   */
  retune(context: BaseAudioContext, followed: "moved" | "jumped"): void {
    const from_s = context.currentTime + (followed === "moved" ? ON_ITS_WAY_S : 0);
    const later = this.scheduled.filter(({ at_s }) => at_s >= from_s);
    this.scheduled = this.scheduled.filter(({ at_s }) => at_s < from_s);
    later.forEach(takeBack);
    this.until_s = later.reduce((until_s, { cue_s }) => Math.min(until_s, cue_s), this.until_s);
  }

  /** Takes back everything that can still be heard; from this moment of the session on, all is scheduled anew. */
  cancel(from_s: number): void {
    this.scheduled.forEach(takeBack);
    this.scheduled = [];
    this.until_s = from_s;
  }
}

function takeBack({ nodes }: Scheduled): void {
  for (const node of nodes) {
    node.stop();
    node.disconnect();
  }
}
