/** What keys do while rowing: those of a keyboard, and those that a presentation clicker sends. */

/** `next` is the one button of a clicker: Done where a tap ends the block, the start in a gap, else a skip. */
export type RowingAction = "hold" | "back" | "skip" | "next" | "minute" | "check" | "end";

export interface Binding {
  /** As a keyboard event names them. */
  keys: readonly string[];
  /** As people name them. */
  shown: string;
  action: RowingAction;
  does: string;
}

export const BINDINGS: readonly Binding[] = [
  { keys: [" "], shown: "Space", action: "hold", does: "Hold, and go on" },
  { keys: ["ArrowLeft"], shown: "←", action: "back", does: "Back" },
  { keys: ["ArrowRight"], shown: "→", action: "skip", does: "Skip; in a gap, start now" },
  { keys: ["+", "="], shown: "+", action: "minute", does: "One more minute" },
  { keys: ["c", "C"], shown: "C", action: "check", does: "Stroke check; then space at each catch" },
  { keys: ["Escape"], shown: "Esc", action: "end", does: "Ask whether to end" },
  { keys: ["PageDown"], shown: "Page down, or next on a clicker", action: "next", does: "Done in a piece in metres, start now in a gap, else skip" },
  { keys: ["PageUp"], shown: "Page up, or previous on a clicker", action: "back", does: "Back" },
  { keys: ["b", "B", "."], shown: "B or full stop, or dark screen on a clicker", action: "hold", does: "Hold, and go on" },
];

/** What a key stroke asks for; undefined when it is none of ours, or goes with Ctrl, Alt or Meta. */
export function actionOf(event: Pick<KeyboardEvent, "key" | "repeat" | "ctrlKey" | "metaKey" | "altKey">): RowingAction | undefined {
  if (event.repeat || event.ctrlKey || event.metaKey || event.altKey) return undefined;
  return BINDINGS.find(({ keys }) => keys.includes(event.key))?.action;
}

const TYPING = "input, textarea, select, [contenteditable], dialog";
/** Elements that space itself presses. */
const PRESSED = "button, a, summary";

/** Whether what has the keyboard uses this key itself. */
export function isTaken(event: KeyboardEvent): boolean {
  const elements = event.composedPath().filter((node): node is Element => node instanceof Element);
  return elements.some((element) => element.matches(TYPING) || (event.key === " " && element.matches(PRESSED)));
}

/** Whether a question stands over the screen, wherever the keyboard is. */
export function dialogIsOpen(root: ParentNode): boolean {
  return [...root.querySelectorAll("*")].some((element) => element.matches("dialog[open]") || (element.shadowRoot !== null && dialogIsOpen(element.shadowRoot)));
}
