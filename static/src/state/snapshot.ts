/** What the screens see of a session at one moment. */
import type { LedBy } from "../data/sessions.js";
import type { Beat } from "../timeline/position.js";
import type { Piece, Sums } from "../timeline/rowed.js";
import type { Segment, Timeline } from "../plan/types.js";

/**
 * Which screen is due:
 * `none` no session; `count-in` seconds before the first catch; `running`; `waiting` the segment is over by the
 * clock or estimate and goes on only by a tap (the beat of a metre block runs on); `held`; `asking` after a long
 * absence, see `absence`; `finished`, see `done`; `elsewhere` another tab has the session: `takeOver()`.
 */
export type Phase = "none" | "count-in" | "running" | "waiting" | "held" | "asking" | "finished" | "elsewhere";

/** `lost`: it should be heard and is not; a tap that calls `wakeSound()` brings it back. */
export type SoundState = "on" | "off" | "lost";

/**
 * `memory`: nothing can be stored on this device; `full`: there is no room left on it; `refused`: storage does not
 * answer just now. In the last two cases it is tried again and again.
 */
export type Kept = "disk" | "memory" | "full" | "refused";

/** `off`: refused, or not asked for yet; `impossible`: this browser or connection has none; `not-wanted`: by choice. */
export type ScreenState = "on" | "off" | "impossible" | "not-wanted";

export interface Absence {
  /** How long the app was away. */
  away_s: number;
  /**
   * `choose`: all three answers stand; `unsure`: the device's clock was set back meanwhile, so that nobody knows how
   * long it was, and there is no going on by the clock; `too-old`: over 12 h, only end and discard.
   */
  kind: "choose" | "unsure" | "too-old";
}

/** Something to tell the athlete once; `number` grows with each, so that a screen sees that it is new. */
export interface Notice {
  number: number;
  /** The device slept or the app was frozen, and the session's clock has run on; or the device's clock was moved. */
  kind: "was-away" | "clock-moved";
  seconds: number;
}

export interface Snapshot {
  /** Grows whenever anything but the passing of time has changed: draw everything anew only then. */
  readonly version: number;
  readonly phase: Phase;
  /** It stands still by somebody's wish, also behind a question. */
  readonly held: boolean;
  /** The id of the session, or null without one. */
  readonly session: string | null;
  /** As it runs now, with what has been added to it. */
  readonly timeline: Timeline | null;
  /** The screen that leads a room through it, or null where one rows. */
  readonly led_by: LedBy | null;
  /** The segment being rowed, or the one that a count-in leads to. */
  readonly index: number;
  readonly segment: Segment | null;
  readonly next: Segment | null;
  /** Seconds since the segment's start. */
  readonly elapsed_s: number;
  /** Seconds to its end; null where no end is known (open, past the estimate, or only a guess). */
  readonly left_s: number | null;
  /** Strokes finished in this segment; null without a beat. */
  readonly stroke: number | null;
  readonly strokes_left: number | null;
  /** Where in the stroke we are; null without a beat. */
  readonly beat: Beat | null;
  /** Whole seconds to the first catch while counting in, else null. */
  readonly count_in: number | null;
  /** What the coach says now, or "". */
  readonly call: string;
  /** Of the whole session, 0 to 1. */
  readonly progress: number;
  /** When a start by the clock is set, of a session or after a gap: the wall clock at that moment, in ms since 1970. */
  readonly starts_at_ms: number | null;
  /** Whether this segment can have one more minute. */
  readonly can_extend: boolean;
  readonly sound: SoundState;
  readonly screen: ScreenState;
  /** Whether this tab has the session. */
  readonly owner: boolean;
  /** Anything but `disk` would lose something with this page, and has to be said: see Kept. */
  readonly kept: Kept;
  readonly absence: Absence | null;
  readonly notice: Notice | null;
  /** What was rowed, rests included in its seconds; null until the session is over. */
  readonly done: Sums | null;
  /** The metre blocks whose end was tapped, with their times; none until the session is over. */
  readonly pieces: readonly Piece[];
  /** Whether the session is over and every block was rowed to its end. */
  readonly whole: boolean;
}
