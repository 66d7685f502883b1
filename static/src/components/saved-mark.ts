/** Whether a plan will run with no signal, in words. Attribute `state`: saved, saving, not-saved, memory or insecure. */
import { LitElement, css, html } from "lit";
import { type } from "./look.js";

const WORDS: Record<string, string> = {
  saved: "Saved on this phone. It will run with no signal.",
  saving: "Saving on this phone …",
  "not-saved": "Not saved on this phone yet. Keep this page open, or come back with signal.",
  memory: "This browser stores nothing: a reload would lose the session.",
  insecure: "This connection cannot save for offline use. The session runs while this page stays open.",
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
    const words = this.short && this.state === "saved" ? "Saved on this phone" : (WORDS[this.state] ?? "");
    return html`<p class="small ${this.state}"><svg viewBox="0 0 14 14" aria-hidden="true">
      <path d=${this.state === "saved" ? "M2 7l3.5 4L12 3" : "M7 2a5 5 0 1 0 .1 0"} /></svg><span>${words}</span></p>`;
  }
}
customElements.define("saved-mark", SavedMark);
