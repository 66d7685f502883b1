/** What a phone says of a wall that it leads, as plain text. */
import type { Told } from "../data/afar.js";
import { Refused } from "../data/api.js";
import { clock } from "../plan/format.js";
import type { Timeline, Wall } from "../plan/wire.js";
import { hereAt } from "../state/server-time.js";
import { guesses } from "../timeline/by-clock.js";
import { placeWords } from "./wall-words.js";

/** A tablet asks every few seconds, and the server notes that every twenty. */
const QUIET_S = 30;
const SHORT_ID = 4;

/** Whether a tablet follows a wall now; undefined where the server has not told. */
function follows({ asked_s_ago }: Pick<Wall, "asked_s_ago">): boolean | undefined {
  return asked_s_ago === undefined ? undefined : asked_s_ago !== null && asked_s_ago <= QUIET_S;
}

export function tabletWords(wall: Pick<Wall, "asked_s_ago">): string {
  const { asked_s_ago } = wall;
  if (asked_s_ago === undefined) return "";
  if (asked_s_ago === null) return "No tablet has opened its address yet.";
  if (follows(wall)) return "A tablet follows it.";
  return `No tablet has asked for ${span(asked_s_ago)}: is it on, with signal, and at its address?`;
}

/** After something was done from the phone, and now: that nobody sees it, as long as no tablet follows since. */
export function doneWords(done: string, then: Pick<Wall, "asked_s_ago">, now: Pick<Wall, "asked_s_ago">): string {
  const unseen = follows(then) === false && follows(now) === false;
  return unseen ? "The server has it. No tablet follows now: it comes once one does." : done;
}

/**
 * Of a start by the server's clock, which is `ahead` of this device's, told by this one's, and how far the session is:
 * what a tablet may have held, or skipped, is not known here.
 */
export function startWords(starts_at_s: number | null, now_s: number, timeline: Timeline | undefined, ahead?: Told["ahead"]): string {
  if (starts_at_s === null) return "not started";
  const here_s = Math.round(hereAt(starts_at_s * 1000, ahead) / 1000);
  const time = new Date(here_s * 1000).toLocaleTimeString([], { hour12: false });
  const gone_s = now_s - here_s;
  if (gone_s < 0) return `starts at ${time}`;
  const since = `started at ${time}, ${span(gone_s)} ago`;
  if (!timeline || guesses(timeline)) return since;
  const segment = timeline.segments.find(({ start_s, duration_s }) => gone_s < start_s + duration_s);
  return segment ? `${since}. By the clock, unless it was held there: ${placeWords(timeline, segment)}` : `${since}. By the clock it is over`;
}

/** Why something could not be done, where the server answered. */
export function failedWords(error: unknown): string {
  const words = error instanceof Error ? error.message : String(error);
  return error instanceof Refused ? `The server refuses: ${words}.` : words;
}

/** How a wall is told from others on its tablet and on a phone. */
export function shortId(id: string): string {
  return id.slice(0, SHORT_ID);
}

function span(seconds: number): string {
  if (seconds < 60) return `${Math.floor(seconds)} s`;
  return seconds < 3600 ? `${Math.floor(seconds / 60)} min` : `${clock(seconds).split(":").slice(0, 2).join(" h ")} min`;
}
