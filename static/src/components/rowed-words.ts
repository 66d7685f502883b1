/** A session of the log in words. */
import type { Figures, LoggedSession } from "../data/log.js";
import { clock } from "../plan/format.js";
import { effortWords } from "./effort-words.js";
import { wholeWords } from "./rowed-figures.js";

const WHEN = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short", year: "numeric", hour: "2-digit", minute: "2-digit" });

/** "Sun, 29 Nov 2026, 10:15" on this device's clock. */
export function whenWords({ made_at_ms }: Figures): string {
  return WHEN.format(made_at_ms);
}

/** "Ended here, 6:06 of 12:00, effort 7: very hard". */
export function sessionWords({ figures: { whole, done, planned }, cr10 }: LoggedSession): string {
  return `${wholeWords(whole)}, ${clock(done.seconds_s)}${whole ? "" : ` of ${clock(planned.seconds_s)}`}${cr10 === undefined ? "" : `, effort ${effortWords(cr10)}`}`;
}
