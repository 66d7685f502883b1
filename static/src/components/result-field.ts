/** A recent 2000 m result, for splits. Kept on the device; the scaling is done here, not on a server.
 *
 * Property `seconds` (or null). Event `result` (detail: seconds, or null when the field was emptied).
 */
import { LitElement, css, html, nothing } from "lit";
import { splitClock } from "../plan/format.js";
import { fields, type } from "./look.js";

/** A 2000 m time outside this is a slip of the finger: 5:00 is beyond any record, 20:00 is walking pace. */
const QUICKEST_SECONDS = 300;
const SLOWEST_SECONDS = 1200;

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
    this.problem = seconds === undefined ? `“${text}” is not a time for 2000 m: write minutes and seconds, such as 7:42.0` : "";
    if (seconds === undefined) return;
    this.seconds = seconds;
    this.dispatchEvent(new CustomEvent("result", { detail: seconds }));
  }
}
customElements.define("result-field", ResultField);

/** "7:42.0", "7:42", "7.42,0" or "742": seconds to the tenth, or undefined where it is no 2000 m time. */
export function secondsOf(text: string): number | undefined {
  const match = /^(\d{1,2})[:.'’′ ]?(\d{2})(?:[.,](\d))?["”″]?$/.exec(text);
  if (!match) return undefined;
  const [, minutes, seconds, tenth] = match;
  const total = Number(minutes) * 60 + Number(seconds) + Number(tenth ?? 0) / 10;
  const inside = Number(seconds) < 60 && total >= QUICKEST_SECONDS && total <= SLOWEST_SECONDS;
  return inside ? Math.round(total * 10) / 10 : undefined;
}
