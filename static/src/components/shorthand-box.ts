/** The box to write or paste a plan of one's own; it grows with what is in it. What cannot be read is shown at its line and column.
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
  private readonly width = new ResizeObserver(() => this.grow());

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
    form { position: relative; }
    textarea { min-height: clamp(8.4em, 34dvh, 20em); max-height: max(8.4em, 60dvh); resize: none; font-family: var(--digits); font-size: 1.0625rem; line-height: 1.5; letter-spacing: -0.02em; }
    .measure { position: absolute; top: 0; left: 0; height: 0; min-height: 0; visibility: hidden; }
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

  override connectedCallback(): void {
    super.connectedCallback();
    this.width.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.width.disconnect();
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has("text")) this.grow();
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
    const { area } = this;
    area.focus({ preventScroll: true });
    area.setSelectionRange(at, at + Math.max(1, problem.received?.length ?? 1));
    area.scrollTop = this.heightOf(this.text.slice(0, at)) - area.clientHeight / 2;
    area.scrollIntoView({ block: "nearest" });
  }

  /** As tall as its text, within the bounds of the style. */
  private grow(): void {
    const borders = this.area.offsetHeight - this.area.clientHeight;
    this.area.style.height = `${this.heightOf(this.area.value) + borders}px`;
  }

  /** Pixels that a text takes in the box, measured beside it so that the page never jumps. */
  private heightOf(text: string): number {
    const beside = this.area.cloneNode() as HTMLTextAreaElement;
    beside.removeAttribute("id");
    beside.className = "measure";
    beside.style.height = "";
    beside.style.width = `${this.area.offsetWidth}px`;
    beside.value = text;
    this.area.after(beside);
    const height = beside.scrollHeight;
    beside.remove();
    return height;
  }
}
customElements.define("shorthand-box", ShorthandBox);

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
