/** Whether a plan will run with no signal, in words.
 *
 * Attributes: `state`, one of saved, saving, not-saved, memory, full, refused, insecure; `short`, for a glance.
 */
import { LitElement, css, html } from "lit";
import { type } from "./look.js";

const WORDS: Record<string, string> = {
  saved: "Saved on this device. It will run with no signal.",
  saving: "Saving on this device …",
  "not-saved": "Not saved on this device yet. Keep this page open, or come back with signal.",
  memory: "This browser stores nothing: a reload would lose the session.",
  full: "This device has no room left. The session goes on: keep this page open.",
  refused: "This device stores nothing just now. The session goes on: keep this page open.",
  insecure: "This connection cannot save for offline use. The session runs while this page stays open.",
};

/** For the row screen, where a glance has to do. */
const SHORT: Record<string, string> = {
  saved: "Saved on this device",
  saving: "Saving …",
  "not-saved": "Not saved yet: keep this page open",
  memory: "Nothing is stored here: keep this page open",
  full: "No room left on this device: keep this page open",
  refused: "Nothing is stored just now: keep this page open",
  insecure: "Cannot be saved here: keep this page open",
};

export class SavedMark extends LitElement {
  static override properties = { state: {}, short: { type: Boolean } };
  declare state: string;
  declare short: boolean;

  constructor() {
    super();
    this.state = "saving";
    this.short = false;
  }

  static override styles = [type, css`
    p { display: flex; gap: 9px; align-items: baseline; }
    svg { flex: none; width: 14px; height: 14px; fill: none; stroke: currentColor; stroke-width: 2; }
  `];

  override render() {
    const words = (this.short ? SHORT : WORDS)[this.state] ?? "";
    return html`<p class="small ${this.state}"><svg viewBox="0 0 14 14" aria-hidden="true">
      <path d=${this.state === "saved" ? "M2 7l3.5 4L12 3" : "M7 2a5 5 0 1 0 .1 0"} /></svg><span>${words}</span></p>`;
  }
}
customElements.define("saved-mark", SavedMark);
