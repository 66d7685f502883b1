/**
 * The way to the loudspeaker: opened in a tap, watched, and built anew when its clock has stopped.
 *
 * Phones take the sound away for calls, locks and other apps ("interrupted"), and may hand back a context that says
 * "running" while its clock stands still. So only a clock that moves counts as sound.
 */
import { keepAwake } from "./sounds.js";

/** A clock that has not moved for this long has stopped. */
const STOPPED_MS = 300;

/**
 * A context that says it runs and stands still at so many looks in a row is given up. One alone may be a device that
 * has just woken: its sound begins a moment after it.
 */
const STILL_LOOKS = 4;

/** Sounds that meet do not crackle. It looks ahead, so that everything comes out so much later. */
export const LIMITER_DELAY_S = 0.006;
const LIMITER = { threshold: -6, knee: 0, ratio: 20, attack: 0.001, release: 0.05 };

interface Open {
  context: AudioContext;
  volume: GainNode;
  last_s: number;
  moved_ms: number;
  /** How many looks in a row have found it running and standing still. */
  still: number;
}

export class Output {
  private open: Open | undefined;
  private level = 1;

  /** Where sounds are connected; null before the first tap and after `close`. */
  get bus(): AudioNode | null {
    return this.open?.volume ?? null;
  }

  get context(): AudioContext | null {
    return this.open?.context ?? null;
  }

  /**
   * Opens the way to the loudspeaker, or mends it. To be called in a tap, before anything is awaited. The answer
   * says whether sound is there, and whether its clock is another one than before.
   */
  async wake(): Promise<{ on: boolean; renewed: boolean }> {
    if (!("AudioContext" in globalThis)) return { on: false, renewed: false };
    const before = this.open?.context;
    if (!before || before.state === "closed") this.build();
    if (await this.moves()) return { on: true, renewed: this.open?.context !== before };
    if (!before) return { on: false, renewed: true };
    this.close();
    this.build();
    return { on: await this.moves(), renewed: true };
  }

  /** Whether sound is there at this moment of the monotonic clock; to be asked again and again. */
  isOn(now_ms: number): boolean {
    const open = this.open;
    if (!open) return false;
    const { currentTime } = open.context;
    if (currentTime !== open.last_s) [open.last_s, open.moved_ms] = [currentTime, now_ms];
    const still = now_ms - open.moved_ms > STOPPED_MS;
    open.still = still && open.context.state === "running" ? open.still + 1 : 0;
    return open.context.state === "running" && !still;
  }

  /**
   * Tries to go on without a tap, at a look that has found no sound: many browsers allow it on a page that was tapped
   * before. While a call has the sound, nothing is asked of it: that is what leaves a context standing still.
   */
  nudge(): void {
    const open = this.open;
    if (!open) return;
    const { state } = open.context;
    if (state === "suspended") return resume(open.context);
    if (state !== "closed" && open.still < STILL_LOOKS) return;
    this.close();
    resume(this.build());
  }

  /** From 0 to 1. */
  setVolume(level: number): void {
    this.level = level;
    if (this.open) this.open.volume.gain.value = loudness(level);
  }

  close(): void {
    void this.open?.context.close().catch(() => undefined);
    this.open = undefined;
  }

  private build(): AudioContext {
    soundThroughTheSilentSwitch();
    const context = new AudioContext({ latencyHint: "interactive" });
    const limiter = new DynamicsCompressorNode(context, LIMITER);
    const volume = new GainNode(context, { gain: loudness(this.level) });
    volume.connect(limiter).connect(context.destination);
    keepAwake(limiter);
    this.open = { context, volume, last_s: context.currentTime, moved_ms: performance.now(), still: 0 };
    return context;
  }

  private async moves(): Promise<boolean> {
    const context = this.open!.context;
    const resumed = context.state === "running" ? undefined : context.resume().catch(() => undefined);
    const from_s = context.currentTime;
    const until_ms = performance.now() + STOPPED_MS;
    await Promise.race([resumed, pause(STOPPED_MS)]);
    while (context.currentTime === from_s && performance.now() < until_ms) await pause(20);
    return context.state === "running" && context.currentTime > from_s;
  }
}

function resume(context: AudioContext): void {
  if (context.state === "suspended") context.resume().catch(() => undefined);
}

/** Ears hear in steps of decibels: the square makes the middle of a slider sound like the middle. */
function loudness(level: number): number {
  return level * level;
}

/** On iOS, Web Audio obeys the silent switch unless the page says that it is there to be heard. */
function soundThroughTheSilentSwitch(): void {
  const { audioSession } = navigator as { audioSession?: { type: string } };
  if (audioSession) audioSession.type = "playback";
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds));
}
