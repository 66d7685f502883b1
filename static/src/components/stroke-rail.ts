/** The rail: the moving picture of one stroke, the seat between catch and finish at its true proportion of time.
 *
 * Call `show(share, drive)` on every frame: only a transform is written, the word when the phase changes.
 * Attributes: `still-word`, said without a beat; `bare`, for the picture alone.
 * With reduced motion the seat stands at the finish, half way and at the catch instead of gliding.
 */
import { LitElement, css, html } from "lit";
import { type } from "./look.js";

type Phase = "drive" | "recovery" | "still";

export class StrokeRail extends LitElement {
  static override properties = { stillWord: { attribute: "still-word" } };
  declare stillWord: string;
  private phase: Phase | undefined;
  private shown = -1;
  private trail = 0;
  private carriage!: HTMLElement;
  private swept!: HTMLElement;
  private readonly calm = matchMedia("(prefers-reduced-motion: reduce)");

  constructor() {
    super();
    this.stillWord = "";
  }

  static override styles = [type, css`
    :host { --seat: 54px; --track: 18px; height: var(--rail, 78px); contain: layout style; overflow: hidden; display: grid; align-content: center; }
    .ends { display: flex; justify-content: space-between; font-size: 17px; line-height: 1.2; color: var(--ink-2); }
    .ends b { color: var(--ink); }
    .track {
      position: relative; height: var(--track); margin: calc((var(--seat) - var(--track)) / 2) 0; border-radius: calc(var(--track) / 2);
      background: var(--hull); box-shadow: inset 0 0 0 1px var(--edge);
    }
    .drive, .carriage { position: absolute; inset: 0; transform-origin: 0 50%; will-change: transform; }
    .drive { overflow: hidden; border-radius: calc(var(--track) / 2); transform: scaleX(0); background: linear-gradient(90deg, transparent, var(--catch)); }
    .carriage { right: var(--seat); }
    .seat {
      position: absolute; left: 0; top: calc((var(--track) - var(--seat)) / 2); width: var(--seat); height: var(--seat); border-radius: calc(var(--seat) / 3);
      background: var(--catch); display: grid; place-items: center;
    }
    .seat::after { content: ""; width: 6px; height: 26px; border-radius: 3px; background: var(--on-catch); }
    :host(.still) .seat { background: var(--hull); box-shadow: inset 0 0 0 2px var(--edge); }
    :host(.still) .seat::after { background: var(--edge); }
    :host([bare]) .ends { display: none; }
    :host([bare]) { --track: calc(var(--seat) * 0.5); }
    :host([bare]) .seat::after { width: 11%; height: 48%; }
    @media (forced-colors: active) {
      .track { border: 1px solid CanvasText; }
      .seat { forced-color-adjust: none; background: Highlight; border: 2px solid CanvasText; }
      .seat::after { background: HighlightText; }
    }
  `];

  override render() {
    return html`<div aria-hidden="true">
      <div class="ends"><span>catch</span><b class="word"></b><span>finish</span></div>
      <div class="track"><div class="drive"></div><div class="carriage"><div class="seat"></div></div></div>
    </div>`;
  }

  override firstUpdated(): void {
    this.carriage = this.renderRoot.querySelector(".carriage")!;
    this.swept = this.renderRoot.querySelector(".drive")!;
  }

  override updated(): void {
    const phase = this.phase;
    this.phase = undefined;
    this.say(phase ?? "still");
  }

  /** `share` of the stroke gone, 0 to 1, and the drive's share of it; null when there is no beat. */
  show(share: number | null, drive = 0): void {
    if (!this.hasUpdated) return;
    if (share === null) return this.rest();
    const driving = share < drive;
    const done = driving ? share / drive : (share - drive) / (1 - drive);
    this.say(driving ? "drive" : "recovery");
    const along = this.calm.matches ? stepped(driving, done) : glide(driving, done);
    if (along === this.shown) return;
    this.shown = along;
    this.move(along, driving ? along : 0);
  }

  private rest(): void {
    this.say("still");
    if (this.shown === 0) return;
    this.shown = 0;
    this.move(0, 0);
  }

  private move(along: number, trail: number): void {
    this.carriage.style.setProperty("transform", `translateX(${(along * 100).toFixed(2)}%)`);
    if (trail === this.trail) return;
    this.trail = trail;
    this.swept.style.setProperty("transform", `scaleX(${trail.toFixed(4)})`);
  }

  private say(phase: Phase): void {
    if (phase === this.phase) return;
    this.phase = phase;
    this.classList.toggle("still", phase === "still");
    this.renderRoot.querySelector(".word")!.textContent = phase === "still" ? this.stillWord : phase;
  }
}
customElements.define("stroke-rail", StrokeRail);

/** A body speeds up and slows down within each phase; the phases keep their exact length. */
function glide(driving: boolean, done: number): number {
  const eased = (1 - Math.cos(Math.PI * done)) / 2;
  return driving ? eased : 1 - eased;
}

function stepped(driving: boolean, done: number): number {
  if (driving) return 1;
  return done < 0.5 ? 0.5 : 0;
}
