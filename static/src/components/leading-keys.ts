/** The keys of a keyboard, or of a presentation clicker, on a screen that leads a room. */

export type Led = "hold" | "back" | "skip" | "end";

const KEYS: Readonly<Record<string, Led>> = { " ": "hold", ArrowLeft: "back", PageUp: "back", ArrowRight: "skip", PageDown: "skip", Escape: "end" };

/** What a key asks for; undefined while a button, a field or a question has the keys, and for all other keys. */
export function ledBy(event: KeyboardEvent): Led | undefined {
  const busy = event.composedPath().some((node) => node instanceof HTMLElement && node.matches("button, input, select, a, summary, dialog"));
  return busy || event.repeat || event.ctrlKey || event.metaKey || event.altKey ? undefined : KEYS[event.key];
}
