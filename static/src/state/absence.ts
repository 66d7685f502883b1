/** What has to be said or asked when the app, or the device, was away for a while. */
import type { Found } from "./session-clock.js";
import type { SessionRun } from "./session-run.js";
import type { Absence, Notice } from "./snapshot.js";

/** Up to this absence the clock has simply run on; after a longer one it is for the athlete to say. */
export const ASK_AFTER_S = 60;
/** What moved the clock by less than this is not worth a word. */
const TELL_AFTER_S = 2;

/** Coming back after nobody looked from `since_s` to `now_s` of the session: a question, a word, or nothing. */
export function judge(
  run: SessionRun,
  found: Found,
  since_s: number,
  now_s: number,
): { ask?: Absence; tell?: Omit<Notice, "number">; end?: true } {
  if (run.record.led_by) return judgeLed(found, since_s, now_s);
  if (found.kind === "unknown") {
    return { ask: { kind: found.seconds < 0 ? "unsure" : "too-old", away_s: Math.abs(found.seconds) } };
  }
  const away_s = now_s - since_s;
  if (away_s > ASK_AFTER_S && mattersWhich(run, since_s, now_s)) return { ask: { kind: "choose", away_s } };
  if (found.kind === "moved" && Math.abs(found.seconds) > TELL_AFTER_S) return moved(found.seconds);
  return away(away_s);
}

/** A screen that leads a room asks nobody: it goes by the clock; where there is none to go by, on from where it was. */
function judgeLed(found: Found, since_s: number, now_s: number): { tell?: Omit<Notice, "number">; end?: true } {
  if (found.kind === "unknown" && found.seconds > 0) return { end: true };
  if (found.kind === "unknown" || found.kind === "moved") return moved(found.seconds);
  return away(now_s - since_s);
}

function moved(seconds: number): { tell?: Omit<Notice, "number"> } {
  return Math.abs(seconds) > TELL_AFTER_S ? { tell: { kind: "clock-moved", seconds } } : {};
}

function away(seconds: number): { tell?: Omit<Notice, "number"> } {
  return seconds > TELL_AFTER_S ? { tell: { kind: "was-away", seconds } } : {};
}

/** Whether going on by the clock and going on from where we stopped are two things: not in a hold, nor within a gap. */
function mattersWhich(run: SessionRun, since_s: number, now_s: number): boolean {
  const [then, now] = [run.placeAt(since_s), run.placeAt(now_s)];
  if (then.phase === "held" || then.phase === "finished" || then.phase === "ready") return false;
  const segment = run.record.timeline.segments[then.index]!;
  return !(segment.kind === "gap" && now.index === then.index);
}
