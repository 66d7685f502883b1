/** How the strokes of a block are counted out in ticks and marks. */

const MOST_SINGLE_TICKS = 40;
const MOST_MARKS = 60;

/** How many strokes one mark stands for, so that marks stay wide enough to be told apart. */
export function strokesInAMark(total: number): number {
  if (total <= MOST_SINGLE_TICKS) return 1;
  return [10, 20, 50, 100].find((size) => total / size <= MOST_MARKS) ?? 500;
}
