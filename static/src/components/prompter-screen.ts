/** The coach's prompter: the block now, and the calls and blocks that come, each with a countdown.
 *
 * Properties: `planTitle`, `face` (see wall-words), `place` (the part and block), `rows` (what comes, see `PrompterRow`), `whole` (time left in all),
 * `held`, `waiting` (for a start set by the clock), `sound`, `watching` (another tab runs the session), `note` (a line about that, or ""),
 * `remark`, `clock`, `size` and `mirrored` (see data/prompter).
 * Events: start, hold, back, skip, sound, wake, full, end; `look` (detail: size and mirrored).
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { LARGEST, type PrompterSettings } from "../data/prompter.js";
import type { SoundState } from "../state/snapshot.js";
import "./end-question.js";
import type { EndQuestion } from "./end-question.js";
import { buttons, type } from "./look.js";
import { spokenWords } from "./row-words.js";
import "./stop-signs.js";
import type { StopSigns } from "./stop-signs.js";
import "./wall-keys.js";
import { shiftAt } from "./wall-sizes.js";
import type { WallFace } from "./wall-words.js";

/** A line as it is read. */
export interface PrompterRow {
  kind: "block" | "call" | "end";
  text: string;
  focus: string;
  /** "0:12", "now", or "" where nobody knows when it comes. */
  count: string;
  /** It is to be said now, or within a few seconds. */
  near: boolean;
}

type Event = "start" | "hold" | "back" | "skip" | "sound" | "wake" | "full" | "end";

/** Each step of the text is so much larger than the one before. */
const STEP = 1.24;
const SMALLEST_VMIN = 3;

export class PrompterScreen extends LitElement {
  static override properties = {
    planTitle: {}, face: { attribute: false }, place: {}, rows: { attribute: false }, whole: {}, held: { type: Boolean }, waiting: { type: Boolean }, sound: {},
    watching: { type: Boolean }, note: {}, remark: {}, clock: {}, size: { type: Number }, mirrored: { type: Boolean }, awake: { type: Boolean, reflect: true },
  };
  declare planTitle: string;
  declare face: WallFace | undefined;
  declare place: string;
  declare rows: readonly PrompterRow[];
  declare whole: string;
  declare held: boolean;
  declare waiting: boolean;
  declare sound: SoundState;
  declare watching: boolean;
  declare note: string;
  declare remark: string;
  declare clock: string;
  declare size: number;
  declare mirrored: boolean;
  declare awake: boolean;
  private readonly watch = new ResizeObserver(([keys]) => this.style.setProperty("--keys", `${keys!.target.clientHeight}px`));

  constructor() {
    super();
    this.planTitle = "";
    this.place = "";
    this.rows = [];
    this.whole = "";
    this.held = false;
    this.waiting = false;
    this.sound = "off";
    this.watching = false;
    this.note = "";
    this.remark = "";
    this.clock = "";
    this.size = 0;
    this.mirrored = false;
    this.awake = false;
    this.addEventListener("click", () => this.tell("wake"));
  }

