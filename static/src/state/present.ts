/** The picture of a session at one moment, for the screens. */
import type { Segment } from "../plan/types.js";
import { wholeSecondsLeft } from "../plan/format.js";
import { positionIn } from "../timeline/position.js";
import { progressAt, type Place } from "../timeline/place.js";
import { piecesOf, rowedWhole, sumsOf } from "../timeline/rowed.js";
import type { SessionRun } from "./session-run.js";
import type { Snapshot } from "./snapshot.js";

/** What of a snapshot does not come from the session itself. */
export type Around = Pick<Snapshot, "sound" | "screen" | "owner" | "kept" | "absence" | "notice">;

/** A call stays to be read for this long after it has been said. */
const CALL_STAYS_S = 4;

/** The snapshot without a session. */
export function presentNothing(around: Around): Omit<Snapshot, "version"> {
  return {
    phase: around.owner ? "none" : "elsewhere",
    held: false,
    session: null, timeline: null, led_by: null, index: 0, segment: null, next: null, elapsed_s: 0, left_s: null, stroke: null, strokes_left: null,
    beat: null, count_in: null, call: "", progress: 0, starts_at_ms: null, can_extend: false, done: null, pieces: [], whole: false,
    ...around,
  };
}

/** The snapshot of a session at a moment of its clock. */
export function present(run: SessionRun, at_s: number, around: Around): Omit<Snapshot, "version"> {
  const { timeline } = run;
  const place = run.placeAt(at_s);
  const segment = timeline.segments[place.index]!;
  const position = positionIn(segment, place.elapsed_s);
  const stints = place.phase === "finished" ? run.stateAt(at_s).stints : null;
  return {
    phase: phaseOf(place, around),
    held: place.phase === "held",
    session: run.record.id,
    timeline,
    led_by: run.record.led_by ?? null,
    index: place.index,
    segment,
    next: timeline.segments[place.index + 1] ?? null,
    elapsed_s: place.elapsed_s,
    left_s: place.start_s !== null && segment.kind === "gap" ? Math.max(0, place.start_s - at_s) : position.left_s,
    stroke: position.stroke,
    strokes_left: position.strokes_left,
    beat: place.phase === "finished" ? null : position.beat,
    count_in: place.count_in_s === null ? null : Math.max(1, wholeSecondsLeft(place.count_in_s)),
    call: callAt(segment, place.elapsed_s),
    progress: wentToTheEnd(run, at_s) ? 1 : progressAt(timeline, place),
    starts_at_ms: place.start_s === null ? null : wallAt(run, place.start_s),
    can_extend: run.canExtend(at_s),
    done: stints && sumsOf(timeline, stints),
    pieces: stints ? piecesOf(timeline, stints) : [],
    whole: stints !== null && rowedWhole(timeline, stints),
    ...around,
  };
}

/** Whether anything has changed that is not the mere passing of time. */
export function differs(a: Omit<Snapshot, "version">, b: Omit<Snapshot, "version">): boolean {
  return WATCHED.some((name) => a[name] !== b[name]);
}

const WATCHED = [
  "phase", "timeline", "index", "call", "starts_at_ms", "can_extend", "whole",
  "sound", "screen", "owner", "kept", "absence", "notice",
] as const;

function phaseOf(place: Place, { owner, absence }: Around): Snapshot["phase"] {
  if (!owner) return "elsewhere";
  if (absence) return "asking";
  return place.phase === "ready" ? "none" : place.phase;
}

/** What the wall clock shows at a moment of the session, to the second, so that it does not tremble. */
function wallAt(run: SessionRun, at_s: number): number {
  return Math.round(run.clock.last.wall_ms / 1000 + at_s - run.now_s) * 1000;
}

function wentToTheEnd(run: SessionRun, at_s: number): boolean {
  const state = run.stateAt(at_s);
  return state.mode === "finished" && state.whole;
}

/** The latest call that is being said or still to be read, or "". */
export function callAt(segment: Segment, elapsed_s: number): string {
  const begun = segment.calls.filter(({ at_s }) => elapsed_s >= at_s);
  const fresh = begun.filter(({ at_s, seconds }) => elapsed_s < at_s + seconds + CALL_STAYS_S);
  return fresh.at(-1)?.text ?? "";
}
