/** One result: what was rowed, and the time it took or the metres that were reached.
 *
 * Properties: `heading` (the label above), `button` (the word on the button; "" to take the result as it is typed).
 * Event `result` (detail: metres and seconds), which bubbles out of whatever it stands in.
 */
import { LitElement, css, html, nothing } from "lit";
import type { Choice } from "../plan/piece-choices.js";
import type { Result } from "../plan/wire.js";
import { choices, pick, type Option } from "./choice-look.js";
import { buttons, fields, type } from "./look.js";
import { NO_DISTANCE, OTHER, readResult, ROWED, TWO_K } from "./result-reading.js";

export class ResultEntry extends LitElement {
  static override properties = { heading: {}, button: {}, rowed: { state: true }, problem: { state: true } };
  declare heading: string;
  declare button: string;
  declare rowed: Choice;
  declare problem: string;

  constructor() {
    super();
    this.heading = "";
    this.button = "";
    this.rowed = TWO_K;
    this.problem = "";
  }

  static override styles = [type, buttons, fields, choices, css`
    form { display: grid; gap: 8px; }
    .heading { font-weight: 700; }
    .picks { grid-template-columns: 1fr 1fr; }
    .picks > div { align-content: end; }
    input { min-height: 56px; padding-inline: 12px; scroll-margin-block: 20px 220px; }
    input::placeholder { font-size: 1rem; letter-spacing: -0.02em; }
    input[aria-invalid="true"] { border-color: var(--catch); }
    .bad { font-weight: 700; }
  `];

  override render() {
    const byTime = "seconds" in this.rowed.length;
    const invalid = this.problem && !this.atDistance ? "true" : "false";
    return html`<form novalidate aria-label=${this.heading || "A result"} @submit=${this.submit}>
      ${this.heading ? html`<p class="heading">${this.heading}</p>` : nothing}
      <div class="picks">
        ${pick("rowed", "Rowed", this.names(), this.rowed.name, (name) => this.choose(name))}
        ${this.rowed === OTHER ? html`<div><label for="distance">Distance in metres</label>
          <input id="distance" inputmode="numeric" autocomplete="off" aria-describedby="problem"
            aria-invalid=${this.problem && this.atDistance ? "true" : "false"} @input=${this.mended} @change=${this.typed} /></div>` : nothing}
        <div><label for="reached">${byTime ? "Metres" : "Time"}</label>
          <input id="reached" inputmode=${byTime ? "numeric" : "text"} autocomplete="off" placeholder=${byTime ? "such as 7105" : "such as 7:42.0"}
            aria-describedby="problem" aria-invalid=${invalid} @input=${this.mended} @change=${this.typed} /></div>
      </div>
      <p id="problem" role="alert" class="bad" ?hidden=${!this.problem}>${this.problem}</p>
      ${this.button ? html`<button type="submit">${this.button}</button>` : nothing}
    </form>`;
  }

  /** Whether there is nothing in it that could not be read. Says so at the field when there is. */
  check(): boolean {
    const text = this.textOf("reached");
    const read = text ? this.read(text) : undefined;
    this.problem = typeof read === "string" ? read : "";
    return !this.problem;
  }

  /** Whether the problem is one of the distance, and not of what was reached. */
  private atDistance = false;

  private names(): Option<string>[] {
    return ROWED.map(({ name }) => ({ value: name, name }));
  }

  private choose(name: string): void {
    this.rowed = ROWED.find((option) => option.name === name)!.value;
    this.problem = "";
  }

  private submit(event: Event): void {
    event.preventDefault();
    const text = this.textOf("reached");
    if (!text) this.problem = "seconds" in this.rowed.length ? "Write the metres first." : "Write the time first, such as 7:42.0.";
    else if (this.tell(text) && this.button) this.clear();
  }

  /** A complaint goes while it is being mended, not when the field is left: what is pressed next would move away. */
  private mended(): void {
    if (this.problem) this.check();
  }

  private typed(): void {
    const text = this.textOf("reached");
    if (this.button || !text) this.problem = "";
    else this.tell(text);
  }

  private tell(text: string): boolean {
    const read = this.read(text);
    this.problem = typeof read === "string" ? read : "";
    if (typeof read !== "string") this.dispatchEvent(new CustomEvent<Result>("result", { detail: read, bubbles: true, composed: true }));
    return typeof read !== "string";
  }

  private read(text: string): Result | string {
    const read = readResult(this.rowed, text, this.textOf("distance"));
    this.atDistance = read === NO_DISTANCE;
    return read;
  }

  private textOf(id: string): string {
    return this.renderRoot.querySelector<HTMLInputElement>(`#${id}`)?.value.trim() ?? "";
  }

  private clear(): void {
    this.renderRoot.querySelectorAll("input").forEach((input) => (input.value = ""));
  }
}
customElements.define("result-entry", ResultEntry);
