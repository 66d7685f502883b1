/** What people write as tags, read and checked. */
import { isClean } from "./clean-text.js";
import { lineIn } from "./field-values.js";
import { MOST_TAGS, together } from "./tags.js";

export const LONGEST_TAG = 24;

/** The tags that a text names, with commas between; undefined where it will not do. */
export function tagsIn(text: string): string[] | undefined {
  const tags = text.split(/[,;\n]/).map((each) => lineIn(each, LONGEST_TAG));
  if (tags.some((tag) => tag === undefined)) return undefined;
  const each = together(tags as string[]);
  return each.length <= MOST_TAGS ? each : undefined;
}

/** Whether these can be a plan's tags. */
export function areTags(value: unknown): value is string[] {
  return Array.isArray(value) && value.length <= MOST_TAGS && value.every((tag) => typeof tag === "string" && isClean(tag, LONGEST_TAG) && !tag.includes(","))
    && together(value as string[]).length === value.length;
}
