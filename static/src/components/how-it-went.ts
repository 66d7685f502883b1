/** How hard a session was, and how it went: asked of its rower, and kept as it is said.
 *
 * Properties: `session` (its id), `seconds_s` (how long it lasted). Event: `remarked` (detail: the remarks), after each change.
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { LONGEST_NOTE, remark, remarksOf, type Remarks } from "../data/log.js";
import { WriteQueue } from "../data/write-queue.js";
import { choices, tiles } from "./choice-look.js";
import { EFFORTS, loadWords } from "./effort-words.js";
import { buttons, fields, type } from "./look.js";

const NOT_STORED = "This is not stored yet: storage is full or does not answer. Keep this page open; it is tried again and again.";

type Said = Parameters<typeof remark>[1];

export class HowItWent extends LitElement {
  static override properties = { session: {}, seconds_s: { attribute: false }, said: { state: true }, stuck: { state: true } };
  declare session: string;
  declare seconds_s: number;
  /** Undefined until it has been read. */
  declare said: Remarks | undefined;
  declare stuck: boolean;
  /** What was said and may not be stored yet. */
  private unkept: Said | undefined;
  private readonly writes = new WriteQueue(() => (this.stuck = this.writes.trouble !== null));

  constructor() {
    super();
    this.session = "";
    this.seconds_s = 0;
    this.stuck = false;
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

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("session") && this.session) void this.read(this.session);
  }

  override render() {
    const { said } = this;
    if (!said) return nothing;
    return html`<section aria-labelledby="how"><h2 id="how">How it went</h2>
      ${this.effort(said.cr10)}
      <div class="asked"><label for="note">Your note</label>
        <textarea id="note" dir="auto" maxlength=${LONGEST_NOTE} aria-describedby="bound" .value=${said.note ?? ""} @input=${this.write}></textarea>
        <p class="small" id="bound" role="status">${(said.note ?? "").length < LONGEST_NOTE ? "Kept on this device as you type." : `A note holds ${LONGEST_NOTE} characters, and this one is full.`}</p></div>
      <div role="alert">${this.stuck ? html`<p class="trouble">${NOT_STORED}</p>` : nothing}</div></section>`;
  }

  private effort(cr10: number | undefined) {
    return html`<fieldset aria-describedby="scale"><legend>How hard was the whole session?</legend>
        <p class="small" id="scale">From 0 to 10, on the session form of the CR10 scale. Common practice is to ask half an hour after the end.</p>
        ${tiles("effort", EFFORTS, cr10, (value) => this.say({ cr10: value }))}</fieldset>
      <div class="answer" role="status">${cr10 === undefined ? nothing : html`<p>${loadWords(cr10, this.seconds_s)}</p>
        <button type="button" @click=${() => this.say({ cr10: undefined })}>Take the effort back</button>`}</div>`;
  }

  private async read(session: string): Promise<void> {
    this.said = undefined;
    const said = await remarksOf(session);
    if (session === this.session) this.said = said;
  }

  private write(event: Event): void {
    this.say({ note: (event.target as HTMLTextAreaElement).value });
  }

  private say(said: Said): void {
    const { cr10, note } = { ...this.said, ...said };
    this.said = { ...(cr10 === undefined ? {} : { cr10 }), ...(note ? { note } : {}) };
    const waits = this.unkept !== undefined;
    this.unkept = { ...this.unkept, ...said };
    const { session } = this;
    if (!waits) void this.writes.add(() => this.store(session));
    this.dispatchEvent(new CustomEvent<Remarks>("remarked", { detail: this.said }));
  }

  /** Quick fingers are quicker than storage: what was said meanwhile is stored in one go. */
  private async store(session: string): Promise<void> {
    while (this.unkept) {
      const said = this.unkept;
      await remark(session, said);
      if (this.unkept === said) this.unkept = undefined;
    }
  }
}
customElements.define("how-it-went", HowItWent);