  static override styles = [type, buttons, css`
    /* --type is what is chosen; what stands around the calls grows with it only as far as they keep their room. */
    :host { display: block; height: 100dvh; overflow: hidden; cursor: none; container-type: size; font-size: max(15px, var(--type)); line-height: 1.15;
      --head: max(15px, min(var(--type), 6.5cqh, 7.5cqw)); --edge-type: max(15px, min(0.5em, 4cqh, 4cqw)); }
    :host([awake]) { cursor: auto; }
    main { display: grid; grid-template: auto auto minmax(0, 1fr) auto / minmax(0, 1fr); gap: 1.6cqmin; height: 100%; padding: 2.2cqmin 3cqmin;
      transform: translate(var(--shift-x, 0), var(--shift-y, 0)); }
    /* while the keys stand there, the lines end above them */
    :host([awake]) main { height: calc(100% - var(--keys, 0px)); }
    main.mirrored { transform: scaleX(-1); }
    header, footer { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 1em; font-size: var(--edge-type); color: var(--ink-2); }
    h1 { flex: 1 1 0; min-width: min(100%, 8em); font-size: 1em; line-height: 1.2; text-wrap: nowrap; overflow: hidden; text-overflow: ellipsis; color: var(--ink); }
    .now { display: flex; align-items: flex-end; gap: 0.2em 0.7em; padding-bottom: 0.3em; border-bottom: 2px solid var(--edge); font-size: var(--head); }
    .now > * { display: grid; gap: 0.2em; }
    .time { flex: none; justify-items: start; }
    .time .digits { font-size: 1.7em; }
    .what { min-width: 0; }
    .what b { overflow-wrap: anywhere; }
    .unit { font-size: max(15px, 0.62em); color: var(--ink-2); }
    /* lines that do not fit whole stand in a further column, out of sight */
    ol { display: flex; flex-flow: column wrap; gap: 0.42em; min-width: 0; overflow: hidden; }
    li { display: grid; grid-template-columns: 3.1em minmax(0, 1fr); gap: 0 0.5em; align-items: baseline; width: 100%; padding-left: 0.3em; border-left: 0.22em solid transparent; }
    /* what comes later is no larger than leaves a few lines in sight */
    li + li { font-size: min(1em, 7cqmin); }
    li.near { border-color: var(--catch); }
    li .count { font-family: var(--digits); font-weight: 700; letter-spacing: -0.04em; text-align: right; font-variant-numeric: tabular-nums; }
    li.call .text { font-weight: 700; }
    li.block .text, li.end .text { color: var(--ink-2); }
    li.block.near .text, li.end.near .text { color: var(--ink); }
    .text { min-width: 0; overflow-wrap: anywhere; }
    .focus { display: block; font-size: max(15px, 0.7em); color: var(--ink-2); }
    /* too narrow for a countdown beside the words: it stands above them */
    @container (max-width: 14em) {
      li { grid-template-columns: minmax(0, 1fr); }
      li .count { text-align: left; font-size: 0.8em; }
      .count:empty { display: none; }
    }
    /* so low that the keys leave room for little more than the first line */
    @container (max-height: 600px) {
      :host([awake]) footer { display: none; }
      :host([awake]) li { font-size: min(1em, 7cqmin); }
    }
    @media (max-height: 300px) {
      :host { overflow: hidden auto; }
      :host([awake]) main { height: 100%; }
    }
    @media (forced-colors: active) { li:not(.near) { border-color: Canvas; } li.near { border-color: Highlight; } }
  `];

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.watch.disconnect();
  }

  override updated(): void {
    const keys = this.renderRoot.querySelector("wall-keys");
    if (keys) this.watch.observe(keys);
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("size")) this.style.setProperty("--type", `${(SMALLEST_VMIN * STEP ** this.size).toFixed(2)}vmin`);
    if (!changed.has("clock")) return;
    const { x, y } = shiftAt(Math.floor(Date.now() / 60_000));
    this.style.setProperty("--shift-x", `${x}px`);
    this.style.setProperty("--shift-y", `${y}px`);
  }

  override render() {
    if (!this.face) return nothing;
    return html`<main class=${this.mirrored ? "mirrored" : ""}>
      <header><h1 tabindex="-1" dir="auto">${this.planTitle}</h1><span>${this.note}</span><span>${this.clock}</span></header>
      ${this.now(this.face)}
      <ol aria-label="What comes">${this.rows.map(row)}</ol>
      <footer><span>${this.sound === "lost" ? "No sound: touch here" : this.place}</span><span>${this.whole} left in all</span></footer>
      <p class="heard-only" role="status">${spokenWords(`${this.place}. ${this.face.effort}`, this.held, this.sound === "lost")}</p>
    </main>
    ${this.keys()}
    ${this.watching ? nothing : html`<stop-signs ?held=${this.held} @hold=${() => this.tell("hold")} @end=${() => this.tell("end")}></stop-signs>
      <end-question led ?held=${this.held} @end=${() => this.tell("end")}></end-question>`}`;
  }

  skip(): void {
    if (this.rows.some(({ kind }) => kind === "block")) this.tell("skip");
    else this.askEnd();
  }

  askEnd(): void {
    this.renderRoot.querySelector<EndQuestion>("end-question")?.open();
  }

  private now({ before, figure, note, rate, effort, strokes, strokes_note }: WallFace) {
    const what = this.remark || [rate && `r${rate}`, effort].filter(Boolean).join(" ");
    return html`<div class="now">
      <div class="time">${before ? html`<span class="unit">${before}</span>` : nothing}
        <span class="digits" role="timer" aria-live="off" aria-label=${before || note ? nothing : "Time left"}>${figure}</span></div>
      <div class="what">${this.held ? html`<b>held</b>` : note ? html`<span class="unit">${note}</span>` : nothing}
        ${what ? html`<b dir="auto">${what}</b>` : nothing}
        ${strokes ? html`<span class="unit">${strokes} ${strokes_note}</span>` : nothing}</div></div>`;
  }

  private keys() {
    const { size, mirrored } = this;
    return html`<wall-keys .watching=${this.watching} .held=${this.held} .waiting=${this.waiting} .sound=${this.sound} @start=${() => this.tell("start")}
      @hold=${() => this.tell("hold")} @back=${() => this.tell("back")} @skip=${this.skip} @sound=${() => this.tell("sound")} @full=${() => this.tell("full")}
      @end=${this.askEnd} @signs=${() => this.renderRoot.querySelector<StopSigns>("stop-signs")!.open()}
      @awake=${({ detail }: CustomEvent<boolean>) => (this.awake = detail)}>
      <button type="button" ?disabled=${size <= 0} @click=${() => this.look({ size: size - 1, mirrored })}>Smaller</button>
      <button type="button" ?disabled=${size >= LARGEST} @click=${() => this.look({ size: size + 1, mirrored })}>Larger</button>
      <button type="button" aria-pressed=${mirrored ? "true" : "false"} @click=${() => this.look({ size, mirrored: !mirrored })}>Mirror</button>
    </wall-keys>`;
  }

  private look(detail: PrompterSettings): void {
    this.dispatchEvent(new CustomEvent<PrompterSettings>("look", { detail }));
  }

  private tell(name: Event): void {
    this.dispatchEvent(new CustomEvent(name));
  }
}
customElements.define("prompter-screen", PrompterScreen);

function row({ kind, text, focus, count, near }: PrompterRow) {
  return html`<li class="${kind} ${near ? "near" : ""}"><span class="count">${count}</span>
    <span class="text" dir="auto">${text}${focus ? html`<span class="focus" dir="auto">${focus}</span>` : nothing}</span></li>`;
}
