/** The gap: time to the start largest, what to do meanwhile, what the piece is, and two ways to start it.
 *
 * Properties: `timeline`, `index`, `left_s` (whole seconds, 0 when over), `startsAt` (clock time set, or ""),
 * `held`, `saved`, `sound`, `hand`, `buttons`, `extendable`, `remark` (something to say once, or "").
 * Events: start (count-in now), by-clock (detail: ms since 1970), no-clock, back, hold,
 * sound, wake, end.
 */
import { LitElement, css, html, nothing } from "lit";
import type { Buttons, Hand } from "../data/preferences.js";
import type { Segment, Timeline } from "../plan/wire.js";
import { clock } from "../plan/format.js";
import "./clock-note.js";
import "./end-question.js";
import type { EndQuestion } from "./end-question.js";
import { buttons, fields, type } from "./look.js";
import "./more-choices.js";
import { MORE, type MoreChoices } from "./more-choices.js";
import "./plan-profile.js";
import "./saved-mark.js";
import { nextAt, startProblem } from "../state/time-of-day.js";
import { comingWords, spokenWords } from "./row-words.js";
import { partName, settingWords } from "./segment-words.js";
import "./stop-signs.js";
import type { StopSigns } from "./stop-signs.js";

export class GapScreen extends LitElement {
  static override properties = {
    timeline: { attribute: false },
    index: { type: Number },
    left_s: { attribute: false },
    startsAt: {},
    held: { type: Boolean },
    saved: {},
    sound: {},
    extendable: { type: Boolean },
    remark: {},
    hand: {},
    buttons: {},
    trouble: { state: true },
  };
  declare sound: string;
  declare hand: Hand;
  declare buttons: Buttons;
  declare extendable: boolean;
  declare remark: string;
  declare trouble: string;
  declare timeline: Timeline | undefined;
  declare index: number;
  declare left_s: number;
  declare startsAt: string;
  declare held: boolean;
  declare saved: string;

  constructor() {
    super();
    this.index = 0;
    this.left_s = 0;
    this.startsAt = "";
    this.held = false;
    this.saved = "saving";
    this.sound = "on";
    this.hand = "right";
    this.buttons = "usual";
    this.extendable = false;
    this.remark = "";
    this.trouble = "";
  }

