/** The wall: the session that runs, for a room to follow from metres away.
 *
 * Properties: `timeline`, `index` of the segment, `moment` (see wall-words), `stroke`, `sound`, `remark` (something to
 * say once, or ""), `lanes` and `targets` (see wall-lanes), `sight` (see data/wall, or null), `clock` (the time of day), `note` (what stands before it, or "").
 * `beat(beat, moves)` moves the rail; it is called again and again, ten times a second or more.
 * Events: start (now, instead of at the time set), hold, back, skip, sound, wake (any touch), full, end; lanes (detail: all lanes).
 */
import { LitElement, html, nothing, type PropertyValues } from "lit";
import type { Sight } from "../data/wall.js";
import type { Lane } from "../plan/lanes.js";
import type { Segment, Target, Timeline } from "../plan/wire.js";
import type { SoundState } from "../state/snapshot.js";
import type { Beat } from "../timeline/position.js";
import "./end-question.js";
import type { EndQuestion } from "./end-question.js";
import { dialogs } from "./dialog-look.js";
import "./lane-entry.js";
import type { LaneEntry } from "./lane-entry.js";
import { buttons, type } from "./look.js";
import "./plan-profile.js";
import { announcement, spokenWords } from "./row-words.js";
import "./stop-signs.js";
import type { StopSigns } from "./stop-signs.js";
import "./stroke-rail.js";
import type { StrokeRail } from "./stroke-rail.js";
import "./wall-keys.js";
import "./wall-lanes.js";
import { wallLook } from "./wall-look.js";
import { callSize, figureSize, legibleSize, shiftAt, wallSizes, type Screen, type WallSizes } from "./wall-sizes.js";
import { nextLine, placeWords, wallFace, wholeLeft, type WallFace, type WallMoment } from "./wall-words.js";

type Event = "start" | "hold" | "back" | "skip" | "sound" | "wake" | "full" | "end";

export class WallScreen extends LitElement {
  static override properties = {
    timeline: { attribute: false }, index: { type: Number }, moment: { attribute: false }, stroke: { attribute: false }, sound: {},
    remark: {}, note: {}, lanes: { attribute: false }, targets: { attribute: false }, sight: { attribute: false }, clock: {},
    awake: { type: Boolean, reflect: true }, stays: { state: true }, screen: { state: true },
  };
  declare timeline: Timeline | undefined;
  declare index: number;
  declare moment: WallMoment | undefined;
  declare stroke: number | null;
  declare sound: SoundState;
  declare remark: string;
  declare note: string;
  declare lanes: readonly Lane[];
  declare targets: readonly (readonly (Target | undefined)[])[];
  declare sight: Sight | null;
  declare clock: string;
  declare awake: boolean;
  declare stays: boolean;
  declare screen: Screen;
  private sizes: WallSizes | undefined;
  private readonly watch = new ResizeObserver(() => (this.screen = { width: this.clientWidth, height: this.clientHeight }));

  constructor() {
    super();
    this.index = 0;
    this.stroke = null;
    this.sound = "on";
    this.remark = "";
    this.note = "";
    this.lanes = [];
    this.targets = [];
    this.sight = null;
    this.clock = "";
    this.awake = false;
    this.stays = false;
    this.screen = { width: 0, height: 0 };
    this.addEventListener("click", () => this.tell("wake"));
  }

  static override styles = [type, buttons, dialogs, wallLook];

