/** After a session: what was rowed, how to come down, the way back.
 *
 * Properties: `session` (its id), `planTitle`, `done` and `planned` (sums), `pieces` (metre blocks with their times), `whole` (nothing was left out),
 * `kept` (as in a snapshot: where the session is stored), `keeping` (whether the piece stands among the results, or could not be put there). Events: `leave` (detail: the address to go to); `result` (detail: metres and seconds), to keep a
 * piece that was rowed in one go as a result. Of several pieces in a session none was all the rower had.
 */
import { LitElement, css, html, nothing } from "lit";
import { alone } from "../plan/alone.js";
import { resultProblem } from "../plan/result-words.js";
import type { Result } from "../plan/wire.js";
import type { Piece, Sums } from "../timeline/rowed.js";
import type { Kept } from "../state/snapshot.js";
import { buttons, page, type } from "./look.js";
import { COUNTED, figuresLook, pieceList, rowedFigures, wholeWords } from "./rowed-figures.js";

const NOT_KEPT: Record<Kept, string> = {
  disk: "",
  memory: "This browser stores nothing: this session is gone when the page is closed.",
  full: "This session is not stored yet: this device has no room left. Make some and keep this page open; it is tried again and again.",
  refused: "This session is not stored yet: storage does not answer. Keep this page open; it is tried again and again.",
};

const KEEPING = {
  "": "",
  kept: "Added to your results.",
  refused: "This device could not keep it: its storage is full or closed to this page. Note it down.",
};

export class EndScreen extends LitElement {
  static override properties = { session: {}, planTitle: {}, done: { attribute: false }, planned: { attribute: false }, pieces: { attribute: false }, whole: { type: Boolean }, kept: {}, keeping: {} };
  declare session: string;
  declare planTitle: string;
  declare done: Sums | undefined;
  declare planned: Sums | undefined;
  declare pieces: readonly Piece[];
  declare whole: boolean;
  declare kept: Kept;
  declare keeping: "" | "kept" | "refused";

  constructor() {
    super();
    this.session = "";
    this.planTitle = "";
    this.pieces = [];
    this.whole = false;
    this.kept = "disk";
    this.keeping = "";
  }

  static override styles = [type, buttons, page, figuresLook, css`
    section { display: grid; gap: 8px; }
    p:empty { display: none; }
    .ways { display: grid; gap: 10px; }
    how-it-went:not(:defined) { display: none; }
  `];

  override render() {
    return html`<main>
      <div><p class="small" dir="auto"><bdi>${this.planTitle}</bdi></p>
        <h1 tabindex="-1">${wholeWords(this.whole)}</h1></div>
      ${this.done ? rowedFigures(this.done, this.planned, this.whole) : nothing}
      ${this.pieces.length ? this.byTaps() : nothing}
      <p role="alert">${NOT_KEPT[this.kept]}</p>
      <p class="small">${COUNTED}</p>
      <section><h2>Come down slowly</h2>
        <p>Row or walk very lightly until you can talk in whole sentences again. Loosen the straps before you stand,
          and stand up slowly. Drink, put on something dry.</p>
        <p>If anything from the stop signs is still there in a few minutes, get help.</p></section>
      ${alone ? nothing : html`<how-it-went .session=${this.session} .seconds_s=${this.done?.seconds_s ?? 0}></how-it-went>`}
      <div class="ways"><button type="button" class="go" @click=${() => this.leave("/")}>${alone ? "Back to the plan" : "Back to the plans"}</button>
        ${alone ? nothing : html`<button type="button" @click=${() => this.leave("/log")}>Log</button>`}</div>
    </main>`;
  }

  private byTaps() {
    return html`<section><h2>By your taps</h2>${pieceList(this.pieces)}
      ${this.keeping === "kept" ? nothing : this.toKeep()}
      <p role="status">${KEEPING[this.keeping]}</p></section>`;
  }

  private toKeep() {
    const [piece, ...others] = this.pieces;
    if (!piece?.whole || piece.held || others.length) return nothing;
    const result: Result = { metres: piece.metres, seconds: Math.round(piece.seconds_s * 10) / 10 };
    if (resultProblem(result)) return nothing;
    return html`<p class="small">Was it all you had? Then plans can be set by it. Your monitor has the exact time: type that
        on the results page instead if you can read it.</p>
      <button type="button" @click=${() => this.dispatchEvent(new CustomEvent<Result>("result", { detail: result }))}>Add it to my results</button>`;
  }

  private leave(address: string): void {
    this.dispatchEvent(new CustomEvent("leave", { detail: address }));
  }
}
customElements.define("end-screen", EndScreen);
