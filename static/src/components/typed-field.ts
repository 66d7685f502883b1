/** A field that takes a value only when it can be read: else it says what would do, and nothing changes.
 *
 * Properties: `label`, `value` (as it is shown), `read` (text to value; undefined for what will not do), `hint` (what would do, or that of a text).
 * Event: `value` (detail: the value), once the field is left or Enter is pressed.
 */
import { LitElement, css, html, type PropertyValues } from "lit";
import { live } from "lit/directives/live.js";
import { fields, type } from "./look.js";

export class TypedField extends LitElement {
  static override properties = { label: {}, value: {}, read: { attribute: false }, hint: {}, wrong: { state: true } };
  declare label: string;
  declare value: string;
  declare read: (text: string) => unknown;
  declare hint: string | ((text: string) => string);
  /** What was typed and will not do: it stays, to be mended, until there is another value. */
  declare wrong: string | undefined;

  constructor() {
    super();
    this.label = "";
    this.value = "";
    this.read = (text) => text;
    this.hint = "";
  }

  static override styles = [type, fields, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 6px; align-content: start; min-width: 0; }
    input { min-height: 60px; }
    .bad { min-width: 0; font-weight: 700; overflow-wrap: anywhere; }
    input[aria-invalid="true"] { border-color: var(--catch); border-width: 3px; }
  `];

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("value")) this.wrong = undefined;
  }

  override render() {
    const { wrong } = this;
    const hint = wrong === undefined ? "" : typeof this.hint === "string" ? this.hint : this.hint(wrong);
    return html`<label for="field">${this.label}</label>
      <input id="field" dir="auto" autocomplete="off" autocapitalize="off" aria-describedby="hint" aria-invalid=${hint ? "true" : "false"} .value=${live(wrong ?? this.value)} @change=${this.take}>
      <p class="bad" id="hint" role="alert" dir="auto" ?hidden=${!hint}>${hint}</p>`;
  }

  private take(event: Event): void {
    const { value: text } = event.target as HTMLInputElement;
    const value = this.read(text);
    this.wrong = value === undefined ? text : undefined;
    if (value !== undefined) this.dispatchEvent(new CustomEvent("value", { detail: value }));
  }
}
customElements.define("typed-field", TypedField);
