/** The row screen: what is being rowed now, to the stroke.
 *
 * Properties: `timeline`; `index` of the segment; `elapsed_s`, `left_s`, `stroke`, `strokes_left`, `call` as in a
 * snapshot, in whole seconds; `remark` (something to say once, or ""); `held`; `countIn` (seconds to the first
 * catch, or null); `sound`; `saved`; `sleeps` (nothing keeps the screen from going dark); `chosen` preferences.
 * `extendable` (this block can have one more minute).
 * `beat(beat, moves)` moves the rail; it is called again and again, ten times a second or more.
 * Events: back, hold, skip, extend, end; sound (on or off); wake (the sound that was lost); done (detail: seconds ago).
 */
import { LitElement, html, nothing } from "lit";
import { USUAL, type FigureKind, type Preferences } from "../data/preferences.js";
import type { Segment, Timeline } from "../plan/wire.js";
import type { SoundState } from "../state/snapshot.js";
import type { Beat } from "../timeline/position.js";
import { buttons, type } from "./look.js";
import "./drill-picture.js";
import "./end-question.js";
import type { EndQuestion } from "./end-question.js";
import "./more-choices.js";
import { MORE, type MoreChoices } from "./more-choices.js";
import "./plan-profile.js";
import { depthOf, quickestSplit } from "./profile-geometry.js";
import { faceOf } from "./row-face.js";
import { figures } from "./row-figures.js";
import { rowLook, rowLookOnItsSide, rowLookWide } from "./row-look.js";
import { rowLookChosen } from "./row-look-chosen.js";
import { announcement, asksDone, countInWords, doneWords, focusWords, followingWords, spokenWords, wantedOf, whereWords } from "./row-words.js";
import "./saved-mark.js";
import { partName } from "./segment-words.js";
import "./stop-signs.js";
import type { StopSigns } from "./stop-signs.js";
import type { StrokeCheck } from "./stroke-check.js";
import "./stroke-rail.js";
import type { StrokeRail } from "./stroke-rail.js";
import "./stroke-ticks.js";

/** Letters from which a call is set smaller, so that it does not push the digits down. */
const LONG_CALL = 46;

/** It comes with what is kept after the first load. */
const canCheck = () => customElements.get("stroke-check") !== undefined;

export class RowScreen extends LitElement {
  static override properties = {
    timeline: { attribute: false },
    index: { type: Number },
    elapsed_s: { attribute: false },
    left_s: { attribute: false },
    stroke: { attribute: false },
    strokes_left: { attribute: false },
    call: {},
    remark: {},
    sleeps: { type: Boolean },
    held: { type: Boolean },
    extendable: { type: Boolean },
    countIn: { attribute: false },
    sound: {},
    saved: {},
    chosen: { attribute: false },
  };
  declare timeline: Timeline | undefined;
  declare index: number;
  declare elapsed_s: number;
  declare left_s: number | null;
  declare stroke: number | null;
  declare strokes_left: number | null;
  declare call: string;
  declare remark: string;
  declare sleeps: boolean;
  declare held: boolean;
  declare extendable: boolean;
  declare countIn: number | null;
  declare sound: SoundState;
  declare saved: string;
  declare chosen: Preferences;

  constructor() {
    super();
    this.index = 0;
    this.elapsed_s = 0;
    this.left_s = null;
    this.stroke = null;
    this.strokes_left = null;
    this.call = "";
    this.remark = "";
    this.sleeps = false;
    this.held = false;
    this.extendable = false;
    this.countIn = null;
    this.sound = "on";
    this.saved = "saving";
    this.chosen = USUAL;
  }

  static override styles = [type, buttons, rowLook, rowLookOnItsSide, rowLookWide, rowLookChosen];

  override render() {
    const segment = this.timeline?.segments[this.index];
    if (!this.timeline || !segment) return nothing;
    return html`<main class="screen ${this.held ? "held" : ""} ${this.chosen.hand}-hand ${this.chosen.buttons}">
      <h1 class="heard-only" tabindex="-1">Rowing: ${this.timeline.plan.title}</h1>
      ${this.head(segment)}
      ${this.countIn === null ? this.rowing(segment) : this.counting(segment)}
      <plan-profile .timeline=${this.timeline} .now=${segment.start_s + Math.min(this.elapsed_s, segment.duration_s)}></plan-profile>
      ${this.keys()}
      <div class="foot"><saved-mark short state=${this.saved}></saved-mark>
        ${this.sleeps ? html`<p class="small">The screen may go dark: set this phone to stay on.</p>` : nothing}
        ${this.chosen.keys ? html`<p class="small help">Keys: space holds and goes on, ← back, → skip, + a minute, Esc ends</p>` : nothing}</div>
      <p class="heard-only" role="status">${this.spoken(segment)}</p>
      <stop-signs ?held=${this.held} @hold=${() => this.tell("hold")} @end=${() => this.tell("end")}></stop-signs>
      <end-question ?held=${this.held} @end=${() => this.tell("end")}></end-question>
      <more-choices ?held=${this.held} ?checks=${canCheck()} @check=${this.checkStrokes} @end=${this.askToEnd}></more-choices>
      <stroke-check .asked=${segment.rate} .paced=${segment.paced_rate}></stroke-check>
    </main>`;
  }

  /** Brings the rail to a place in the stroke, from where it `moves` on or not; without a beat it rests. */
  beat(beat: Beat | null, moves: boolean): void {
    this.renderRoot.querySelector<StrokeRail>("stroke-rail")?.show(beat, moves);
  }

