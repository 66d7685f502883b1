/** For somebody who stands beside: tapped at each catch, it shows the rate really rowed against the one asked.
 *
 * Properties: `asked` (strokes a minute, or undefined where none is), `paced` (as whole strokes fill the block). Method: `open()`.
 */
import { LitElement, css, html, type PropertyValues } from "lit";
import { LEAST_STROKES, PAUSE_MS, rateOfTaps, withTap } from "../timeline/tapped-rate.js";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";
import { checkWords, inHalves } from "./row-words.js";

export class StrokeCheck extends LitElement {
  static override properties = { asked: { attribute: false }, paced: { attribute: false }, taps: { state: true } };
  declare asked: number | undefined;
  declare paced: number | undefined;
  declare taps: readonly number[];
  private silence: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.taps = [];
  }

  static override styles = [type, buttons, dialogs, css`
    dialog { width: min(640px, 100vw - 24px); height: min(900px, 100dvh - 24px); }
    dialog[open] { grid-template-rows: auto auto auto 1fr auto; }
    .rates { display: flex; justify-content: space-between; gap: 12px; }
    .digits { font-size: clamp(48px, 20vw, 128px); }
    .digits i { font-style: normal; font-size: 0.42em; color: var(--ink-2); }
    .small { margin-top: 8px; }
    .words { min-height: 2.4em; font-size: 1.5rem; font-weight: 700; line-height: 1.2; }
    .tap { min-height: 96px; width: 100%; height: 100%; font-size: 1.75rem; touch-action: none; }
    @media (orientation: landscape) and (max-height: 540px) and (min-width: 480px) {
      dialog { width: calc(100vw - 24px); padding: 14px 16px; }
      dialog[open] { grid-template: "title tap" auto "rates tap" auto "words tap" 1fr "close tap" auto / 1fr 1fr; gap: 8px 20px; }
      .digits { font-size: min(13vw, 22vh); }
      .words { min-height: 0; font-size: 1.25rem; }
      .tap { grid-area: tap; }
    }
  `];

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("asked") && this.hasUpdated) this.forget();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.silence);
  }

  override render() {
    const rate = rateOfTaps(this.taps);
    const more = LEAST_STROKES + 1 - this.taps.length;
    return html`<dialog aria-labelledby="title" @keydown=${this.key} @close=${this.forget}>
      <h2 id="title">Stroke check</h2>
      <div class="rates">
        <div><div class="digits">${this.asked === undefined ? "–" : html`<i>r</i>${this.asked}`}</div><p class="small">asked</p></div>
        <div><div class="digits">${rate === null ? "–" : html`<i>r</i>${inHalves(rate)}`}</div><p class="small">rowed</p></div>
      </div>
      <p class="words" role="status">${checkWords(rate, this.asked === undefined ? undefined : (this.paced ?? this.asked), more)}</p>
      <button type="button" class="tap go" autofocus @pointerdown=${this.pressed} @click=${this.clicked}>Tap at each catch</button>
      <button type="button" @click=${() => this.dialog.close()}>Close</button>
    </dialog>`;
  }

  open(): void {
    if (!this.dialog.open) this.dialog.showModal();
  }

  private get dialog(): HTMLDialogElement {
    return this.renderRoot.querySelector("dialog")!;
  }

  private pressed(event: PointerEvent): void {
    this.tap(event.timeStamp);
  }

  /** Only what no pointer has pressed: a screen reader. */
  private clicked(event: MouseEvent): void {
    if (!event.detail) this.tap(event.timeStamp);
  }

  /** Space and Enter tap as they go down, whatever has the keyboard but Close; no key reaches the session from here. */
  private key(event: KeyboardEvent): void {
    event.stopPropagation();
    const taps = [" ", "Enter"].includes(event.key) && !event.composedPath().some((node) => node instanceof Element && node.matches("button:not(.tap)"));
    if (!taps) return;
    event.preventDefault();
    if (!event.repeat) this.tap(event.timeStamp);
  }

  private tap(at_ms: number): void {
    this.taps = withTap(this.taps, at_ms);
    clearTimeout(this.silence);
    this.silence = setTimeout(() => this.forget(), PAUSE_MS);
  }

  private forget(): void {
    clearTimeout(this.silence);
    this.taps = [];
  }
}
customElements.define("stroke-check", StrokeCheck);
