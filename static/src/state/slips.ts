/** Presses that a wet finger or a worn switch makes twice: the second is none. */

/** Much less than somebody takes who means it. */
const SLIP_MS = 300;

export class Slips {
  private last: { what: string; at_ms: number } | undefined;

  /** Whether this press, at a monotonic time, only repeats the one before. */
  isOne(what: string, at_ms: number): boolean {
    if (this.last?.what === what && at_ms - this.last.at_ms < SLIP_MS) return true;
    this.last = { what, at_ms };
    return false;
  }
}