  static override styles = [type, buttons, fields, css`
    :host { container-type: size; height: 100dvh; overflow: hidden; }
    main { display: flex; flex-direction: column; gap: clamp(8px, 1.3cqh, 18px); height: 100%; overflow: auto;
      padding: max(8px, env(safe-area-inset-top)) var(--side) max(12px, env(safe-area-inset-bottom)); }
    header { display: flex; justify-content: space-between; align-items: center; }
    h1 { font-size: clamp(18px, 5.6cqw, 26px); }
    .tools { --between: 3px; display: flex; flex-wrap: wrap; justify-content: flex-end; margin: 0 calc(-1 * var(--between)); }
    .tools button { padding: 0 var(--between); border: 0; background: transparent; font-size: 16px; }
    .tools span { display: grid; place-items: center; width: 100%; min-height: 42px; padding: 4px 9px; border: 1px solid var(--edge); border-radius: 12px; background: var(--hull); }
    .time { font-size: min(33.8cqw, 24cqh); margin-left: -0.04em; }
    .time.five { font-size: min(31cqw, 24cqh); }
    .time.eight { font-size: min(19cqw, 24cqh); }
    .unit { display: block; margin-top: 10px; font-size: 19px; color: var(--ink-2); }
    .count { flex: 1 1 auto; display: grid; align-content: center; }
    .todo { display: flex; flex-wrap: wrap; gap: 4px 18px; font-size: 22px; font-weight: 700; }
    .todo li::before { content: "· "; color: var(--catch); }
    .lost { border-color: var(--catch); border-width: 3px; font-size: 22px; }
    .set { font-size: 22px; font-weight: 700; border-left: 6px solid var(--catch); padding: 4px 12px; }
    .piece { display: grid; gap: 4px; padding: 14px; background: var(--hull); border-radius: var(--r); font-size: 19px; }
    .piece b { font-size: 23px; }
    form { position: relative; display: grid; grid-template-columns: 1fr auto; gap: 10px; align-items: end; }
    form input { padding: 6px 12px; }
    /* laid over what stands above the field, so that no button moves */
    form p { position: absolute; z-index: 1; inset: auto 0 calc(100% + 6px); padding: 10px 12px; border: 3px solid var(--catch); border-radius: var(--r); background: var(--hull); font-size: 17px; line-height: 1.3; }
    form p:empty { display: none; }
    form label { display: grid; gap: 4px; font-size: 17px; }
    .go { min-height: 76px; font-size: 26px; }
    plan-profile { height: auto; flex: 0 1 56px; min-height: 30px; }
    .about, .act { display: grid; gap: 10px; }
    .keys { display: grid; grid-template-columns: 1fr 1fr 1fr; gap: 10px; }
    .keys button { padding: 0 6px; }
    .large .go, .large .keys button { min-height: 96px; font-size: 1.5rem; }
    .left-hand header { flex-direction: row-reverse; }
    @container (max-width: 374px) { .end { display: none; } }
    @container (max-height: 700px) and (orientation: portrait) {
      .time, .time.five { font-size: min(28.2cqw, 17cqh); }
      .todo { font-size: 19px; }
      .piece { padding: 8px 12px; font-size: 17px; }
      .piece b { font-size: 19px; }
      .go { min-height: 60px; padding: 0 8px; font-size: 22px; }
      .large .go, .large .keys button { min-height: 76px; }
      .large .todo, .lost + .piece span { display: none; }
      .lost { min-height: 48px; font-size: 19px; }
      main { gap: 6px; }
      plan-profile, saved-mark { display: none; }
    }
    @container (orientation: landscape) and (max-height: 540px) and (min-width: 560px) {
      main { display: grid; grid-template: auto 1fr auto / minmax(0, 1.15fr) minmax(0, 1fr); gap: 6px 24px; }
      header { grid-column: 1 / -1; }
      .time, .time.five { font-size: min(19cqw, 42cqh); }
      .time.eight { font-size: min(12cqw, 42cqh); }
      .todo { font-size: 18px; }
      .set { font-size: 18px; }
      .piece { padding: 6px 12px; font-size: 16px; line-height: 1.25; }
      .piece b { font-size: 18px; }
      .act { grid-column: 1 / -1; grid-template-columns: minmax(0, 1.1fr) minmax(0, 0.8fr) minmax(0, 1.5fr); gap: 4px 14px; align-items: end; }
      clock-note { grid-column: 1 / -1; order: 1; }
      .left-hand .go { order: -1; }
      .left-hand .keys { order: -2; }
      form { gap: 8px; }
      form label { font-size: 15px; }
      .go { min-height: 60px; padding: 0 8px; font-size: 22px; }
      .keys { gap: 6px; }
      .keys button { padding: 0 2px; }
      plan-profile, saved-mark { display: none; }
    }
    @container (orientation: landscape) and (max-height: 540px) and (min-width: 560px) and (max-width: 740px) {
      main { gap: 4px 14px; }
      .time, .time.five { font-size: min(17cqw, 34cqh); }
      .unit { margin-top: 4px; font-size: 16px; }
      .act { grid-template-columns: minmax(190px, 1.1fr) minmax(96px, 0.7fr) minmax(192px, 1.2fr); gap: 8px; }
      .left-hand .act { grid-template-columns: minmax(192px, 1.2fr) minmax(96px, 0.7fr) minmax(190px, 1.1fr); }
      .act button { padding: 0 2px; font-size: 18px; }
      form input { padding: 4px 6px; font-size: 1rem; }
    }
    @container (orientation: landscape) and (max-height: 400px) {
      .large .go, .large .keys button { min-height: 72px; font-size: 1.25rem; }
    }
    @container (min-width: 840px) and (min-height: 541px) {
      main { max-width: 1100px; margin: 0 auto; }
      .act { grid-template-columns: 1fr 1fr 1fr; align-items: end; }
      clock-note { grid-column: 1 / -1; order: 1; }
    }
  `];

