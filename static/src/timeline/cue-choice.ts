/** Which cues a person wants to hear or feel, of those that there are. */
import type { Beat } from "../plan/beats.js";
import type { Cue, CueKind } from "./cue-window.js";

export interface CueChoice {
  beat: Beat;
  /** Whether the last two strokes of a block are marked. */
  last_strokes: boolean;
  /** Whether changes, count-ins and the end are told. */
  changes: boolean;
}

const LEFT_OUT: Readonly<Record<Beat, readonly CueKind[]>> = {
  whole: [],
  "catch-finish": ["between"],
  catch: ["between", "finish"],
  none: ["between", "finish", "catch"],
};
const CHANGES: readonly CueKind[] = ["change", "count-in", "end"];

/** The cues that are wanted. The last strokes unmarked are strokes like others. */
export function wanted(cues: readonly Cue[], { beat, last_strokes, changes }: CueChoice): Cue[] {
  const marked = cues.map((cue): Cue => (last_strokes || !isLast(cue.kind) ? cue : { ...cue, kind: "catch" }));
  return marked.filter(({ kind }) => !LEFT_OUT[beat].includes(kind) && (changes || !CHANGES.includes(kind)));
}

function isLast(kind: CueKind): boolean {
  return kind === "last" || kind === "second-last";
}
