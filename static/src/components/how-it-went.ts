/** How hard a session was, and how it went: asked of its rower, and kept as it is said.
 *
 * Properties: `session` (its id), `seconds_s` (how long it lasted). Event: `remarked` (detail: the remarks), after each change.
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { LONGEST_NOTE, isRefused, remarksOf, said, say, subscribe, type Remarks, type Said } from "../data/remarks.js";
import { choices, tiles } from "./choice-look.js";
import { EFFORTS, loadWords } from "./effort-words.js";
import { buttons, fields, type } from "./look.js";

const NOT_STORED = "This is not stored yet: storage is full or does not answer. Keep this page open; it is tried again and again.";

const UNREAD = "What was said of this session cannot be read now, since storage does not hand it out. It is asked again and again; what you want to add can be noted then.";
const READ_AGAIN_MS = 1000;

export class HowItWent extends LitElement {
  static override properties = { session: {}, seconds_s: { attribute: false }, said: { state: true }, unread: { state: true } };
  declare session: string;
  declare seconds_s: number;
  /** Undefined until it has been read. */
  declare said: Remarks | undefined;
  /** It could not be read. */
  declare unread: boolean;
  private stop = (): void => {};

  constructor() {
    super();
    this.session = "";
    this.seconds_s = 0;
    this.unread = false;
  }

  static override styles = [type, buttons, fields, choices, css`
    section { display: grid; gap: 16px; }
    .asked, .answer { display: grid; gap: 8px; justify-items: start; }
    fieldset, .tiles, textarea { width: 100%; }
    legend { padding-bottom: 4px; }
    .tiles { margin-top: 8px; }
    .answer button { min-height: 48px; font-size: 1.0625rem; }
    textarea { min-height: 132px; resize: vertical; }
    .trouble { padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--catch); border-radius: 6px var(--r) var(--r) 6px; }
  `];

  override connectedCallback(): void {
    super.connectedCallback();
    this.stop = subscribe(() => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stop();
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("session") && this.session) void this.read(this.session);
  }

  override render() {
    const { said } = this;
    if (!said) return html`<div role="alert">${this.unread ? html`<p class="trouble">${UNREAD}</p>` : nothing}</div>`;
    return html`<section aria-labelledby="how"><h2 id="how">How it went</h2>
      ${this.effort(said.cr10)}
      <div class="asked"><label for="note">Your note</label>
        <textarea id="note" dir="auto" maxlength=${LONGEST_NOTE} aria-describedby="bound" .value=${said.note ?? ""} @input=${this.write}></textarea>
        <p class="small" id="bound" role="status">${(said.note ?? "").length < LONGEST_NOTE ? "Kept on this device as you type." : `A note holds ${LONGEST_NOTE} characters, and this one is full.`}</p></div>
      <div role="alert">${isRefused(this.session) ? html`<p class="trouble">${NOT_STORED}</p>` : nothing}</div></section>`;
  }

  private effort(cr10: number | undefined) {
    return html`<fieldset aria-describedby="scale"><legend>How hard was the whole session?</legend>
        <p class="small" id="scale">From 0 to 10, on the session form of the CR10 scale. Common practice is to ask half an hour after the end.</p>
        ${tiles("effort", EFFORTS, cr10, (value) => this.say({ cr10: value }))}</fieldset>
      <div class="answer" role="status">${cr10 === undefined ? nothing : html`<p>${loadWords(cr10, this.seconds_s)}</p>
        <button type="button" @click=${() => this.say({ cr10: undefined })}>Take the effort back</button>`}</div>`;
  }

  /** What cannot be read is asked for again: an empty field would be typed over what is there. */
  private async read(session: string): Promise<void> {
    this.said = undefined;
    this.unread = false;
    while (session === this.session && this.isConnected && !this.said) {
      const read = await remarksOf(session).catch(() => undefined);
      if (session !== this.session) return;
      this.said = read;
      this.unread = !read;
      if (!read) await new Promise((again) => setTimeout(again, READ_AGAIN_MS));
    }
  }

  private write(event: Event): void {
    this.say({ note: (event.target as HTMLTextAreaElement).value });
  }

  private say(more: Said): void {
    this.said = said(this.said!, more);
    void say(this.session, more);
    this.dispatchEvent(new CustomEvent<Remarks>("remarked", { detail: this.said }));
  }
}
customElements.define("how-it-went", HowItWent);
