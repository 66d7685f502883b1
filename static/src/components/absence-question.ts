/** After an absence of a minute or more: how to go on.
 *
 * Properties: `away_s`; `where`, what was being rowed; `kind` as in a snapshot's absence.
 * Event: `answer` (detail: clock, stopped, end or discard).
 */
import { LitElement, css, html, nothing } from "lit";
import { clock } from "../plan/format.js";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";
import type { Absence } from "../state/snapshot.js";

export type AbsenceAnswer = "clock" | "stopped" | "end" | "discard";

export class AbsenceQuestion extends LitElement {
  static override properties = { away_s: { attribute: false }, where: {}, kind: {} };
  declare away_s: number;
  declare where: string;
  declare kind: Absence["kind"];

  constructor() {
    super();
    this.away_s = 0;
    this.where = "";
    this.kind = "choose";
  }

  static override styles = [type, buttons, dialogs, css`button small { display: block; font-weight: 700; font-size: 1.1875rem; margin-top: 2px; }`];

  override render() {
    return html`<dialog aria-labelledby="title" @cancel=${(event: Event) => event.preventDefault()}>
      ${this.kind === "too-old" ? this.tooLong() : this.howToGoOn()}
    </dialog>`;
  }

  private howToGoOn() {
    const unsure = this.kind === "unsure";
    return html`<h2 id="title">${unsure ? "You were away" : `You were away for ${clock(this.away_s)}`}</h2>
      <p>${unsure ? "This phone’s clock was set back meanwhile, so nobody knows for how long. " : ""}How do you want to go on?</p>
      <div class="choices">
        <button type="button" class="go" autofocus @click=${() => this.answer("stopped")}>From where I stopped${this.where ? html`<small>${this.where}</small>` : nothing}</button>
        ${unsure ? nothing : html`<button type="button" @click=${() => this.answer("clock")}>By the clock<small>as if I had kept rowing</small></button>`}
        <button type="button" @click=${() => this.answer("end")}>End the session</button>
      </div>`;
  }

  private tooLong() {
    return html`<h2 id="title">A session was left open</h2>
      <p>That is too long ago to row on.</p>
      <div class="choices">
        <button type="button" class="go" autofocus @click=${() => this.answer("end")}>End it here</button>
        <button type="button" @click=${() => this.answer("discard")}>Throw it away</button>
      </div>`;
  }

  override firstUpdated(): void {
    this.renderRoot.querySelector("dialog")!.showModal();
  }

  private answer(detail: AbsenceAnswer): void {
    this.renderRoot.querySelector("dialog")!.close();
    this.dispatchEvent(new CustomEvent<AbsenceAnswer>("answer", { detail }));
  }
}
customElements.define("absence-question", AbsenceQuestion);
