/** Presses that a wet finger or a worn switch makes twice: the second is none. */

import type { Reading } from "./session-clock.js";

/** In how many milliseconds; much less than somebody takes who means it. Done says what was rowed, so it has longer. */
const SLIP_MS = { hold: 300, back: 300, skip: 300, extend: 300, done: 1000 };

/** Done may bring another screen, with another button under the finger. */
const OTHER_SCREEN_MS = 300;

/** What is pressed; Hold and Go on are the same button. */
export type Pressed = keyof typeof SLIP_MS;

export class Slips {
  private last: { what: Pressed; at: Reading } | undefined;

  /** Whether this press only repeats the one before: by both clocks, since one stands still while a device sleeps. */
  isOne(what: Pressed, at: Reading): boolean {
    const { last } = this;
    const within_ms = last?.what === what ? SLIP_MS[what] : last?.what === "done" ? OTHER_SCREEN_MS : 0;
    if (last && apart_ms(last.at, at) < within_ms) return true;
    this.last = { what, at };
    return false;
  }
}

function apart_ms(before: Reading, now: Reading): number {
  return Math.max(now.mono_ms - before.mono_ms, Math.abs(now.wall_ms - before.wall_ms));
}
