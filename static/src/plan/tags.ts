/** Words that a person puts on plans of their own, to find them again. */

export const MOST_TAGS = 8;

/** Both, each once, whatever the case of its letters, the first as it was written. */
export function together(tags: readonly string[], more: readonly string[] = []): string[] {
  const known = new Map<string, string>();
  for (const tag of [...tags, ...more]) if (tag && !known.has(tag.toLowerCase())) known.set(tag.toLowerCase(), tag);
  return [...known.values()];
}
