/** The picture of a plan: a waterline, the rate stepped above it, pressure as depth below, a hull at the position.
 *
 * Properties: `timeline`; `now` (seconds, or null for no hull); attribute `labels` writes rates where there is room.
 */
import { LitElement, css, html, nothing, svg, type PropertyValues } from "lit";
import type { Timeline } from "../plan/wire.js";
import { clock } from "../plan/format.js";
import { type } from "./look.js";
import { barsOf, DEEPEST, type Bar } from "./profile-geometry.js";

const LOWEST_RATE = 16;
const HIGHEST_RATE = 36;
const ROOM_FOR_LABEL = 30;
const ROOM_FOR_STROKE = 4;
const ROOM_FOR_EDGE = 2.5;

export class PlanProfile extends LitElement {
  static override properties = {
    timeline: { attribute: false },
    now: { attribute: false },
    labels: { type: Boolean },
    size: { state: true },
  };
  declare timeline: Timeline | undefined;
  declare now: number | null;
  declare labels: boolean;
  declare size: { width: number; height: number };
  private drawn = 0;
  private readonly watch = new ResizeObserver(() => this.measure());

  constructor() {
    super();
    this.now = null;
    this.labels = false;
    this.size = { width: 0, height: 0 };
  }

  static override styles = [type, css`
    :host { height: 74px; contain: strict; }
    svg { display: block; overflow: visible; }
    .depth { stroke: var(--edge); stroke-width: 1; }
    .thin { stroke: none; }
    .d0-5 { fill: var(--gap); }
    .d1 { fill: var(--p-light); }
    .d2 { fill: var(--p-half); }
    .d3 { fill: var(--p-three-quarter); }
    .d4 { fill: var(--p-full); }
    .d5 { fill: var(--p-race); }
    .water { stroke: var(--edge); stroke-width: 1.5; }
    .strokes { stroke: var(--ink-2); stroke-width: 1; }
    .rate { fill: none; stroke: var(--ink); stroke-width: 2.5; stroke-linejoin: round; }
    text { fill: var(--ink-2); font: 400 14px var(--font); text-anchor: middle; }
    .hull { fill: var(--catch); stroke: var(--water); stroke-width: 1; }
    .mast { stroke: var(--catch); stroke-width: 2; }
    .boat { will-change: transform; }
    @media (forced-colors: active) {
      .depth { stroke: CanvasText; fill: Canvas; }
      .rate, .water { stroke: CanvasText; }
      text { fill: CanvasText; }
      .hull { fill: Highlight; }
      .mast { stroke: Highlight; }
    }
  `];

  override connectedCallback(): void {
    super.connectedCallback();
    this.watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.watch.disconnect();
  }

  /** The hull moves without drawing the picture again. */
  override shouldUpdate(changed: PropertyValues<this>): boolean {
    if (changed.size === 1 && changed.has("now") && this.drawn && changed.get("now") !== null) {
      this.moveHull();
      return false;
    }
    return true;
  }

  override updated(): void {
    this.drawn = this.size.width;
    this.moveHull();
  }

  override render() {
    const { width, height } = this.size;
    if (!this.timeline || !width) return nothing;
    const bars = barsOf(this.timeline, width);
    const water = Math.round(height * 0.52);
    return html`<svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" role="img"
      aria-label=${describe(this.timeline)}>
      ${bars.map((bar) => depth(bar, water, height))}
      <path class="strokes" d=${strokeTicks(bars, water)} />
      <path class="water" d="M0 ${water}H${width}" />
      <path class="rate" d=${rateLine(bars, water)} />
      ${this.labels ? rateLabels(bars, water) : nothing}
      ${this.now === null ? nothing : hull(water)}
    </svg>`;
  }

  private measure(): void {
    const { clientWidth: width, clientHeight: height } = this;
    if (width !== this.size.width || height !== this.size.height) this.size = { width, height };
  }

  private moveHull(): void {
    const boat = this.renderRoot.querySelector<SVGGElement>(".boat");
    if (!boat || !this.timeline || this.now === null) return;
    const share = Math.min(1, Math.max(0, this.now / (this.timeline.totals.seconds_s || 1)));
    boat.style.setProperty("transform", `translateX(${(share * this.size.width).toFixed(1)}px)`);
  }
}
customElements.define("plan-profile", PlanProfile);

function depth(bar: Bar, water: number, height: number) {
  if (bar.depth === 0) return nothing;
  const down = water + (bar.depth / DEEPEST) * (height - water - 1);
  const name = `depth d${String(bar.depth).replace(".", "-")}${bar.width < ROOM_FOR_EDGE ? " thin" : ""}`;
  return svg`<path class=${name} d="M${f(bar.left)} ${water}V${f(down)}H${f(bar.left + bar.width)}V${water}Z" />`;
}

function height(rate: number, water: number): number {
  const share = (Math.min(HIGHEST_RATE, Math.max(LOWEST_RATE, rate)) - LOWEST_RATE) / (HIGHEST_RATE - LOWEST_RATE);
  return water - 6 - share * (water - 22);
}

/** One stepped line, broken where nobody rows to a rate. */
function rateLine(bars: Bar[], water: number): string {
  let line = "";
  let drawing = false;
  for (const bar of bars) {
    if (bar.rate !== null) {
      line += `${drawing ? "L" : "M"}${f(bar.left)} ${f(height(bar.rate, water))}H${f(bar.left + bar.width)}`;
    }
    drawing = bar.rate !== null;
  }
  return line;
}

function strokeTicks(bars: Bar[], water: number): string {
  let ticks = "";
  for (const bar of bars) {
    if (bar.stroke < ROOM_FOR_STROKE) continue;
    for (let x = bar.left; x < bar.left + bar.width - 0.5; x += bar.stroke) ticks += `M${f(x)} ${water - 4}v8`;
  }
  return ticks;
}

function rateLabels(bars: Bar[], water: number) {
  return bars
    .filter((bar, index) => bar.rate !== null && bar.width > ROOM_FOR_LABEL && bar.rate !== bars[index - 1]?.rate)
    .map((bar) => svg`<text aria-hidden="true" x=${f(bar.left + bar.width / 2)}
      y=${f(height(bar.rate ?? 0, water) - 6)}>r${bar.rate}</text>`);
}

function hull(water: number) {
  return svg`<g class="boat">
    <path class="mast" d="M0 ${water - 5}V4" />
    <path class="hull" d="M-16 ${water - 5}H16Q0 ${water + 9} -16 ${water - 5}Z" />
  </g>`;
}

/** The picture in a sentence, for those who hear it. */
function describe(timeline: Timeline): string {
  const rates = timeline.segments.flatMap((segment) => (segment.rate === undefined ? [] : [segment.rate]));
  const parts = timeline.totals.parts.map((part) => `${part.part} ${clock(part.seconds_s)}`).join(", ");
  if (!rates.length) return `Picture of the plan: ${parts}.`;
  const [low, high] = [Math.min(...rates), Math.max(...rates)];
  return `Picture of the plan: ${parts}; ${low === high ? `rate ${low}` : `rates from ${low} to ${high}`}.`;
}

function f(value: number): string {
  return value.toFixed(1);
}