  override connectedCallback(): void {
    super.connectedCallback();
    this.watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.watch.disconnect();
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("screen") || changed.has("lanes") || changed.has("sight")) this.measure();
    if (changed.has("clock")) this.shift();
  }

  override render() {
    const segment = this.timeline?.segments[this.index];
    if (!this.timeline || !segment || !this.moment || !this.sizes) return nothing;
    const face = wallFace(segment, this.moment);
    const held = this.moment.phase === "held";
    this.style.setProperty("--figure", px(figureSize(this.sizes, face.figure, Boolean(face.before || face.note))));
    this.style.setProperty("--call", px(callSize(this.sizes, this.remark || face.call)));
    return html`<main class="${this.sizes.layout} ${held ? "held" : ""}">
      <header><h1 tabindex="-1" dir="auto">${this.timeline.plan.title}</h1><span class="where">${placeWords(this.timeline, segment)}</span>
        <span class="heard">${this.note}</span><span class="clock">${this.clock}</span></header>
      ${this.face(face)}
      <stroke-rail bare></stroke-rail>
      ${this.lanes.length ? this.room() : nothing}
      ${this.foot(segment)}
      <p class="heard-only" role="status">${this.spoken(segment, held)}</p>
    </main>
    ${this.keys(held)}
    <stop-signs ?held=${held} @hold=${() => this.tell("hold")} @end=${() => this.tell("end")}></stop-signs>
    <end-question led ?held=${held} @end=${() => this.tell("end")}></end-question>
    ${this.laneQuestion()}`;
  }

  /** Brings the rail to a place in the stroke, from where it `moves` on or not; without a beat it rests. */
  beat(beat: Beat | null, moves: boolean): void {
    this.renderRoot.querySelector<StrokeRail>("stroke-rail")?.show(beat, moves);
  }

  /** Goes to the next block; out of the last one only when asked again, since that ends the session. */
  skip(): void {
    if (this.index + 1 < (this.timeline?.segments.length ?? 0)) this.tell("skip");
    else this.askEnd();
  }

  askEnd(): void {
    this.renderRoot.querySelector<EndQuestion>("end-question")!.open();
  }

  private face({ before, figure, note, rate, effort, strokes, strokes_note, call }: WallFace) {
    return html`<div class="face">
        ${before ? html`<p class="note">${before}</p>` : nothing}
        <div class="figure digits" role="timer" aria-live="off" aria-label=${before || note ? nothing : "Time left"}>${figure}</div>
        ${note ? html`<p class="note">${note}</p>` : nothing}</div>
      <div class="pair">
        ${rate || effort ? html`<div>${rate ? html`<span class="digits"><i>r</i>${rate}</span>` : nothing}<span class="unit effort">${effort}</span></div>` : nothing}
        ${strokes ? html`<div><span class="digits">${strokes}</span><span class="unit">${strokes_note}</span></div>` : nothing}</div>
      <p class="call" dir="auto">${this.remark || call}</p>`;
  }

  private room() {
    const { elapsed_s, left_s, count_in } = this.moment!;
    return html`<wall-lanes .timeline=${this.timeline} .lanes=${this.lanes} .targets=${this.targets} .index=${this.index} .rows=${this.sizes!.rows}
      .since_s=${count_in === null ? elapsed_s : Infinity} .to_s=${count_in ?? left_s ?? Infinity} .stays=${this.stays}></wall-lanes>`;
  }

  private foot(segment: Segment) {
    const { elapsed_s } = this.moment!;
    return html`<footer>
      <plan-profile labels .timeline=${this.timeline} .now=${segment.start_s + Math.min(elapsed_s, segment.duration_s)}></plan-profile>
      <p class="next"><span>Next</span><b dir="auto">${nextLine(this.timeline!.segments[this.index + 1])}</b>
        ${this.sound === "lost" ? html`<b class="lost">No sound: touch here</b>` : nothing}
        <span>${wholeLeft(this.timeline!, segment, elapsed_s)} left in all</span></p></footer>`;
  }

  private keys(held: boolean) {
    return html`<wall-keys .held=${held} .waiting=${this.moment!.starts_at !== "" && this.moment!.count_in !== null} .sound=${this.sound}
      .turns=${this.lanes.length > this.sizes!.rows} .stays=${this.stays} @start=${() => this.tell("start")} @hold=${() => this.tell("hold")}
      @back=${() => this.tell("back")} @skip=${this.skip} @sound=${() => this.tell("sound")} @full=${() => this.tell("full")}
      @stay=${() => (this.stays = !this.stays)} @end=${this.askEnd} @signs=${() => this.renderRoot.querySelector<StopSigns>("stop-signs")!.open()}
      @awake=${({ detail }: CustomEvent<boolean>) => (this.awake = detail)}>
      <button type="button" @click=${() => this.renderRoot.querySelector<HTMLDialogElement>(".of-lanes")!.showModal()}>Lanes</button></wall-keys>`;
  }

  /** Somebody comes late, or has another result; the clock goes on behind it. */
  private laneQuestion() {
    const done = (event: globalThis.Event) => {
      if (this.renderRoot.querySelector<LaneEntry>("lane-entry")!.check()) (event.target as HTMLElement).closest("dialog")!.close();
    };
    return html`<dialog class="of-lanes" aria-labelledby="of-lanes">
      <h2 id="of-lanes">Lanes</h2>
      <lane-entry .lanes=${this.lanes} @lanes=${({ detail }: CustomEvent<Lane[]>) => this.dispatchEvent(new CustomEvent("lanes", { detail }))}></lane-entry>
      <button type="button" class="go" @click=${done}>Done</button>
    </dialog>`;
  }

  /** Changes only when the segment or the hold does: seconds are never read out. */
  private spoken(segment: Segment, held: boolean): string {
    return spokenWords(this.remark || announcement(this.timeline!, segment), held, this.sound === "lost");
  }

  private measure(): void {
    const { sight, screen: size } = this;
    if (!size.width || !size.height) return;
    const sizes = wallSizes(size, this.lanes.length, sight ? legibleSize(sight, globalThis.screen) : undefined);
    for (const name of ["pair", "lane", "top", "next", "profile"] as const) this.style.setProperty(`--${name}`, px(sizes[name]));
    this.style.setProperty("--rail-height", px(sizes.rail));
    this.style.setProperty("--side-width", px(sizes.side));
    this.sizes = sizes;
  }

  /** Every minute, with the clock. */
  private shift(): void {
    const { x, y } = shiftAt(Math.floor(Date.now() / 60_000));
    this.style.setProperty("--shift-x", px(x));
    this.style.setProperty("--shift-y", px(y));
  }

  private tell(name: Event): void {
    this.dispatchEvent(new CustomEvent(name));
  }
}
customElements.define("wall-screen", WallScreen);

function px(value: number): string {
  return `${Math.round(value * 10) / 10}px`;
}
