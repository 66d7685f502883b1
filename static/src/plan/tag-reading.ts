/** What people write as tags, read and checked. */
import { isClean } from "./clean-text.js";
import { lineIn } from "./field-values.js";
import { MOST_TAGS, together } from "./tags.js";

export const LONGEST_TAG = 24;

/** The tags that a text names, with commas between; undefined where it will not do. */
export function tagsIn(text: string): string[] | undefined {
  const tags = partsOf(text).map((each) => lineIn(each, LONGEST_TAG));
  if (tags.some((tag) => tag === undefined)) return undefined;
  const each = together(tags as string[]);
  return each.length <= MOST_TAGS ? each : undefined;
}

/** Why a text will not do, by its first bad tag, and how to mend it; "" where it will. */
export function tagsProblem(text: string): string {
  const bad = partsOf(text).find((each) => lineIn(each, LONGEST_TAG) === undefined)?.replace(/\s+/g, " ").trim();
  const length = [...(bad ?? "")].length;
  if (length > LONGEST_TAG) return `“${bad}” is ${length} characters long, and a tag has room for ${LONGEST_TAG}: shorten it.`;
  if (bad !== undefined) return `“${bad}” holds a character that no tag can hold: write it in plain letters and digits.`;
  return tagsIn(text) ? "" : `These are ${together(partsOf(text).map((each) => each.trim())).length} tags, and a plan has ${MOST_TAGS} at most: take some out.`;
}

function partsOf(text: string): string[] {
  return text.split(/[,;\n]/);
}

/** Whether these can be a plan's tags. */
export function areTags(value: unknown): value is string[] {
  return Array.isArray(value) && value.length <= MOST_TAGS && value.every((tag) => typeof tag === "string" && isClean(tag, LONGEST_TAG) && !tag.includes(","))
    && together(value as string[]).length === value.length;
}
