/** Every change of a text, back to the first and forward again: kept as differences, so that there is no end to them. */

interface Change {
  at: number;
  removed: string;
  inserted: string;
  /** When it was typed, in ms; absent for a change made otherwise, which stands alone. */
  typed_ms?: number;
}

/** Keys that follow each other as quickly as this are taken back together. */
const ONE_BREATH_MS = 1000;

export class History {
  private readonly done: Change[] = [];
  private undone: Change[] = [];

  constructor(private now: string) {}

  get text(): string {
    return this.now;
  }

  get canUndo(): boolean {
    return this.done.length > 0;
  }

  get canRedo(): boolean {
    return this.undone.length > 0;
  }

  /** The text is another one now. `typed_ms` joins what is typed in one breath, up to the end of a line. */
  change(text: string, typed_ms?: number): void {
    if (text === this.now) return;
    const change = difference(this.now, text, typed_ms);
    this.undone = [];
    this.now = text;
    const last = this.done.at(-1);
    const joined = last && together(last, change);
    if (joined) this.done[this.done.length - 1] = joined;
    else this.done.push(change);
  }

  /** Takes the last change back; where in the text that was, or undefined when there is none. */
  undo(): number | undefined {
    const change = this.done.pop();
    if (!change) return undefined;
    this.undone.push(change);
    this.replace(change.at, change.inserted, change.removed);
    return change.at + change.removed.length;
  }

  /** Makes the change again that was taken back last; where in the text that was. */
  redo(): number | undefined {
    const change = this.undone.pop();
    if (!change) return undefined;
    this.done.push(change);
    this.replace(change.at, change.removed, change.inserted);
    return change.at + change.inserted.length;
  }

  private replace(at: number, there: string, instead: string): void {
    this.now = this.now.slice(0, at) + instead + this.now.slice(at + there.length);
  }
}

/** What stands between the common beginning and the common end. */
function difference(before: string, after: string, typed_ms: number | undefined): Change {
  const shorter = Math.min(before.length, after.length);
  let at = 0;
  while (at < shorter && before[at] === after[at]) at += 1;
  let end = 0;
  while (end < shorter - at && before[before.length - 1 - end] === after[after.length - 1 - end]) end += 1;
  const [removed, inserted] = [before.slice(at, before.length - end), after.slice(at, after.length - end)];
  return { at, removed, inserted, ...(typed_ms === undefined ? {} : { typed_ms }) };
}

/** Both as one, where the second goes on with the first: more keys behind it, or more taken away before it. */
function together(first: Change, then: Change): Change | undefined {
  if (first.typed_ms === undefined || then.typed_ms === undefined) return undefined;
  if (then.typed_ms - first.typed_ms > ONE_BREATH_MS || first.inserted.endsWith("\n")) return undefined;
  const { typed_ms } = then;
  if (!then.removed && then.at === first.at + first.inserted.length) return { ...first, inserted: first.inserted + then.inserted, typed_ms };
  if (!then.inserted && !first.inserted && then.at + then.removed.length === first.at) {
    return { at: then.at, removed: then.removed + first.removed, inserted: "", typed_ms };
  }
  return undefined;
}
