/** The box to write or paste a plan of one's own. What cannot be read is shown at its line and column.
 *
 * Properties: `text`, `problems`, `busy`, `message`. Events: `draft` (detail: the text as typed), `make`.
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import type { Problem } from "../plan/wire.js";
import { buttons, fields, type } from "./look.js";

const EXAMPLE = `title: Tuesday
warm-up
5' r18 light
  focus: Long arms, legs first
3 x (10 strokes r28 full, 50" r20 light)
gap 5'
main
6 x 700m r28 2k+1 / 3' rest`;

/** The place stands on the button beside the sentence already. */
const PLACE = /^line \d+, column \d+: /;

export class ShorthandBox extends LitElement {
  static override properties = {
    text: {},
    problems: { attribute: false },
    busy: { type: Boolean },
    message: {},
  };
  declare text: string;
  declare problems: readonly Problem[];
  declare busy: boolean;
  declare message: string;

  constructor() {
    super();
    this.text = "";
    this.problems = [];
    this.busy = false;
    this.message = "";
  }

  static override styles = [type, buttons, fields, css`
    form { display: grid; gap: 12px; }
    h2 label { font: inherit; }
    textarea { min-height: 8.4em; resize: vertical; font-family: var(--digits); font-size: 1.0625rem; line-height: 1.5; letter-spacing: -0.02em; }
    textarea[aria-invalid="true"] { border-color: var(--catch); border-width: 3px; }
    pre { margin: 0; padding: 12px 14px; border-left: 4px solid var(--edge); font: 700 1rem/1.5 var(--digits); letter-spacing: -0.02em; white-space: pre-wrap; overflow-wrap: anywhere; }
    .problem { display: grid; gap: 6px; padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--catch); border-radius: 6px var(--r) var(--r) 6px; }
    .problem + .problem { margin-top: 10px; }
    .problem button { justify-self: start; min-height: 44px; padding: 4px 14px; font-size: 1.0625rem; }
    code { font-family: var(--digits); font-weight: 700; overflow-wrap: anywhere; }
    summary { min-height: 44px; align-content: center; cursor: pointer; }
  `];

  override render() {
    return html`<form @submit=${this.make} novalidate>
      <h2><label for="text">Write or paste your own</label></h2>
      <p class="small" id="how">One block a line: length, rate, effort. Like this:</p>
      <pre dir="ltr">${EXAMPLE}</pre>
      <textarea id="text" dir="auto" spellcheck="false" autocapitalize="off" autocomplete="off" maxlength="20000"
        aria-describedby="how" aria-invalid=${this.problems.length ? "true" : "false"}
        .value=${this.text} @input=${this.typed}></textarea>
      <div role="alert">${this.problems.map((problem) => this.problem(problem))}
        ${this.message ? html`<p class="problem">${this.message}</p>` : nothing}</div>
      <button type="submit" ?disabled=${this.busy}>${this.busy ? "Reading it …" : "Make this plan"}</button>
    </form>`;
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has("problems") && this.problems[0]?.line !== undefined) this.showPlace(this.problems[0]);
  }

  private problem(problem: Problem) {
    const accepted = problem.accepted ?? [];
    return html`<div class="problem">
      ${problem.line === undefined ? nothing : html`<button type="button" @click=${() => this.showPlace(problem)}>
        Line ${problem.line}, column ${problem.column}</button>`}
      ${problem.received ? html`<p>Read: <code><bdi>${problem.received}</bdi></code></p>` : nothing}
      <p dir="auto">${capital(problem.sentence.replace(PLACE, ""))}</p>
      ${accepted.length ? html`<details class="small"><summary>What would do here</summary><ul>${accepted.map((each) => html`<li>${each}</li>`)}</ul></details>` : nothing}
    </div>`;
  }

  /** Brings the box into view, ready to write in. */
  begin(): void {
    this.area.scrollIntoView({ block: "center" });
    this.area.focus({ preventScroll: true });
  }

  private get area(): HTMLTextAreaElement {
    return this.renderRoot.querySelector("textarea")!;
  }

  private typed(): void {
    this.text = this.area.value;
    this.dispatchEvent(new CustomEvent("draft", { detail: this.text }));
  }

  private make(event: Event): void {
    event.preventDefault();
    this.dispatchEvent(new CustomEvent("make"));
  }

  /** Puts the caret where reading stopped. */
  private showPlace(problem: Problem): void {
    const lines = this.text.split("\n");
    const line = Math.max(0, (problem.line ?? 1) - 1);
    const start = lines.slice(0, line).reduce((sum, each) => sum + each.length + 1, 0);
    const at = start + Math.max(0, (problem.column ?? 1) - 1);
    this.area.focus();
    this.area.setSelectionRange(at, at + Math.max(1, problem.received?.length ?? 1));
  }
}
customElements.define("shorthand-box", ShorthandBox);

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
