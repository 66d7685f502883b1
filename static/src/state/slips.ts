/** Presses that a wet finger or a worn switch makes twice: the second is none. */

/** In how many milliseconds; much less than somebody takes who means it. Done says what was rowed, so it has longer. */
const SLIP_MS = { hold: 300, back: 300, skip: 300, extend: 300, done: 1000 };

/** What is pressed; Hold and Go on are the same button. */
export type Pressed = keyof typeof SLIP_MS;

export class Slips {
  private last: { what: Pressed; at_ms: number } | undefined;

  /** Whether this press, at a monotonic time, only repeats the one before. */
  isOne(what: Pressed, at_ms: number): boolean {
    if (this.last?.what === what && at_ms - this.last.at_ms < SLIP_MS[what]) return true;
    this.last = { what, at_ms };
    return false;
  }
}
