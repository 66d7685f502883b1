/**
 * The session's clock: seconds since the session was made, from anchors in two time bases. Pure; the audio clock,
 * the third base, is tied to the monotonic one in audio/clock.
 *
 * The wall clock (Date) counts through sleep but is moved by people and networks; the monotonic clock
 * (performance.now) is never moved but stands still while most devices sleep [I: w3c/hr-time#115], and starts anew
 * with every page. Between two looks both have gone on by some amount. Where they agree there is nothing to decide.
 * Where they do not, looks that came steadily mean that the device was awake, so that somebody moved the wall
 * clock; after a pause in the looks it slept, and the wall clock tells how long.
 */

/** Both clocks at one moment, in milliseconds. */
export interface Reading {
  wall_ms: number;
  mono_ms: number;
}

export interface ClockState {
  /** At the monotonic moment `anchor_ms` of this page the session was `anchor_s` seconds old. */
  anchor_s: number;
  anchor_ms: number;
  /** The last look. */
  last: Reading;
  /** What the wall clock showed at second 0, or would have, had people set it then as they have since. */
  wall_zero_ms: number;
  /** When the session was last moved nearer to the wall clock. */
  moved_ms?: number;
}

/** What a look, or coming back, has found. `seconds` of `slept` have been added to the session, the others not. */
export type Found =
  | { kind: "nothing" }
  | { kind: "slept"; seconds: number }
  | { kind: "moved"; seconds: number }
  /** Nobody can tell how much time has passed: the session goes on from where it was, and somebody is to be asked. */
  | { kind: "unknown"; seconds: number };

/** The clocks may disagree by this much between two looks before anything is made of it: they are read apart. */
const TOLERANCE_MS = 150;
/** Less than this is how networks correct a clock, not how people set one, however long nobody looked. */
const CORRECTION_MS = 2000;
/** Looks of a visible page are no further apart than this; a device that slept in between would have missed some. */
const STEADY_MS = 400;
/** Looks of a hidden page are no further apart than this. Sleep cannot move the wall clock back: that was a person. */
const STEADY_WHEN_HIDDEN_MS = 2500;
/** Off the wall clock by less, a session that keeps to it is let be: both clocks are read to a millisecond. */
const LOOSE_MS = 5;
/** Moved by this much once a second, no stroke sounds uneven. */
const STEP_MS = 5;
const STEP_EVERY_MS = 1000;
/** An absence longer than this says nothing about a session any more. */
export const TOO_LONG_S = 12 * 3600;

/** The clock of a session that is made now. */
export function startClock(now: Reading): ClockState {
  return { anchor_s: 0, anchor_ms: now.mono_ms, last: now, wall_zero_ms: now.wall_ms };
}

/** Seconds of the session at a monotonic moment of this page. */
export function sessionAt({ anchor_s, anchor_ms }: ClockState, mono_ms: number): number {
  return anchor_s + (mono_ms - anchor_ms) / 1000;
}

/** The monotonic moment of this page, in ms, at which the session is or was so old. */
export function monoAt({ anchor_s, anchor_ms }: ClockState, session_s: number): number {
  return anchor_ms + (session_s - anchor_s) * 1000;
}

/**
 * A look at both clocks: the new state, and what was found out about the time since the last look. A session that
 * `keeps` to the wall clock follows its drift and the corrections that networks make, in steps that nobody hears.
 */
export function look(state: ClockState, now: Reading, keeps = false): { state: ClockState; found: Found } {
  const found = compare(now.mono_ms - state.last.mono_ms, now.wall_ms - state.last.wall_ms);
  const anchor_s = state.anchor_s + (found.kind === "slept" ? found.seconds : 0);
  const wall_zero_ms = state.wall_zero_ms + setByPeople(found, keeps);
  const looked = { ...state, anchor_s, wall_zero_ms, last: now };
  return { state: keeps ? nearerToTheWall(looked) : looked, found };
}

/** By how many milliseconds the wall clock went another way than the session. */
function setByPeople(found: Found, keeps: boolean): number {
  if (found.kind !== "moved" && found.kind !== "unknown") return 0;
  const moved_ms = found.seconds * 1000;
  return keeps && Math.abs(moved_ms) < CORRECTION_MS ? 0 : moved_ms;
}

function nearerToTheWall(state: ClockState): ClockState {
  const { last: { wall_ms, mono_ms }, moved_ms = -Infinity } = state;
  const off_ms = wall_ms - state.wall_zero_ms - sessionAt(state, mono_ms) * 1000;
  if (Math.abs(off_ms) < LOOSE_MS || mono_ms - moved_ms < STEP_EVERY_MS) return state;
  const step_ms = Math.min(STEP_MS, Math.max(-STEP_MS, off_ms));
  return { ...state, anchor_s: state.anchor_s + step_ms / 1000, moved_ms: mono_ms };
}

/** From here on the wall clock is what the session is held to, as it stands now. */
export function fromNowByTheWall(state: ClockState): ClockState {
  return { ...state, wall_zero_ms: saved(state).wall_zero_ms };
}

function compare(mono_ms: number, wall_ms: number): Found {
  const ahead_ms = wall_ms - mono_ms;
  const seconds = ahead_ms / 1000;
  if (Math.abs(ahead_ms) <= TOLERANCE_MS) return { kind: "nothing" };
  const corrected = ahead_ms < 0 && ahead_ms > -CORRECTION_MS;
  if (corrected || mono_ms <= (ahead_ms < 0 ? STEADY_WHEN_HIDDEN_MS : STEADY_MS)) return { kind: "moved", seconds };
  return { kind: ahead_ms < 0 || seconds > TOO_LONG_S ? "unknown" : "slept", seconds };
}

/** The clock set by the wall clock alone, as it stood at second 0; never back. */
export function byWallClock(state: ClockState, wall_zero_ms: number): ClockState {
  const { mono_ms, wall_ms } = state.last;
  const anchor_s = Math.max(sessionAt(state, mono_ms), (wall_ms - wall_zero_ms) / 1000);
  return { ...state, anchor_s, anchor_ms: mono_ms, wall_zero_ms };
}

/** What another page needs to go on with the session: its age, and the wall clock then and at second 0. */
export interface Saved {
  session_s: number;
  wall_ms: number;
  wall_zero_ms: number;
}

/** The sign of life to save at this look. */
export function saved({ anchor_s, anchor_ms, last }: ClockState): Saved {
  const session_s = anchor_s + (last.mono_ms - anchor_ms) / 1000;
  return { session_s, wall_ms: last.wall_ms, wall_zero_ms: last.wall_ms - session_s * 1000 };
}

/**
 * The clock of a session that another page, or this one before a reload or a kill, has saved: only the wall clock
 * can say how long that is ago.
 */
export function resumeClock(before: Saved, now: Reading): { state: ClockState; found: Found } {
  const away_s = (now.wall_ms - before.wall_ms) / 1000;
  const known = away_s >= -CORRECTION_MS / 1000 && away_s <= TOO_LONG_S;
  const anchor_s = known ? (now.wall_ms - before.wall_zero_ms) / 1000 : before.session_s;
  const wall_zero_ms = known ? before.wall_zero_ms : now.wall_ms - before.session_s * 1000;
  const state = { anchor_s: Math.max(before.session_s, anchor_s), anchor_ms: now.mono_ms, last: now, wall_zero_ms };
  return { state, found: known ? { kind: "nothing" } : { kind: "unknown", seconds: away_s } };
}
