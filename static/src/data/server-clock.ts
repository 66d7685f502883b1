/**
 * How far this device's clock is off the server's, from the Date that answers carry (RFC 9110, section 6.6.1).
 *
 * A Date tells whole seconds only. So one answer says no more than that the difference lies within a second and the
 * way there and back; each further one is asked for when the server's second should change, and halves what is open.
 */

/** The server's clock was read so many ms after `sent_ms` at most, and `got_ms` at the latest; it showed `date_ms`. */
export interface Answer {
  sent_ms: number;
  got_ms: number;
  date_ms: number;
}

export interface Difference {
  /** By how much this device's clock is ahead of the server's, in seconds. */
  ahead_s: number;
  /** It may be off by this much. */
  within_s: number;
}

const ADDRESS = "/healthz";
const TIMEOUT_MS = 5000;
const ASKED_AT_MOST = 8;
const GOOD_ENOUGH_MS = 40;
const SECOND_MS = 1000;

/** What lies open: the server's clock less this device's, in ms, is at least and at most that. */
interface Open {
  least_ms: number;
  most_ms: number;
}

/** The difference; undefined where no answer comes, or the clock was moved meanwhile. Takes some seconds. */
export async function clockDifference(
  ask: () => Promise<Answer> = askTheServer,
  now: () => number = Date.now,
  wait: (milliseconds: number) => Promise<void> = pause,
): Promise<Difference | undefined> {
  let open: Open = { least_ms: -Infinity, most_ms: Infinity };
  try {
    let way_ms = 0;
    for (let asked = 0; asked < ASKED_AT_MOST && open.most_ms - open.least_ms > GOOD_ENOUGH_MS; asked += 1) {
      if (asked) await wait(untilItTells(open, way_ms, now()));
      const answer = await ask();
      way_ms = answer.got_ms - answer.sent_ms;
      open = narrowed(open, answer);
      if (open.least_ms > open.most_ms) return undefined;
    }
  } catch {
    return undefined;
  }
  return { ahead_s: -(open.least_ms + open.most_ms) / 2000, within_s: (open.most_ms - open.least_ms) / 2000 };
}

function narrowed(open: Open, { sent_ms, got_ms, date_ms }: Answer): Open {
  return {
    least_ms: Math.max(open.least_ms, date_ms - got_ms),
    most_ms: Math.min(open.most_ms, date_ms + SECOND_MS - sent_ms),
  };
}

/** Until an answer would come from the change of the server's second, if the middle of what lies open were true. */
function untilItTells({ least_ms, most_ms }: Open, way_ms: number, now_ms: number): number {
  const servers_ms = now_ms + way_ms / 2 + (least_ms + most_ms) / 2;
  return SECOND_MS - (((servers_ms % SECOND_MS) + SECOND_MS) % SECOND_MS);
}

async function askTheServer(): Promise<Answer> {
  const sent_ms = Date.now();
  const response = await fetch(ADDRESS, { cache: "no-store", signal: AbortSignal.timeout(TIMEOUT_MS) });
  const got_ms = Date.now();
  const date_ms = Date.parse(response.headers.get("Date") ?? "");
  if (!response.ok || Number.isNaN(date_ms)) throw new Error("the answer carries no time");
  return { sent_ms, got_ms, date_ms };
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds));
}
