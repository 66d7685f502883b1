/** The plan that a one-file page brings along. There it is all there is: no server, no worker, no other plan. */
import type { Athlete, AthleteAnswer, Plan, Timeline } from "./wire.js";

export interface Alone {
  /** Of this very file: two files on one device keep their sessions apart. */
  id: string;
  plan: Plan;
  /** For anybody. */
  timeline: Timeline;
  /** Whose splits it was made with, if anybody's, and what follows from the results. */
  athlete?: Athlete;
  answer?: AthleteAnswer;
}

/** Where the page holds it: a block of JSON, which web/exports/offline_page.py writes. */
const BLOCK = "slipway-alone";

/** What this page brings along; undefined on a page that came from a server, or that is damaged. */
export const alone: Alone | undefined = read();

function read(): Alone | undefined {
  const block = globalThis.document?.getElementById(BLOCK);
  try {
    return block ? (JSON.parse(block.textContent ?? "") as Alone) : undefined;
  } catch {
    return undefined;
  }
}
