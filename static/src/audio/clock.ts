/**
 * The tie between the monotonic clock and the audio clock, measured again and again and never added up.
 *
 * Single measurements jitter by milliseconds, and the two clocks drift apart by some 80 millionths [M, stack.md 11].
 * So the tie follows the middle of the last measurements in steps too small to be heard; only when it is far off,
 * as after a pause of the sound, does it jump, and what was scheduled has to be scheduled anew.
 */

const MEASUREMENTS = 9;
/** Four times the worst drift, so that it keeps up and yet averages over many measurements. */
const STEP_S_PER_S = 0.0003;
const FAR_OFF_S = 0.04;

export class AudioTie {
  private recent: number[] = [];
  private offset_s: number | null = null;
  private steered_ms = 0;

  /** What the context's clock will show when something is heard at this moment of the monotonic clock. */
  audioTime(mono_ms: number): number {
    return mono_ms / 1000 + (this.offset_s ?? 0);
  }

  /** Whether there has been a measurement. */
  get known(): boolean {
    return this.offset_s !== null;
  }

  /** Takes a measurement in; true when the tie has jumped. `measured_s` is audio time less monotonic time. */
  follow(measured_s: number, now_ms: number): boolean {
    this.recent = [...this.recent, measured_s].slice(-MEASUREMENTS);
    const wanted_s = middle(this.recent);
    const jumps = this.offset_s === null || Math.abs(wanted_s - this.offset_s) > FAR_OFF_S;
    if (jumps) return this.jump(measured_s, now_ms);
    const most_s = ((now_ms - this.steered_ms) / 1000) * STEP_S_PER_S;
    this.offset_s = this.offset_s! + Math.min(most_s, Math.max(-most_s, wanted_s - this.offset_s!));
    this.steered_ms = now_ms;
    return false;
  }

  /** Forgets everything: for a new context, which has a clock of its own. */
  reset(): void {
    this.recent = [];
    this.offset_s = null;
  }

  private jump(measured_s: number, now_ms: number): boolean {
    const first = this.offset_s === null;
    this.recent = [measured_s];
    this.offset_s = measured_s;
    this.steered_ms = now_ms;
    return !first;
  }
}

/** Audio time less monotonic time, in seconds, for what is heard now; `now_ms` is performance.now(). */
export function measure(context: AudioContext, now_ms: number): number {
  const { contextTime, performanceTime } = context.getOutputTimestamp?.() ?? {};
  const fresh = contextTime && performanceTime && Math.abs(now_ms - performanceTime) < 1000;
  if (fresh) return contextTime - performanceTime / 1000;
  return context.currentTime - (context.outputLatency || context.baseLatency || 0) - now_ms / 1000;
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
