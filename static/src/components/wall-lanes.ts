/** The lanes of a room: what the block now, and the next one, ask of each. Lanes that do not fit take turns.
 *
 * Properties: `timeline` (of the room), `lanes`, `targets` (by lane, then by segment), `index` of the segment, `rows` on
 * a page, `since_s` and `to_s` (whole seconds since and to a change of block), `stays` (the page is to stay).
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { laneName, type Lane } from "../plan/lanes.js";
import { twoKFrom } from "../plan/prediction.js";
import type { Target, Timeline } from "../plan/wire.js";
import { pagesOf, turnAt, type Turn } from "./lane-turns.js";
import { type } from "./look.js";
import { laneAsked, type LaneAsked } from "./wall-words.js";

const FADE_MS = 700;
/** Letters that fit in a line at full size, and at the next smaller one, with the digits before them. */
const SHORT_NAME = 7;
const LONG_NAME = 10;

export class WallLanes extends LitElement {
  static override properties = {
    timeline: { attribute: false },
    lanes: { attribute: false },
    targets: { attribute: false },
    index: { type: Number },
    rows: { type: Number },
    since_s: { attribute: false },
    to_s: { attribute: false },
    stays: { type: Boolean },
  };
  declare timeline: Timeline | undefined;
  declare lanes: readonly Lane[];
  declare targets: readonly (readonly (Target | undefined)[])[];
  declare index: number;
  declare rows: number;
  declare since_s: number;
  declare to_s: number;
  declare stays: boolean;
  private turn: Turn = { page: 0, since_s: 0 };
  private drawn = 0;
  private readonly calm = matchMedia("(prefers-reduced-motion: reduce)");

  constructor() {
    super();
    this.lanes = [];
    this.targets = [];
    this.index = 0;
    this.rows = 1;
    this.since_s = 0;
    this.to_s = 0;
    this.stays = false;
  }

  /* Sizes are the wall's: --lane is the type of a row. */
  static override styles = [type, css`
    :host { font-size: var(--lane); line-height: 1.1; }
    table { width: 100%; border-collapse: collapse; table-layout: fixed; }
    th, td { height: 1.36em; padding: 0 0.06em 0 0; border-bottom: 1px solid var(--line); text-align: right; font-weight: 400; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
    thead th { height: auto; padding-bottom: 0.2em; font-size: max(0.5em, 15px); color: var(--ink-2); }
    .name { width: 37%; text-align: left; }
    .name div { display: flex; align-items: center; gap: 0.2em; }
    .name .called { min-width: 0; overflow: hidden; text-overflow: ellipsis; }
    .name .long { font-size: 0.74em; }
    .name .longest { font-size: 0.54em; line-height: 1.05; max-height: 2.1em; white-space: normal; overflow-wrap: anywhere; }
    .number { flex: none; font-size: 0.66em; color: var(--ink-2); font-family: var(--digits); letter-spacing: -0.04em; }
    .split { width: 25%; }
    .watts { width: 18%; }
    td { font-family: var(--digits); font-weight: 700; letter-spacing: -0.04em; }
    .power { font-size: 0.8em; }
    .said { font-family: var(--font); letter-spacing: 0; font-size: 0.72em; }
    .next { color: var(--ink-2); }
    .next span { display: block; font-size: 0.54em; line-height: 1.12; }
    .page { margin-top: 0.5em; font-size: max(0.42em, 15px); color: var(--ink-2); }
  `];

  /** The page follows the clock that never stands still, so that a hold turns nothing over by itself. */
  override willUpdate(): void {
    const pages = this.pages.length;
    if (!this.stays) this.turn = turnAt(this.turn, performance.now() / 1000, pages, this.since_s, this.to_s);
    else if (this.turn.page >= pages) this.turn = { ...this.turn, page: 0 };
  }

  override updated(_changed: PropertyValues<this>): void {
    if (this.turn.page === this.drawn) return;
    this.drawn = this.turn.page;
    if (!this.calm.matches) this.renderRoot.querySelector("tbody")?.animate([{ opacity: 0 }, { opacity: 1 }], FADE_MS);
  }

  override render() {
    const page = this.pages[this.turn.page];
    if (!this.timeline || !page) return nothing;
    return html`<table>
      <thead><tr><th class="name" scope="col">Lane</th><th class="split" scope="col">/500 m</th><th class="watts" scope="col">watts</th><th class="next" scope="col">next</th></tr></thead>
      <tbody>${page.map((lane) => this.row(lane))}</tbody>
    </table>
    ${this.pages.length > 1 ? html`<p class="page">Lanes ${page[0]! + 1} to ${page.at(-1)! + 1} of ${this.lanes.length}, in turns</p>` : nothing}`;
  }

  private get pages(): number[][] {
    return pagesOf(this.lanes.length, this.rows);
  }

  private row(lane: number) {
    const { result } = this.lanes[lane]!;
    const two_k = result && twoKFrom(result);
    const [now, next] = [this.index, this.index + 1].map((index) => laneAsked(this.timeline!.segments[index], this.targets[lane]?.[index], two_k));
    const called = laneName(this.lanes[lane]!, lane);
    const numbered = this.lanes[lane]!.name !== "";
    return html`<tr><th class="name" scope="row"><div>${numbered ? html`<span class="number">${lane + 1}</span>` : nothing}
        <span class="called ${lengthOf(called, lane + 1)}" dir="auto">${called}</span></div></th>
      ${asked(now!)}${following(next!)}</tr>`;
  }
}
customElements.define("wall-lanes", WallLanes);

function lengthOf(name: string, number: number): string {
  const length = name.length + String(number).length;
  return length > LONG_NAME ? "longest" : length > SHORT_NAME ? "long" : "";
}

function asked({ split, watts, words }: LaneAsked) {
  if (!split) return html`<td class="said" colspan="2">${words}</td>`;
  return html`<td class=${words ? "power" : nothing}>${split}</td><td class=${words ? "said" : "power"}>${words || watts}</td>`;
}

function following({ split, watts, words }: LaneAsked) {
  return html`<td class="next">${split ? html`<span>${split}</span>` : nothing}${words ? html`<span class="said">${words}</span>` : html`<span>${watts ? `${watts} W` : ""}</span>`}</td>`;
}
