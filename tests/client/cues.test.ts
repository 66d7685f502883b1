/** What the phone sounds is what the planner says sounds, cue for cue: a click track and a session by ear agree. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import type { Pair, Timeline } from "../../static/src/plan/types.js";
import { cuesBetween, type CueKind } from "../../static/src/timeline/cue-window.js";
import { replay } from "../../static/src/timeline/facts.js";

const COUNT_IN_S = 5;
const lists = JSON.parse(readFileSync("tests/shared/cues/cues.json", "utf8")) as Record<string, [CueKind, Pair][]>;

for (const [name, wanted] of Object.entries(lists)) {
  test(`${name}: the same cues at the same moments`, () => {
    const { timeline_plain: timeline } = JSON.parse(readFileSync(`tests/shared/${name}.json`, "utf8")) as { timeline_plain: Timeline };
    const end_s = timeline.segments.find(({ waits }) => waits)?.start_s ?? timeline.totals.seconds_s + 1;
    const started = replay(timeline, [{ kind: "started", at_s: 0, count_in_s: COUNT_IN_S }]);
    const heard = cuesBetween(timeline, started, 0, COUNT_IN_S + end_s);
    const told = (kind: CueKind, at_s: number) => `${at_s.toFixed(6)} ${kind}`;
    assert.deepEqual(
      heard.map(({ kind, at_s }) => told(kind, at_s)).sort(),
      wanted.map(([kind, [num, den]]) => told(kind, COUNT_IN_S + num / den)).sort(),
    );
  });
}
