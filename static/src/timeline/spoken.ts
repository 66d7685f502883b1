/**
 * What a voice says between two moments, and until when it has to be silent again. Pure, like the cues.
 *
 * Speech starts up to a second late, so it is no beat: the voice names the next block 6 to 10 s ahead, and is silent
 * before the change. A coach's calls are spoken on their strokes and yield to that.
 */
import { END_ANNOUNCED, announcements, spokenSeconds } from "../plan/spoken-words.js";
import type { Segment, Timeline } from "../plan/types.js";
import { advance, elapsedAt, endOf, lineOf, zeroOf, type Running, type State } from "./running.js";

export interface Spoken {
  kind: "next" | "call";
  text: string;
  at_s: number;
  /** Nothing of it may be heard from here on. */
  silent_s: number;
}

/** The next block is named no later and no sooner than this before it begins (issue 4). */
const LATEST_S = 6;
const SOONEST_S = 10;
/** A voice may begin so late. */
const LATE_S = 1;
/** What has just begun is left alone: its own beginning is heard first. */
const SETTLING_S = 1;

/** What is to be said at or after `from_s` and before `to_s`, in order, if nobody does anything meanwhile. */
export function spokenBetween(planned: Timeline, state: State, from_s: number, to_s: number): Spoken[] {
  const timeline = lineOf(planned, state);
  const spoken: Spoken[] = [];
  let current = advance(timeline, state, from_s);
  while (current.mode === "running") {
    spoken.push(...saidIn(timeline, current));
    const end_s = endOf(timeline, current);
    if (end_s === null || end_s >= to_s) break;
    current = advance(timeline, current, end_s);
  }
  return spoken.filter(({ at_s }) => at_s >= from_s && at_s < to_s).sort((a, b) => a.at_s - b.at_s);
}

function saidIn(timeline: Timeline, running: Running): Spoken[] {
  const segment = timeline.segments[running.index]!;
  const fresh = elapsedAt(timeline, running, running.from_s) === 0;
  const before = running.counts_in && fresh ? named(announcements(segment), running.from_s, running.since_s) : [];
  const end_s = endOf(timeline, running);
  const after = end_s === null ? [] : named(following(timeline, segment), end_s, running.from_s + SETTLING_S);
  return [...before, ...calls(timeline, running, segment, after[0]?.at_s ?? Infinity, end_s ?? Infinity), ...after];
}

function following(timeline: Timeline, { index }: Segment): string[] {
  const next = timeline.segments[index + 1];
  return next ? announcements(next) : [END_ANNOUNCED];
}

/** The fullest form that is over, even if begun late, before the change; none where there is no room for any. */
function named(forms: readonly string[], change_s: number, earliest_s: number): Spoken[] {
  for (const text of forms) {
    const ahead_s = Math.max(LATEST_S, spokenSeconds(text) + LATE_S);
    const at_s = change_s - ahead_s;
    if (ahead_s <= SOONEST_S && at_s >= earliest_s) return [{ kind: "next", text, at_s, silent_s: change_s }];
  }
  return [];
}

/** The calls of a block that are over before the next block is named. */
function calls(timeline: Timeline, running: Running, segment: Segment, named_s: number, end_s: number): Spoken[] {
  const zero_s = zeroOf(timeline, running);
  const silent_s = Math.min(named_s, end_s);
  return segment.calls
    .map((call): Spoken => ({ kind: "call", text: call.text, at_s: zero_s + call.at_s, silent_s }))
    .filter(({ text, at_s }) => at_s >= running.from_s && at_s + spokenSeconds(text) + LATE_S <= silent_s);
}
