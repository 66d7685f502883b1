/** Start now, or at a clock time. Properties: `go` (the word on the button), `busy`. Event `start` (detail: ms since 1970, or null for now). */
import { LitElement, css, html } from "lit";
import { nextAt, startProblem } from "../state/time-of-day.js";
import "./clock-note.js";
import { buttons, fields, type } from "./look.js";

export class StartChoice extends LitElement {
  static override properties = { go: {}, busy: { type: Boolean }, trouble: { state: true } };
  declare go: string;
  declare busy: boolean;
  declare trouble: string;

  constructor() {
    super();
    this.go = "Start now";
    this.busy = false;
    this.trouble = "";
  }

  static override styles = [type, buttons, fields, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) auto; gap: 6px 8px; }
    form { display: contents; }
    .go { grid-area: 2 / 1; margin-right: 12px; }
    label, clock-note, .bad { grid-column: 2 / -1; }
    .bad { font-weight: 700; }
    .bad:empty { display: none; }
    @media (max-width: 480px) {
      :host { grid-template-columns: minmax(0, 1fr) auto; }
      .go { grid-area: auto / 1 / auto / -1; margin: 0 0 4px; }
      label, clock-note, .bad { grid-column: 1 / -1; }
    }
  `];

  override render() {
    return html`<button type="button" class="go" ?disabled=${this.busy} @click=${() => this.start(null)}>${this.go}</button>
      <form @submit=${this.set}><label for="at">Or at a clock time</label>
        <input type="time" required id="at" aria-describedby="trouble" /><button type="submit" ?disabled=${this.busy}>Set</button>
        <p id="trouble" class="bad" role="alert">${this.trouble}</p><clock-note></clock-note></form>`;
  }

  private set(event: globalThis.Event): void {
    event.preventDefault();
    const { value } = this.renderRoot.querySelector<HTMLInputElement>("#at")!;
    if (!value) return;
    const now_ms = Date.now();
    const at_ms = nextAt(value, now_ms);
    this.trouble = startProblem(value, at_ms, now_ms);
    if (!this.trouble) this.start(at_ms);
  }

  private start(at_ms: number | null): void {
    this.dispatchEvent(new CustomEvent<number | null>("start", { detail: at_ms }));
  }
}
customElements.define("start-choice", StartChoice);
