/** How large everything on a wall is, from the screen and from how far away it is read. Pure; all in CSS pixels. */
import type { Sight } from "../data/wall.js";

/** The height of a capital as seen, in mm for each metre of distance: 32 mm at 5 m, 22 minutes of arc. */
const CAPITAL_MM_PER_M = 6.4;
/** Capitals of our type for each pixel of its size: measured on its "H". */
const CAPITAL = 0.67;
/** The width of a digit of our type, set close as we set it. */
export const DIGIT = 0.6;
/** The width of a bold letter, in any call of the library 0.54 or less on average as measured, and what the ends of lines lose. */
const LETTER = 0.6;
const CALL_LINES = 2;
const SMALLEST_CALL = 0.6;
/** How much smaller the figure is with a line above or below it; beside lanes a short one is high as well, and the call stands below it. */
const NOTED = 0.8;
const NOTED_BESIDE_LANES = 0.6;
/** A lane's row, in its own type size: number and name, split, watts, what comes next. */
const LANE_EM = 10.6;
const ROW_EM = 1.36;
const PAIR_EM = 3.7;

export interface Screen {
  width: number;
  height: number;
}

export interface WallSizes {
  /** The widest and the largest that the one figure may be: see `figureSize`. */
  figure: number;
  figure_width: number;
  /** Rate and strokes left. */
  pair: number;
  call: number;
  call_width: number;
  lane: number;
  /** Lanes on one page. */
  rows: number;
  top: number;
  next: number;
  rail: number;
  profile: number;
  /** The width of the column with the lanes, or beside the figure where there are none. */
  side: number;
  layout: "upright" | "lanes" | "alone";
}

/** The type size whose capitals are read from there, on a screen of which one side of `css` pixels is the diagonal. */
export function legibleSize({ distance_m, diagonal_mm }: Sight, css: Screen): number {
  return (distance_m * CAPITAL_MM_PER_M * pixelsPerMm(diagonal_mm, css)) / CAPITAL;
}

/** From how many metres type of this size is read. */
export function readFrom(size: number, diagonal_mm: number, css: Screen): number {
  return (size * CAPITAL) / pixelsPerMm(diagonal_mm, css) / CAPITAL_MM_PER_M;
}

function pixelsPerMm(diagonal_mm: number, { width, height }: Screen): number {
  return Math.hypot(width, height) / diagonal_mm;
}

/** The sizes on a picture of this width and height; without a legible size, as large as it all fits. */
export function wallSizes({ width, height }: Screen, lanes: number, legible?: number): WallSizes {
  const upright = width < height;
  const layout = upright ? "upright" : lanes ? "lanes" : "alone";
  const short = Math.min(width, height);
  const wanted = legible ?? short * 0.064;
  const inner = upright ? width - 34 : width * 0.92;
  const side = upright ? inner : layout === "alone" ? inner * 0.36 : within(inner * 0.44, wanted * LANE_EM, inner * 0.56);
  const beside = upright ? inner : inner - side;
  const pairs_width = layout === "alone" ? side : beside;
  const line = upright ? width * 0.075 : height;
  const type = {
    top: upright ? line * 0.6 : within(height * 0.034, wanted * 0.5, height * 0.042),
    next: upright ? line * 0.75 : within(height * 0.042, wanted * 0.6, height * 0.055),
    call: upright ? line * 0.85 : within(height * 0.044, wanted * (lanes ? 0.62 : 0.8), height * (lanes ? 0.056 : 0.078)),
  };
  const room = upright ? height * 0.34 : height * 0.79 - 1.25 * (type.top + type.next);
  return {
    ...type,
    ...laneSizes(side, room, lanes, wanted),
    figure: height * (upright ? 0.19 : layout === "alone" ? 0.42 : 0.33),
    figure_width: beside,
    call_width: layout === "lanes" ? beside : inner,
    pair: Math.min(height * (upright ? 0.11 : layout === "alone" ? 0.2 : 0.165), pairs_width / (layout === "alone" ? 2.2 : PAIR_EM)),
    rail: height * (upright ? 0.05 : 0.08),
    profile: height * (upright ? 0.08 : 0.125),
    side,
    layout,
  };
}

/** Rows as large as they are wanted and fit side by side; larger where all lanes have room. */
function laneSizes(width: number, height: number, lanes: number, wanted: number): { lane: number; rows: number } {
  const most = width / LANE_EM;
  const roomy = lanes ? height / ((lanes + 0.8) * ROW_EM) : most;
  const lane = Math.min(most, Math.max(Math.min(wanted, most), roomy));
  return { lane, rows: Math.max(1, Math.floor(height / (lane * ROW_EM) - 0.8)) };
}

/** The type size of the figure: what the text leaves room for, and a line above or below it where it is `noted`. */
export function figureSize({ figure, figure_width, layout }: WallSizes, text: string, noted = false): number {
  const size = Math.min(figure, figure_width / (text.length * DIGIT));
  if (!noted) return size;
  return Math.min(size * NOTED, layout === "lanes" ? figure * NOTED_BESIDE_LANES : Infinity);
}

/** The type size of the focus or the call: two lines hold it, unless it is very long. */
export function callSize({ call, call_width }: WallSizes, text: string): number {
  return within(call * SMALLEST_CALL, (CALL_LINES * call_width) / (text.length * LETTER), call);
}

function within(low: number, value: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/** How far the picture is moved in this minute, so that no edge stands on the same pixels for hours. */
export function shiftAt(minute: number): { x: number; y: number } {
  const [x, y] = SHIFTS[((minute % SHIFTS.length) + SHIFTS.length) % SHIFTS.length]!;
  return { x, y };
}

const SHIFTS: readonly (readonly [number, number])[] = [[0, 0], [3, 0], [3, 3], [0, 3], [-3, 3], [-3, 0], [-3, -3], [0, -3], [3, -3]];