  override render() {
    const next = this.timeline?.segments[this.index + 1];
    if (!this.timeline) return nothing;
    return html`<main class="${this.hand}-hand ${this.buttons}">
      <header><h1 tabindex="-1">${this.held ? "Gap, held" : "Gap"}</h1><div class="tools">
        <button type="button" @click=${() => this.child<StopSigns>("stop-signs").open()}><span>Stop signs</span></button>
        <button type="button" @click=${() => this.tell("sound")}><span>${this.sound === "off" ? "Unmute" : "Mute"}</span></button>
        <button type="button" class="end" @click=${this.askToEnd}><span>End</span></button>
        <button type="button" aria-label="More" @click=${() => this.child<MoreChoices>("more-choices").open()}><span>${MORE}</span></button>
      </div></header>
      <div class="count">
        <div class="time digits ${sizeOf(clock(this.left_s))}" role="timer" aria-live="off" aria-label="Time to the start">${clock(this.left_s)}</div>
        <span class="unit">${this.timeWords()}</span>
      </div>
      <div class="about">
        ${this.sound === "lost" ? html`<button type="button" class="lost" @click=${() => this.tell("wake")}>Sound is lost. Tap here</button>`
          : html`<ul class="todo"><li>Stand up</li><li>Walk</li><li>Drink</li></ul>`}
        ${next?.setting ? html`<p class="set">Set the machine: ${settingWords(next.setting)}</p>` : nothing}
        ${next ? this.piece(next) : nothing}
      </div>
      <plan-profile .timeline=${this.timeline} .now=${this.position()}></plan-profile>
      <div class="act">${this.byClock()}
        <button type="button" class="go" @click=${() => this.tell("start")}>Start now</button>
        <div class="keys"><button type="button" @click=${() => this.tell("back")}>Back</button>
          <button type="button" @click=${() => this.tell("hold")}>${this.held ? "Go on" : "Hold"}</button>
          <button type="button" class="minute" ?disabled=${!this.extendable} @click=${() => this.tell("extend")}>+1 min</button></div></div>
      <saved-mark short state=${this.saved}></saved-mark>
      <p class="heard-only" role="status">${this.spoken()}</p>
      <stop-signs ?held=${this.held} @hold=${() => this.tell("hold")} @end=${() => this.tell("end")}></stop-signs>
      <end-question ?held=${this.held} @end=${() => this.tell("end")}></end-question>
      <more-choices ?held=${this.held} @end=${this.askToEnd}></more-choices>
    </main>`;
  }

  askToEnd(): void {
    this.child<EndQuestion>("end-question").open();
  }

  /** Changes only when something happens: seconds are never read out. */
  private spoken(): string {
    const words = this.left_s > 0 ? "Gap. Stand up, walk, drink." : "The gap is over. Press Start now when you are ready.";
    return spokenWords(this.remark || words, this.held, this.sound === "lost");
  }

  private timeWords(): string {
    if (this.startsAt) return `to the start at ${this.startsAt}; it starts by itself`;
    return this.left_s > 0 ? "to the start; the piece waits for you" : "ready when you are";
  }

  private position(): number {
    const segment = this.timeline!.segments[this.index]!;
    return segment.start_s + Math.max(0, segment.duration_s - this.left_s);
  }

  private piece(next: Segment) {
    const part = this.timeline!.totals.parts.find((item) => item.part_index === next.part_index);
    const { what, starts } = comingWords(this.timeline!, next);
    return html`<div class="piece"><b dir="auto">${partName(next.part)}: ${what}</b>
      <span>${[part ? `${part.estimated ? "about " : ""}${clock(part.seconds_s)} in all` : "", starts].filter(Boolean).join(" · ")}</span>
      ${next.focus ? html`<span dir="auto">${next.focus}</span>` : nothing}</div>`;
  }

  private byClock() {
    if (this.startsAt) {
      return html`<button type="button" @click=${() => this.tell("no-clock")}>Do not start at ${this.startsAt}</button>`;
    }
    return html`<form @submit=${this.setClock}><label>Or start by the clock at
      <input type="time" name="at" aria-describedby="clock-trouble" @input=${() => (this.trouble = "")} /></label><button type="submit">Set</button>
      <p id="clock-trouble" role="alert">${this.trouble}</p></form><clock-note></clock-note>`;
  }

  private setClock(event: Event): void {
    event.preventDefault();
    const input = this.renderRoot.querySelector<HTMLInputElement>("input[name=at]")!;
    if (!input.value) return void (this.trouble = "Write the time of day to start at first, such as 18:00.");
    const now_ms = Date.now();
    const at_ms = nextAt(input.value, now_ms);
    this.trouble = startProblem(input.value, at_ms, now_ms);
    if (!this.trouble) this.dispatchEvent(new CustomEvent("by-clock", { detail: at_ms }));
  }

  private child<T extends HTMLElement>(name: string): T {
    return this.renderRoot.querySelector<T>(name)!;
  }

  private tell(name: "start" | "no-clock" | "back" | "hold" | "extend" | "sound" | "wake" | "end"): void {
    this.dispatchEvent(new CustomEvent(name));
  }
}
customElements.define("gap-screen", GapScreen);

/** A start by the clock may be hours away: "4:05", "10:30", "1:30:00". */
function sizeOf(time: string): string {
  return time.length > 5 ? "eight" : time.length > 4 ? "five" : "";
}
