/** The sound of a session: cues on their way to the loudspeaker, tied to the session's clock. */
import { AudioTie, measure } from "../audio/clock.js";
import { LIMITER_DELAY_S, Output } from "../audio/context.js";
import { AHEAD_S, AHEAD_WHEN_HIDDEN_S, Scheduler, type Source } from "../audio/scheduler.js";
import type { Cue } from "../timeline/cue-window.js";
import type { SoundState } from "./snapshot.js";

/** A shift by less is none that anybody hears. */
const HEARD_MS = 10;

/** What the sound has to know of the session. */
export interface Heard {
  /** The cues of a span of the session, or none while it is silent. */
  cues(from_s: number, to_s: number): Cue[];
  /** Seconds of the session at the last look. */
  now_s(): number;
  /** The moment of the monotonic clock, in ms, at which the session is or was so old. */
  monoAt(session_s: number): number;
}

export class SessionSound {
  private readonly output = new Output();
  private readonly tie = new AudioTie();
  private readonly scheduler = new Scheduler();
  /** From 0 to 1. */
  volume = 1;
  private wanted = true;
  private there = false;

  constructor(private readonly heard: Heard) {}

  get state(): SoundState {
    if (!this.wanted) return "off";
    return this.there ? "on" : "lost";
  }

  /** In a tap: opens the sound, or brings it back. */
  async wake(): Promise<void> {
    if (!this.wanted) return;
    const { on, renewed } = await this.output.wake();
    this.there = on;
    if (on) this.again(renewed);
  }

  /** Whether sound is wanted, and how loud, from 0 to 1. */
  set(wanted: boolean, volume: number): void {
    this.wanted = wanted;
    this.volume = volume;
    this.output.setVolume(volume);
    if (!wanted) this.scheduler.cancel(this.heard.now_s());
  }

  /** The session has changed at a moment: what was scheduled after it no longer holds. */
  replan(from_s: number): void {
    this.scheduler.cancel(from_s);
    this.fill();
  }

  /** The session has been found so many ms later or earlier on the monotonic clock than was scheduled for. */
  shifted(by_ms: number): void {
    const { context } = this.output;
    if (!by_ms || !context) return;
    this.scheduler.retune(context, Math.abs(by_ms) < HEARD_MS ? "moved" : "jumped");
    this.fill();
  }

  /** A wake-up: looks whether sound is there, follows its clock, schedules what has come within reach. */
  tick(): void {
    if (!this.output.context) return;
    const now_ms = performance.now();
    const before = this.there;
    this.there = this.output.isOn(now_ms);
    if (!this.there) return this.lost(before);
    if (!before) return this.again(true);
    const followed = this.tie.follow(measure(this.output.context, now_ms), now_ms);
    if (followed !== "same") this.scheduler.retune(this.output.context, followed);
    this.fill();
  }

  /** The page is about to stand still, and its audio clock too: what is scheduled would be heard when both go on. */
  hush(): void {
    this.scheduler.cancel(this.heard.now_s());
  }

  close(): void {
    this.scheduler.cancel(-Infinity);
    this.output.close();
    this.tie.reset();
    this.there = false;
  }

  /** What was scheduled would be heard late, when the clock goes on. */
  private lost(before: boolean): void {
    if (before) this.scheduler.cancel(this.heard.now_s());
    this.output.nudge();
  }

  /** Schedules everything anew; `untied` when the audio clock has stood still, or is another one. */
  private again(untied = false): void {
    const { context } = this.output;
    const now_ms = performance.now();
    if (untied) this.tie.reset();
    if (context && !this.tie.known) this.tie.follow(measure(context, now_ms), now_ms);
    this.replan(this.heard.now_s());
  }

  private fill(): void {
    const { bus } = this.output;
    if (!bus || !this.wanted || !this.there || !this.tie.known) return;
    const ahead_s = globalThis.document?.hidden ? AHEAD_WHEN_HIDDEN_S : AHEAD_S;
    this.scheduler.fill(this.source(), bus, this.heard.now_s(), ahead_s);
  }

  private source(): Source {
    return {
      cues: (from_s, to_s) => this.heard.cues(from_s, to_s),
      audioTime: (session_s) => this.tie.audioTime(this.heard.monoAt(session_s)) - LIMITER_DELAY_S,
    };
  }
}
