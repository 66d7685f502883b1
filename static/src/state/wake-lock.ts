/** Keeps the screen on while a session wants it. The lock is gone whenever the page is hidden, so it is taken again. */
import type { ScreenState } from "./snapshot.js";

export class ScreenLock {
  private sentinel: WakeLockSentinel | undefined;
  private wanted = false;

  constructor(private readonly changed: () => void) {}

  /** True to the lock: `on` only while the system really holds it. */
  get state(): ScreenState {
    if (this.sentinel) return "on";
    return wakeLock() ? "off" : "impossible";
  }

  /** Asks for the lock, or lets it go. Some engines grant it only in a tap. */
  async want(wanted: boolean): Promise<void> {
    this.wanted = wanted;
    if (wanted) return this.take();
    const held = this.sentinel;
    this.sentinel = undefined;
    await held?.release().catch(() => undefined);
  }

  /** To be called when the page comes into sight. */
  async seen(): Promise<void> {
    if (this.wanted) await this.take();
  }

  private async take(): Promise<void> {
    if (this.sentinel) return;
    const sentinel = await wakeLock()?.request("screen").catch(() => undefined);
    if (!sentinel) return;
    if (!this.wanted || this.sentinel) return void sentinel.release().catch(() => undefined);
    this.sentinel = sentinel;
    sentinel.addEventListener("release", () => this.lost(sentinel));
    this.changed();
  }

  private lost(sentinel: WakeLockSentinel): void {
    if (this.sentinel === sentinel) this.sentinel = undefined;
    this.changed();
  }
}

function wakeLock(): WakeLock | undefined {
  return (globalThis.navigator as { wakeLock?: WakeLock } | undefined)?.wakeLock;
}
