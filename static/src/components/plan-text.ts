/** The box a plan is written in: it grows with its text, and what cannot be read is marked where it is.
 *
 * Properties: `text`, `caret` (where the caret belongs when the text was changed from outside, or undefined), `problems`
 * and `problemText` (the text they are about), `longest` (characters). Events: `typed` (detail: the text), `undo`, `redo`.
 * Method: `showPlace(problem)`.
 */
import { LitElement, css, html, type PropertyValues, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import type { Problem } from "../plan/wire.js";
import { fields, type } from "./look.js";

/** More than a plan can have by far. */
const MOST_LINES = 2000;

interface Mark {
  from: number;
  to: number;
}

export class PlanText extends LitElement {
  static override properties = {
    text: {},
    caret: { attribute: false },
    problems: { attribute: false },
    problemText: { attribute: false },
    longest: { type: Number },
    fixed: { type: Boolean },
    refused: { state: true },
  };
  declare text: string;
  declare caret: number | undefined;
  declare problems: readonly Problem[];
  declare problemText: string;
  declare longest: number;
  /** It is being kept as it stands. */
  declare fixed: boolean;
  /** How long a text was that did not fit, or 0. */
  declare refused: number;

  constructor() {
    super();
    this.text = "";
    this.problems = [];
    this.problemText = "";
    this.longest = Infinity;
    this.fixed = false;
    this.refused = 0;
  }

  static override styles = [type, fields, css`
    :host { display: grid; gap: 10px; }
    /* the paper under the box holds the same text, so that the box is as tall as it and marks lie behind their words */
    .box { display: grid; grid-template-rows: max-content; max-height: max(8.4em, 45dvh); overflow-y: auto; background: var(--hull); border: 2px solid var(--edge); border-radius: var(--r); }
    @media (min-width: 1000px) { .box { max-height: 60dvh; } }
    .box:focus-within { outline: 3px solid var(--ink); outline-offset: 3px; }
    .box.wrong { border: 3px solid var(--catch); }
    .paper, textarea { grid-area: 1 / 1; min-width: 0; min-height: clamp(8.4em, 34dvh, 20em); margin: 0; padding: 12px 14px; border: 0; font: 400 1.0625rem/1.625rem var(--digits);
      letter-spacing: -0.02em; white-space: pre-wrap; overflow-wrap: anywhere; tab-size: 8; }
    .paper { color: transparent; pointer-events: none; }
    .paper div { min-height: 1.625rem; unicode-bidi: plaintext; }
    textarea { display: block; height: 100%; background: transparent; border-radius: 0; outline: none; resize: none; overflow: hidden; }
    mark { color: transparent; background: color-mix(in oklab, var(--catch) 26%, transparent); border-bottom: 3px solid var(--catch); border-radius: 3px 3px 0 0; }
    @media (forced-colors: active) { mark { forced-color-adjust: none; background: transparent; border-color: Highlight; } }
  `];

  override render() {
    const wrong = this.problems.length > 0;
    return html`<label for="text"><slot></slot></label>
      <div class="box ${wrong ? "wrong" : ""}"><div class="paper" aria-hidden="true" dir="auto">${this.paper()}</div>
      <textarea id="text" dir="auto" spellcheck="false" autocapitalize="off" autocomplete="off" rows="1" ?readonly=${this.fixed}
        aria-invalid=${wrong ? "true" : "false"} .value=${live(this.text)} @input=${this.typed} @beforeinput=${this.history}></textarea></div>
      <p role="alert" ?hidden=${!this.refused}>That would be ${this.refused} characters, and a plan takes ${this.longest} at most. Nothing was changed, and nothing was cut.</p>`;
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has("text") && this.caret !== undefined && this.area.selectionStart !== this.caret) {
      this.area.setSelectionRange(this.caret, this.caret);
    }
  }

  /** Puts the caret where reading stopped, and brings it into view. */
  showPlace(problem: Problem): void {
    const { from, to } = markOf(problem, this.text);
    this.area.focus({ preventScroll: true });
    this.area.setSelectionRange(from, to);
    const place = this.renderRoot.querySelector("mark") ? this.markAt(from) : undefined;
    (place ?? this.area).scrollIntoView({ block: place ? "center" : "nearest" });
  }

  private get area(): HTMLTextAreaElement {
    return this.renderRoot.querySelector("textarea")!;
  }

  private markAt(from: number): Element | undefined {
    return [...this.renderRoot.querySelectorAll<HTMLElement>("mark")].find((mark) => Number(mark.dataset["from"]) === from);
  }

  /** The text with its marks: line by line, so that a key has one line laid out anew. */
  private paper(): TemplateResult[] {
    const marks = this.marks();
    let start = 0;
    return runsIn(this.text).map((run) => {
      const [from, to] = [start, start + run.length];
      start = to + 1;
      return html`<div>${marked(run, from, marks.filter((mark) => mark.from >= from && mark.from <= to))}</div>`;
    });
  }

  /** Where lines have not changed since they were read, in the order of the text, none over another. */
  private marks(): Mark[] {
    const [now, then] = [this.text.split("\n"), this.problemText.split("\n")];
    const still = this.problems.filter(({ line }) => line !== undefined && now[line - 1] === then[line - 1]);
    const marks = still.map((problem) => markOf(problem, this.text)).sort((a, b) => a.from - b.from);
    return marks.filter(({ from }, index) => !index || from >= marks[index - 1]!.to);
  }

  /** Longer than a plan may be is not taken at all: a part of it would be another plan. */
  private typed(): void {
    const { value } = this.area;
    this.refused = value.length > this.longest ? value.length : 0;
    if (this.refused) {
      this.area.value = this.text;
      return;
    }
    this.text = value;
    this.dispatchEvent(new CustomEvent("typed", { detail: value }));
  }

  /** The browser's own history knows nothing of mends. */
  private history(event: InputEvent): void {
    const asked = { historyUndo: "undo", historyRedo: "redo" }[event.inputType];
    if (!asked) return;
    event.preventDefault();
    this.dispatchEvent(new CustomEvent(asked));
  }
}
customElements.define("plan-text", PlanText);

/** Its lines; beyond what anybody writes, the rest is one run, with a line more for the caret to stand on. */
function runsIn(text: string): string[] {
  const lines = text.split("\n");
  const rest = lines.splice(MOST_LINES);
  return rest.length ? [...lines, `${rest.join("\n")}\n`] : lines;
}

function marked(run: string, start: number, marks: readonly Mark[]): (string | TemplateResult)[] {
  const pieces: (string | TemplateResult)[] = [];
  let at = 0;
  for (const { from, to } of marks) {
    pieces.push(run.slice(at, from - start), html`<mark data-from=${from}>${run.slice(from - start, to - start) || " "}</mark>`);
    at = to - start;
  }
  return [...pieces, run.slice(at)];
}

/** What of the text a problem is about; at the end of a line, the place behind it. */
function markOf({ line = 1, column = 1, received }: Problem, text: string): Mark {
  const lines = text.split("\n");
  const start = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
  const end = start + (lines[line - 1]?.length ?? 0);
  const from = Math.min(start + column - 1, end);
  return { from, to: Math.min(from + Math.max(1, received?.length ?? 1), end) };
}
