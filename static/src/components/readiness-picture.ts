/** The body over a session as lines: what is left in reserve, with its range, and how warm it is; the start is marked.
 *
 * Properties: `series` (in percent), `start_s` (seconds to the start line).
 */
import { LitElement, css, html, nothing, svg } from "lit";
import type { Readiness } from "../plan/wire.js";
import { type } from "./look.js";

type Series = Readiness["series"];

const TOP = 20;
const BOTTOM = 6;
/** The picture ends where nothing is left; that a line lies there is told in words beside it. */
const LOWEST = 0;

export class ReadinessPicture extends LitElement {
  static override properties = { series: { attribute: false }, start_s: { attribute: false }, size: { state: true } };
  declare series: Series | undefined;
  declare start_s: number;
  declare size: { width: number; height: number };
  private readonly watch = new ResizeObserver(() => this.measure());

  constructor() {
    super();
    this.start_s = 0;
    this.size = { width: 0, height: 0 };
  }

  static override styles = [type, css`
    :host { height: 132px; contain: strict; }
    svg { display: block; }
    .rule { stroke: var(--line); stroke-width: 1; }
    .band { fill: var(--band); stroke: var(--edge); stroke-width: 1; }
    .reserve { fill: none; stroke: var(--ink); stroke-width: 2.5; stroke-linejoin: round; }
    .warmth { fill: none; stroke: var(--ink-2); stroke-width: 2.5; stroke-dasharray: 7 5; }
    .start { stroke: var(--catch); stroke-width: 3; }
    text { fill: var(--ink-2); font: 400 14px var(--font); }
    text.mark { fill: var(--ink); font-weight: 700; }
    @media (forced-colors: active) {
      .band { fill: Canvas; stroke: CanvasText; }
      .reserve, .warmth { stroke: CanvasText; }
      .start { stroke: Highlight; }
      text { fill: CanvasText; }
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

  override render() {
    const { width, height } = this.size;
    const { series } = this;
    if (!series || !width) return nothing;
    const most = Math.max(100, ...series.warmth, ...series.reserve_high);
    const step = width / Math.max(1, series.reserve.length - 1);
    const x = (index: number) => (index * step).toFixed(1);
    const y = (percent: number) => (TOP + (1 - Math.max(LOWEST, percent) / most) * (height - TOP - BOTTOM)).toFixed(1);
    const line = (values: readonly number[]) => values.map((value, index) => `${index ? "L" : "M"}${x(index)} ${y(value)}`).join("");
    const back = series.reserve_low.map((value, index) => `L${x(index)} ${y(value)}`).reverse().join("");
    const start = Math.min(1, this.start_s / (series.step_s * Math.max(1, series.reserve.length - 1))) * width;
    const late = start > width * 0.7;
    return html`<svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" aria-hidden="true">
      ${[0, 50, 100].map((percent) => svg`<path class="rule" d="M0 ${y(percent)}H${width}" />`)}
      <path class="band" d="${line(series.reserve_high)}${back}Z" />
      <path class="reserve" d=${line(series.reserve)} /><path class="warmth" d=${line(series.warmth)} />
      <path class="start" d="M${start.toFixed(1)} 2V${height}" />
      <text x="0" y=${Number(y(100)) - 6}>100 %</text>
      <text class="mark" x=${(start + (late ? -7 : 7)).toFixed(1)} y="14" text-anchor=${late ? "end" : "start"}>start</text>
    </svg>`;
  }

  private measure(): void {
    const { clientWidth: width, clientHeight: height } = this;
    if (width !== this.size.width || height !== this.size.height) this.size = { width, height };
  }
}
customElements.define("readiness-picture", ReadinessPicture);
