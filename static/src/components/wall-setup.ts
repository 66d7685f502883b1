/** Before a wall is shown: which plan, the lanes, from how far away, and when it starts.
 *
 * Properties: `record` (the plan, or undefined), `wall` (what is kept of the room), `lost` (lanes that were damaged),
 * `saved` (see saved-mark), `starting`, `trouble`. Events: `lanes` and `sight` (detail: what was typed), `start` (detail: ms since 1970, or
 * null for now).
 */
import { LitElement, css, html, nothing } from "lit";
import type { PlanRecord } from "../data/plans.js";
import type { WallSettings } from "../data/wall.js";
import { clock } from "../plan/format.js";
import { forRoom, lanesBeyondSplits, type Lane } from "../plan/lanes.js";
import { QUICKEST_SPLIT_S, SLOWEST_SPLIT_S } from "../plan/result-words.js";
import { guesses } from "../timeline/by-clock.js";
import "./lane-entry.js";
import type { LaneEntry } from "./lane-entry.js";
import { buttons, page, type } from "./look.js";
import "./plan-profile.js";
import "./saved-mark.js";
import "./sight-entry.js";
import "./start-choice.js";
import { stopSigns } from "./stop-signs-list.js";

export class WallSetup extends LitElement {
  static override properties = {
    record: { attribute: false }, wall: { attribute: false }, lost: { type: Number }, saved: {}, starting: { type: Boolean }, trouble: {},
  };
  declare record: PlanRecord | undefined;
  declare wall: WallSettings;
  declare lost: number;
  declare saved: string;
  declare starting: boolean;
  declare trouble: string;
  /** Lanes with a split that cannot be asked for, as they were worked out for these results of this plan. */
  private beyond: { of: string; lanes: number[] } = { of: "", lanes: [] };

  constructor() {
    super();
    this.lost = 0;
    this.saved = "saving";
    this.starting = false;
    this.trouble = "";
  }

  static override styles = [type, buttons, page, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    .without { justify-items: start; }
    header, section { display: grid; gap: 12px; align-content: start; }
    section + section { margin-top: 12px; }
    .note { padding: 12px 14px; border-left: 6px solid var(--edge); background: var(--hull); border-radius: 6px var(--r) var(--r) 6px; }
    .signs { display: grid; gap: 4px; padding-left: 22px; list-style: disc; }
    summary { min-height: 44px; align-content: center; cursor: pointer; font-weight: 700; text-decoration: underline; text-underline-offset: 4px; }
    plan-profile { height: 90px; }
    @media (max-height: 620px) { .bar { position: static; } }
    @media (min-width: 1000px) {
      main { width: min(100%, 1120px); grid-template-columns: minmax(0, 1.3fr) minmax(0, 1fr); gap: 28px 48px; align-items: start; }
      .back, header, .bar, .without { grid-column: 1 / -1; }
    }
  `];

  override render() {
    const { record, wall } = this;
    return html`<main>
      <a class="back" href="/">All plans</a>
      ${record ? html`<header><p class="small">Show on a wall</p><h1 tabindex="-1" dir="auto">${record.plan.title}</h1>
        <plan-profile .timeline=${record.timeline}></plan-profile></header>${this.choices(record, wall)}` : this.without()}
    </main>`;
  }

  /** Whether all that was typed can be read. */
  check(): boolean {
    return this.renderRoot.querySelector<LaneEntry>("lane-entry")!.check();
  }

  private without() {
    return html`<section class="without"><h1 tabindex="-1">Show on a wall</h1>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}
      <p>Open a plan and press <b>Show on a wall</b> there.</p><a class="button go" href="/">See the plans</a></section>`;
  }

  private choices(record: PlanRecord, { lanes, sight }: WallSettings) {
    return html`
      <section aria-labelledby="lanes"><h2 id="lanes">Lanes</h2>
        <p class="small">A name and one result for each, if you like: each lane then has its own split. They stay on this device.</p>
        ${this.lost ? html`<p role="status" class="note">${this.lost === 1 ? "One lane" : `${this.lost} lanes`} kept here could not be read, and were left out.</p>` : nothing}
        <lane-entry .lanes=${lanes} @lanes=${({ detail }: CustomEvent<Lane[]>) => this.tell("lanes", detail)}></lane-entry></section>
      <div><section aria-labelledby="sight"><h2 id="sight">From how far away?</h2>
        <sight-entry .sight=${sight} .lanes=${lanes.length} @sight=${({ detail }: CustomEvent) => this.tell("sight", detail)}></sight-entry></section>
        <section>${this.guessed(record, lanes)}${this.beyondWords(record, lanes)}
        <details><summary>Tell the room when to stop</summary>${stopSigns()}</details></section></div>
      <div class="bar">${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}
        <start-choice .busy=${this.starting} @start=${({ detail }: CustomEvent<number | null>) => this.tell("start", detail)}></start-choice>
        <saved-mark state=${this.saved}></saved-mark></div>`;
  }

  private guessed({ timeline }: PlanRecord, lanes: readonly Lane[]) {
    if (!guesses(timeline)) return nothing;
    const { seconds_s } = forRoom(timeline, lanes).totals;
    const by = lanes.some(({ result }) => result) ? "as long as the slowest lane is likely to need" : "an assumed time: give the lanes results for a better one";
    return html`<p class="note">A wall goes by the clock. Blocks in metres or without an end get ${by}; ${clock(seconds_s)} in all.</p>`;
  }

  private beyondWords({ id, timeline }: PlanRecord, lanes: readonly Lane[]) {
    const of = JSON.stringify([id, ...lanes.map(({ result }) => result)]);
    if (of !== this.beyond.of) this.beyond = { of, lanes: lanesBeyondSplits(timeline, lanes) };
    const named = this.beyond.lanes.map((lane) => lane + 1);
    if (!named.length) return nothing;
    return html`<p class="note" role="status">In ${named.length === 1 ? "lane" : "lanes"} ${together(named)} some blocks come to a split outside
      ${clock(QUICKEST_SPLIT_S)} to ${clock(SLOWEST_SPLIT_S)} per 500 m, which nobody could be asked for: there the wall shows the words of the plan.</p>`;
  }

  private tell(name: "lanes" | "sight" | "start", detail: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}
customElements.define("wall-setup", WallSetup);

/** "2", "2 and 7", "2, 5 and 7" */
function together(numbers: readonly number[]): string {
  return [numbers.slice(0, -1).join(", "), String(numbers.at(-1))].filter(Boolean).join(" and ");
}
