/** The card before each session: body, machine, room. Property `timeline`; events `start`, `leave`. */
import { LitElement, css, html, nothing } from "lit";
import type { Timeline } from "../plan/wire.js";
import { buttons, page, type } from "./look.js";
import { settingWords } from "./segment-words.js";

/** Systems that let a page choose how it sounds stop its sound on lock [I: goldfire/howler.js#1309]; of the others some do. */
const SILENCED = `${"audioSession" in navigator ? "It falls" : "Some phones fall"} silent when locked, or in a call: keep it unlocked.`;

export class SetUpCard extends LitElement {
  static override properties = { timeline: { attribute: false }, starting: { type: Boolean } };
  declare timeline: Timeline | undefined;
  declare starting: boolean;

  constructor() {
    super();
    this.starting = false;
  }

  static override styles = [type, buttons, page, css`
    dl { display: grid; gap: 2px; background: var(--hull); border-radius: var(--r); padding: 4px 16px; }
    dl div { display: grid; grid-template-columns: 5.2em 1fr; gap: 12px; padding: 12px 0; border-bottom: 1px solid var(--line); }
    dl div:last-child { border: 0; }
    dt { font-weight: 700; }
    .note { border-left: 6px solid var(--edge); padding: 4px 14px; }
    .ask { font-weight: 700; }
    details p { margin-top: 8px; }
    summary { min-height: 44px; display: list-item; line-height: 44px; cursor: pointer; text-decoration: underline; text-underline-offset: 4px; }
    .bar { grid-template-columns: 1fr 2fr; }
    @media (min-width: 700px) { dl div { grid-template-columns: 8em 1fr; } }
  `];

  override render() {
    const plan = this.timeline?.plan;
    if (!plan) return nothing;
    return html`<main>
      <div><p class="small" dir="auto"><bdi>${plan.title}</bdi></p><h1 tabindex="-1">Set up, then sit down</h1></div>
      ${plan.setup ? html`<p class="note" dir="auto">${plan.setup}</p>` : nothing}
      <dl>
        <div><dt>Feet</dt><dd>Strap over the widest part of the foot, snug. Set the foot height so that your shins
          stand upright at the catch and go no further.</dd></div>
        <div><dt>Machine</dt><dd>${this.machine()}</dd></div>
        <div><dt>Fan</dt><dd>On, blowing at you.</dd></div>
        <div><dt>Water</dt><dd>Where you can reach it from the seat.</dd></div>
        <div><dt>Floor</dt><dd>Machine level and steady; nothing under the seat's way or behind you.</dd></div>
        <div><dt>Phone</dt><dd>One or two metres away, screen towards you, sound
          up${"wakeLock" in navigator ? "" : ", and set so that its screen does not go dark by itself"}.
          ${SILENCED} Your place in the session is kept all the same.</dd></div>
      </dl>
      <div class="bar">
        <button type="button" @click=${() => this.tell("leave")}>Not yet</button>
        <button type="button" class="go" ?disabled=${this.starting} @click=${() => this.tell("start")}>Start rowing</button>
      </div>
    </main>`;
  }

  private machine() {
    const { setting } = this.timeline!.plan;
    if (setting && "lever" in setting) return html`<span class="ask">Set it to ${settingWords(setting)}.</span> A machine without a lever: leave it as it is.`;
    const words = setting
      ? html`<span class="ask">Set it to ${settingWords(setting)}.</span>`
      : html`This plan asks for no setting. Most people train at a drag factor of about 110 to 140, which is well
          below the highest lever on most machines.`;
    return html`${words}
      <details><summary>How to find yours</summary>
        <p>The drag factor says how fast the wheel slows between strokes. If your monitor can show it, open that
          display, row some light strokes, and move the lever until the number fits. If it cannot, take a low to
          middle lever and leave it there: dust and air change what a lever means from one machine to the next.</p>
        <p>A machine without a lever: leave it as it is.</p>
      </details>`;
  }

  private tell(name: "start" | "leave"): void {
    this.dispatchEvent(new CustomEvent(name));
  }
}
customElements.define("set-up-card", SetUpCard);
