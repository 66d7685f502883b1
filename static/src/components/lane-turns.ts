/** Lanes that do not fit on one page take turns. Pure. */

/** How long a page stays: six to eight lanes are read in it [C]. */
const STAYS_S = 10;
/** Nothing is exchanged so shortly before or after a block changes: then everybody looks for the new figures. */
export const CLEAR_S = 5;

export interface Turn {
  page: number;
  since_s: number;
}

/** The lanes of each page by their indexes, as evenly as can be. */
export function pagesOf(lanes: number, rows: number): number[][] {
  const count = Math.ceil(lanes / Math.max(1, rows));
  const size = Math.ceil(lanes / count);
  return Array.from({ length: count }, (_, page) => indexes(page * size, Math.min(lanes, (page + 1) * size)));
}

/** The turn at a moment: the next page once this one has stood long enough, and no block changes near by. */
export function turnAt(turn: Turn, now_s: number, pages: number, since_change_s: number, to_change_s: number): Turn {
  const page = turn.page < pages ? turn.page : 0;
  if (pages < 2) return { page, since_s: now_s };
  const near = since_change_s < CLEAR_S || to_change_s < CLEAR_S;
  if (near || now_s - turn.since_s < STAYS_S) return page === turn.page ? turn : { page, since_s: now_s };
  return { page: (page + 1) % pages, since_s: now_s };
}

function indexes(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, index) => from + index);
}
