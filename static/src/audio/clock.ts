/**
 * The tie between the monotonic clock and the audio clock, measured again and again and never added up.
 *
 * Single measurements jitter by milliseconds and wander by half of one, so a tie that followed them would shake the
 * beat. This one is a straight line that stands still until the middle of the last measurements is really off; then
 * it moves by a step too small to hear. Being off that soon again is a drift, and the line takes on its slope. Only
 * what is far off, as after a pause of the sound, makes it jump.
 */

/** What a measurement has led to: where the line has `moved` or `jumped`, what was scheduled is to be put right. */
export type Followed = "same" | "moved" | "jumped";

/** The middle one of so many tells what is off by little; there are one to four a second. */
const MEASUREMENTS = 20;
/** At first the line goes to the middle at once: seconds pass between opening the sound and the first cue. */
const SETTLING = 12;
const SETTLED_S = 0.0003;
/** More than measurements wander, less than anybody notices between ear and eye. */
const LOOSE_S = 0.002;
/** What is off by more was no drift, which would have been put right before. */
const DRIFTED_S = 0.004;
/** Moved by this much once a second, no beat sounds uneven: people notice 6 ms and more [M]. */
const STEP_S = 0.002;
const STEP_MS = 900;
/** About a frame: more would be seen. Two in a row that say the same are believed, or one after a long absence. */
const FAR_OFF_S = 0.015;
const THE_SAME_S = 0.005;
const ABSENT_MS = 2000;

/** To learn the drift, one measurement in 5 s is kept for 10 minutes. */
const KEPT_MS = 5000;
const KEPT = 120;
/** How far one is off, beside how far clocks drift (some 50 millionths), in seconds squared. */
const DOUBT_S2 = (0.001 / 50e-6) ** 2;
const MOST_DRIFT = 300e-6;

/** Audio time less monotonic time, at a moment of the monotonic clock. */
interface Measurement {
  at_ms: number;
  offset_s: number;
}

export class AudioTie {
  private line: Measurement | null = null;
  /** How much the offset grows in a second. */
  private drift = 0;
  private recent: Measurement[] = [];
  private kept: Measurement[] = [];
  private settling = SETTLING;
  private stepped_ms = -Infinity;

  /** What the context's clock will show when something is heard at this moment of the monotonic clock. */
  audioTime(mono_ms: number): number {
    return mono_ms / 1000 + this.offsetAt(mono_ms);
  }

  /** Whether there has been a measurement. */
  get known(): boolean {
    return this.line !== null;
  }

  /** Takes in a measurement, made at `now_ms`: `offset_s` is audio time less monotonic time. */
  follow(offset_s: number, now_ms: number): Followed {
    if (!this.line) return this.begin(offset_s, now_ms);
    if (this.isFarOff(offset_s, now_ms)) return this.jump(offset_s, now_ms);
    this.recent = [...this.recent, { at_ms: now_ms, offset_s }].slice(-MEASUREMENTS);
    const off_s = this.middleOff(this.recent);
    if (this.settling > 0) return this.settle(off_s, now_ms);
    if (Math.abs(off_s) > DRIFTED_S) this.kept = [];
    this.keep(off_s, now_ms);
    return Math.abs(off_s) > LOOSE_S && now_ms - this.stepped_ms >= STEP_MS ? this.step(off_s, now_ms) : "same";
  }

  /** For a clock that has stood still, or is another one: forgets where it was, though not how it drifts. */
  reset(): void {
    this.line = null;
  }

  private begin(offset_s: number, now_ms: number): Followed {
    this.line = { at_ms: now_ms, offset_s };
    this.recent = [this.line];
    this.kept = [];
    this.settling = SETTLING;
    return "same";
  }

  private isFarOff(offset_s: number, now_ms: number): boolean {
    if (Math.abs(offset_s - this.offsetAt(now_ms)) < FAR_OFF_S) return false;
    const last = this.recent.at(-1)!;
    return Math.abs(offset_s - last.offset_s) < THE_SAME_S || now_ms - last.at_ms > ABSENT_MS;
  }

  private jump(offset_s: number, now_ms: number): Followed {
    this.begin(offset_s, now_ms);
    return "jumped";
  }

  private settle(off_s: number, now_ms: number): Followed {
    this.settling -= 1;
    return Math.abs(off_s) > SETTLED_S ? this.move(off_s, now_ms) : "same";
  }

  private step(off_s: number, now_ms: number): Followed {
    this.stepped_ms = now_ms;
    const moved = this.move(Math.min(STEP_S, Math.max(-STEP_S, off_s)), now_ms);
    this.drift = driftOf(this.kept) ?? this.drift;
    return moved;
  }

  private move(by_s: number, now_ms: number): Followed {
    this.line = { at_ms: now_ms, offset_s: this.offsetAt(now_ms) + by_s };
    return "moved";
  }

  private keep(off_s: number, now_ms: number): void {
    const last = this.kept.at(-1);
    if (last && now_ms - last.at_ms < KEPT_MS) return;
    this.kept = [...this.kept, { at_ms: now_ms, offset_s: this.offsetAt(now_ms) + off_s }].slice(-KEPT);
  }

  private offsetAt(mono_ms: number): number {
    return this.line ? this.line.offset_s + ((mono_ms - this.line.at_ms) / 1000) * this.drift : 0;
  }

  /** How far the middle one of these measurements is off the line. */
  private middleOff(measurements: readonly Measurement[]): number {
    return middle(measurements.map(({ at_ms, offset_s }) => offset_s - this.offsetAt(at_ms)));
  }
}

/**
 * Whether a browser may be asked how late its sound is. Firefox on Linux may then wait for its sound thread while that
 * waits for the page, and the whole page stands still: there the picture goes by when sound leaves the graph.
 */
export function tellsItsLatency(user_agent: string): boolean {
  return !/Linux.*Firefox/.test(user_agent);
}

const TELLS = tellsItsLatency(globalThis.navigator?.userAgent ?? "");

/** Audio time less monotonic time, in seconds, for what leaves the context's graph and is heard now. */
export function measure(context: AudioContext, now_ms: number): number {
  if (!TELLS) return context.currentTime - (context.baseLatency || 0) - now_ms / 1000;
  const { contextTime, performanceTime } = context.getOutputTimestamp?.() ?? {};
  const fresh = contextTime && performanceTime && Math.abs(now_ms - performanceTime) < 1000;
  if (fresh) return contextTime - performanceTime / 1000;
  return context.currentTime - (context.outputLatency || context.baseLatency || 0) - now_ms / 1000;
}

/** The slope of the straight line nearest to these measurements, the less believed the shorter they last. */
function driftOf(kept: readonly Measurement[]): number | undefined {
  if (kept.length < 3) return undefined;
  const [at_s, offset_s] = [mean(kept.map(({ at_ms }) => at_ms / 1000)), mean(kept.map((each) => each.offset_s))];
  let [together, spread] = [0, DOUBT_S2];
  for (const each of kept) {
    together += (each.at_ms / 1000 - at_s) * (each.offset_s - offset_s);
    spread += (each.at_ms / 1000 - at_s) ** 2;
  }
  return Math.min(MOST_DRIFT, Math.max(-MOST_DRIFT, together / spread));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