  /** Goes to the next block; out of the last one only when asked again, since that ends the session. */
  skip(): void {
    if (this.index + 1 < (this.timeline?.segments.length ?? 0)) this.tell("skip");
    else this.askToEnd();
  }

  askToEnd(): void {
    this.child<EndQuestion>("end-question").open();
  }

  checkStrokes(): void {
    if (canCheck()) this.child<StrokeCheck>("stroke-check").open();
  }

  private head(segment: Segment) {
    return html`<header class="head">
      ${this.where(segment)}
      <div class="tools">
        <button type="button" @click=${() => this.child<StopSigns>("stop-signs").open()}><span>Stop signs</span></button>
        <button type="button" @click=${() => this.tell("sound")}><span>${this.sound === "off" ? "Unmute" : "Mute"}</span></button>
        <button type="button" class="end" @click=${this.askToEnd}><span>End</span></button>
        <button type="button" aria-label="More" @click=${() => this.child<MoreChoices>("more-choices").open()}><span>${MORE}</span></button>
      </div>
    </header>`;
  }

  private where(segment: Segment) {
    const { block, repetition } = whereWords(this.timeline!, segment);
    return html`<p class="where"><b>${partName(segment.part)}</b> <span class=${repetition ? "block" : ""}><span class="word">block</span> ${block}</span>
      ${repetition ? html`<span><span class="word">repetition</span> ${repetition}</span>` : nothing}</p>`;
  }

  private counting(segment: Segment) {
    return html`<div class="count">
      <p>${countInWords(segment, this.elapsed_s)}</p>
      <div class="digits" role="timer" aria-live="off">${this.countIn}</div>
      ${this.sound === "lost" ? this.soundLost() : html`<p dir="auto">${focusWords(segment)}</p>`}
    </div>`;
  }

  private rowing(segment: Segment) {
    const face = faceOf(this.timeline!, segment, this, this.chosen.biggest);
    const ticks = segment.ends === "tap" ? 0 : (segment.strokes ?? 0);
    return html`
      ${this.sound === "lost" ? this.soundLost() : this.say(segment)}
      ${figures(face)}
      ${asksDone(segment) ? this.done(doneWords(this.timeline!, segment)) : nothing}
      <stroke-rail still-word=${segment.kind === "rest" ? "rest" : "no beat"}></stroke-rail>
      <stroke-ticks ?hidden=${!ticks} .total=${ticks} .done=${this.stroke ?? 0}></stroke-ticks>
      <div class="side">
        ${segment.drill ? html`<drill-picture name=${segment.drill.name}></drill-picture>` : nothing}
        ${this.want(segment, face.big.kind)}
        <p class="next"><span>Next</span> <b dir="auto">${followingWords(this.timeline!, segment)}</b></p>
      </div>`;
  }

  /** The one thing to hear now: that it is held, what happened, the call, or else the focus. */
  private say(segment: Segment) {
    const words = this.held ? "Held. The clock stands still." : this.remark || this.call || focusWords(segment);
    return html`<p class="call ${words.length > LONG_CALL ? "long" : ""}" dir="auto">${words}</p>`;
  }

  private soundLost() {
    return html`<button type="button" class="call go lost" @click=${() => this.tell("wake")}>Sound is lost. Tap here</button>
      ${this.remark ? html`<p class="small">${this.remark}</p>` : nothing}`;
  }

  /** A split that is the largest figure is not said once more. */
  private want(segment: Segment, largest: FigureKind) {
    const twice = largest === "split" && this.chosen.effort === "split";
    const { figure, unit, effort, talk } = wantedOf(segment, twice ? "words" : this.chosen.effort);
    if (!figure && !effort && !talk) return nothing;
    const depth = Math.round(depthOf(segment, quickestSplit(this.timeline!), 2));
    return html`<p class="want"><span class="chip d${depth}"></span>
      ${figure ? html`<span><b>${figure}</b> ${unit}</span>` : html`<b>${effort}</b>`}
      <span class="talk">${[figure ? effort : "", talk].filter(Boolean).join(", ")}</span></p>`;
  }

  private done(words: string) {
    const ago = (seconds: number) => () => this.dispatchEvent(new CustomEvent("done", { detail: seconds }));
    return html`<div class="done">
      <button type="button" @click=${ago(10)}>Done 10 s ago</button>
      <button type="button" @click=${ago(5)}>Done 5 s ago</button>
      <button type="button" class="go ${words.length > 4 ? "long" : ""}" @click=${ago(0)}>${words}</button>
    </div>`;
  }

  private keys() {
    return html`<div class="keys">
      <button type="button" class="back" @click=${() => this.tell("back")}>Back</button>
      <button type="button" class="hold ${this.held ? "go" : ""}" @click=${() => this.tell("hold")}>${this.held ? "Go on" : "Hold"}</button>
      <button type="button" class="skip" @click=${this.skip}>Skip</button>
      <button type="button" class="minute" ?disabled=${!this.extendable} @click=${() => this.tell("extend")}>+1 min</button>
    </div>`;
  }

  /** Changes only when the segment, the hold or the sound does: seconds are never read out. */
  private spoken(segment: Segment): string {
    return spokenWords(this.remark || announcement(this.timeline!, segment), this.held, this.sound === "lost");
  }

  private child<T extends HTMLElement>(name: string): T {
    return this.renderRoot.querySelector<T>(name)!;
  }

  private tell(name: "back" | "hold" | "skip" | "extend" | "end" | "sound" | "wake"): void {
    this.dispatchEvent(new CustomEvent(name));
  }
}
customElements.define("row-screen", RowScreen);
