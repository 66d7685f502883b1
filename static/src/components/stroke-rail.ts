/** The rail: the moving picture of one stroke, the seat between catch and finish at its true proportion of time.
 *
 * Call `show(beat, moves)` again and again: the browser moves the picture by itself, and is corrected when it is off.
 * Attributes: `still-word`, said without a beat; `bare`, for the picture alone.
 * With reduced motion the seat stands at the finish, half way and at the catch instead of gliding.
 */
import { LitElement, css, html } from "lit";
import type { Beat } from "../timeline/position.js";
import { type } from "./look.js";
import { seatCourse, sweptCourse } from "./rail-course.js";

/** Off by less, nobody sees it, and the clocks of a frame are read apart. */
const LOOSE_MS = 4;

type Phase = Beat["phase"] | "still";

export class StrokeRail extends LitElement {
  static override properties = { stillWord: { attribute: "still-word" } };
  declare stillWord: string;
  private phase: Phase | undefined;
  private moving: Animation[] = [];
  /** What they are made for: the length of the stroke, the share of its drive, and whether they glide. */
  private course = "";
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
      :host(.still) .seat { background: Canvas; }
      :host(.still) .seat::after { background: CanvasText; }
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

  /** Where in the stroke we are, and whether it goes on from there; null when there is no beat. */
  show(beat: Beat | null, moves: boolean): void {
    if (!this.hasUpdated) return;
    if (!beat) return this.rest();
    this.say(beat.phase);
    const course = `${beat.stroke_s} ${beat.drive} ${this.calm.matches}`;
    if (course !== this.course) this.run(beat);
    this.course = course;
    if (moves) this.keepUp(beat);
    else this.stand(beat);
  }

  /** From here on the browser moves the picture by itself, from stroke to stroke. */
  private run({ stroke_s, drive }: Beat): void {
    this.stop();
    const timing = { duration: stroke_s * 1000, iterations: Infinity };
    const calm = this.calm.matches;
    this.moving = [this.carriage.animate(seatCourse(drive, calm), timing), this.swept.animate(sweptCourse(drive, calm), timing)];
  }

  private keepUp({ stroke_s, share }: Beat): void {
    const [frame_ms, stroke_ms] = [Number(document.timeline.currentTime), stroke_s * 1000];
    const caught_ms = performance.now() - share * stroke_ms;
    const { startTime, playState, currentTime } = this.moving[0]!;
    const off_ms = (frame_ms - caught_ms - Number(currentTime)) % stroke_ms;
    const far_ms = Math.min(Math.abs(off_ms), stroke_ms - Math.abs(off_ms));
    if (startTime !== null && playState === "running" && far_ms < LOOSE_MS) return;
    for (const animation of this.moving) animation.startTime = caught_ms;
  }

  private stand({ stroke_s, share }: Beat): void {
    for (const animation of this.moving) {
      animation.pause();
      animation.currentTime = share * stroke_s * 1000;
    }
  }

  private rest(): void {
    this.say("still");
    this.stop();
  }

  private stop(): void {
    this.moving.forEach((animation) => animation.cancel());
    this.moving = [];
    this.course = "";
  }

  private say(phase: Phase): void {
    if (phase === this.phase) return;
    this.phase = phase;
    this.classList.toggle("still", phase === "still");
    this.renderRoot.querySelector(".word")!.textContent = phase === "still" ? this.stillWord : phase;
  }
}
customElements.define("stroke-rail", StrokeRail);
