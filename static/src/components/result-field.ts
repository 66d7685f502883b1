/** A recent 2000 m result, for splits. Kept on the device; the scaling is done here, not on a server.
 *
 * Property `seconds` (or null). Event `result` (detail: seconds, or null when the field was emptied).
 */
import { LitElement, css, html, nothing } from "lit";
import { splitClock } from "../plan/format.js";
import { secondsOf } from "./two-k-time.js";
import { fields, type } from "./look.js";

export class ResultField extends LitElement {
  static override properties = { seconds: { attribute: false }, problem: { state: true } };
  declare seconds: number | null;
  declare problem: string;

  constructor() {
    super();
    this.seconds = null;
    this.problem = "";
  }

  static override styles = [type, fields, css`
    input { scroll-margin-block: 20px 220px; }
    div { display: grid; gap: 6px; }
    .bad { font-weight: 700; }
    input[aria-invalid="true"] { border-color: var(--catch); }
  `];

  override render() {
    return html`<div>
      <label for="time">Your 2000 m, for splits <span class="small">(if you have one)</span></label>
      <input id="time" inputmode="text" autocomplete="off" placeholder="such as 7:42.0" aria-describedby="hint"
        aria-invalid=${this.problem ? "true" : "false"} .value=${this.seconds === null ? "" : splitClock(this.seconds)} @change=${this.read} />
      <p id="hint" class="small">${this.problem ? html`<span class="bad" role="alert">${this.problem}</span>` : html`Stays on this phone.${this.seconds === null ? nothing : " Empty the field to go without."}`}</p>
    </div>`;
  }

  private read(event: Event): void {
    const text = (event.target as HTMLInputElement).value.trim();
    const seconds = text ? secondsOf(text) : null;
    this.problem = seconds === undefined ? `“${text}” is not a time for 2000 m: write minutes and seconds, such as 7:42.0.${this.seconds === null ? "" : ` ${splitClock(this.seconds)} still counts.`}` : "";
    if (seconds === undefined) return;
    this.seconds = seconds;
    this.dispatchEvent(new CustomEvent("result", { detail: seconds }));
  }
}
customElements.define("result-field", ResultField);
