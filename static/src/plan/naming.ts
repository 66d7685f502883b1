/** A title for a plan that was given none, when another plan has the usual one already. */

/** The title that planner/notation/reader.py gives a plan without one. */
export const UNTITLED = "My session";
/** As in the planner's limits. */
const LONGEST_TITLE = 80;
const TITLE_LINE = /^title: .*\n+/;

/** Shorthand without its title: two untitled plans are the same when this is. */
export function untitled(text: string): string {
  return text.replace(TITLE_LINE, "");
}

/** Canonical shorthand under another title. */
export function retitled(text: string, title: string): string {
  return text.replace(TITLE_LINE, (line) => line.replace(/^title: .*/, () => `title: ${title}`));
}

/** The title itself where it is free; else with what is rowed in the main part behind it, or with a number. */
export function titleApart(title: string, text: string, taken: readonly string[]): string {
  if (!taken.includes(title)) return title;
  const named = `${title}: ${mainLines(text).join(", ")}`;
  const plain = named.length <= LONGEST_TITLE && !named.includes("(") && !named.endsWith(": ");
  if (plain && !taken.includes(named)) return named;
  let number = 2;
  while (taken.includes(`${title} ${number}`)) number += 1;
  return `${title} ${number}`;
}

/** The blocks of the first main part, a line each, without what stands below them. */
function mainLines(text: string): string[] {
  const lines = text.split("\n");
  const main = lines.indexOf("main");
  if (main < 0) return [];
  const after = lines.slice(main + 1);
  const end = after.findIndex((line) => /^(?:warm-up|main|cool-down|gap\b.*)?$/.test(line));
  return after.slice(0, end < 0 ? undefined : end).filter((line) => !/^\s/.test(line));
}
