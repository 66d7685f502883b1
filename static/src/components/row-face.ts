/** The three figures of the row screen: the chosen one largest, as plain text. */
import type { FigureKind } from "../data/preferences.js";
import { clock, splitClock } from "../plan/format.js";
import type { Segment, Timeline } from "../plan/wire.js";
import { metreRunAt, metresFrom, plannedToEnd } from "../timeline/metre-run.js";
import { strokeWords } from "./segment-words.js";

/** Where the session is, in whole seconds, as a snapshot has it. */
export interface Place {
  elapsed_s: number;
  /** Null where no end is known. */
  left_s: number | null;
  stroke: number | null;
  strokes_left: number | null;
}

export interface Figure {
  kind: FigureKind;
  /** "" where there is none, and the note stands alone. */
  text: string;
  note: string;
}

export interface Face {
  big: Figure;
  left: Figure;
  right: Figure;
}

/** The time left is largest where the chosen figure is not known; what it displaces takes its place. */
export function faceOf(timeline: Timeline, segment: Segment, place: Place, biggest: FigureKind = "time"): Face {
  const [time, rate, strokes] = [timeOf(timeline, segment, place), rateOf(segment), strokesOf(place)];
  const small = { ...time, note: shortNote(segment, place) };
  const split_s = segment.target?.split_s;
  if (biggest === "strokes" && place.strokes_left !== null) return { big: strokes, left: rate, right: small };
  if (biggest === "rate" && rate.text) return { big: rate, left: small, right: strokes };
  if (biggest === "split" && split_s !== undefined) {
    const split: Figure = { kind: "split", text: splitClock(split_s), note: "/500\u00a0m" };
    const counted = strokes.text && `, ${strokes.text} ${strokes.note.replace(" left", "")}`;
    return { big: split, left: rate, right: { ...small, note: small.note + counted } };
  }
  return { big: time, left: rate, right: strokes };
}

function timeOf(timeline: Timeline, segment: Segment, place: Place): Figure {
  if (segment.ends === "tap") return time(clock(place.elapsed_s), "rowed; press Done when you stop");
  if (segment.ends === "metres") return metresOf(timeline, segment, place);
  return time(clock(place.left_s ?? 0), "");
}

/** What the time is, where it stands beside a larger figure. */
function shortNote(segment: Segment, { left_s }: Place): string {
  if (segment.ends === "tap") return "rowed";
  if (segment.ends !== "metres") return "left";
  return left_s === null ? "then press Done" : "left, about";
}

/** Metre blocks without a rest between them are one piece on the monitor: its whole length is named, and what is left of it. */
function metresOf(timeline: Timeline, segment: Segment, { elapsed_s, left_s }: Place): Figure {
  const run = metreRunAt(timeline, segment.index)!;
  const all = `${run.metres} m`;
  if (left_s === null) return reached(timeline, segment, all, elapsed_s);
  if (segment.waits) return time(clock(left_s), `left of ${all}, about; then press Done`);
  const after_s = plannedToEnd(timeline, run, segment.index + 1);
  const more = after_s === null ? `of ${all}` : `${clock(left_s + after_s)} left of ${all}`;
  return time(clock(left_s), `left of this ${segment.metres_asked} m, about; ${more}`);
}

/** Where no time is known: the metres to be reached, and how long it has been. */
function reached(timeline: Timeline, segment: Segment, all: string, elapsed_s: number): Figure {
  const { first } = metreRunAt(timeline, segment.index)!;
  const metres = metresFrom(timeline, first, segment.index);
  const here = `${segment.metres_asked} m`;
  const text = `${metres}m`;
  if (here === all) return time(text, `in all, ${clock(elapsed_s)} so far: press Done when your monitor shows them`);
  const of = `${metres} m` === all ? "in all" : `of ${all}`;
  return time(text, `${of}, ${clock(elapsed_s)} in this ${here}: press Done when that many are rowed`);
}

function time(text: string, note: string): Figure {
  return { kind: "time", text, note };
}

function rateOf(segment: Segment): Figure {
  if (segment.rate !== undefined) return { kind: "rate", text: String(segment.rate), note: strokeWords(segment) };
  const swaps = segment.drill?.swap ? "swap sides, no beat" : undefined;
  return { kind: "rate", text: "", note: swaps ?? (segment.kind === "rest" ? "get your breath back" : "any rate you like") };
}

function strokesOf({ stroke, strokes_left }: Place): Figure {
  const counted = (count: number, rest: string): Figure => ({ kind: "strokes", text: String(count), note: `${count === 1 ? "stroke" : "strokes"} ${rest}` });
  if (stroke === null) return { kind: "strokes", text: "", note: "" };
  return strokes_left === null ? counted(stroke, "done") : counted(strokes_left, "left");
}
