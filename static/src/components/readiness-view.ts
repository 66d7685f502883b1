/** How ready one comes to the start line: the coach's sentence, a picture, what is left there, the gap, the doubts.
 *
 * Properties: `readiness`.
 */
import { LitElement, css, html, nothing } from "lit";
import { clock } from "../plan/format.js";
import { QUANTITIES, gapWords, rangeWords, senseOf } from "../plan/readiness-words.js";
import type { Readiness } from "../plan/wire.js";
import { type } from "./look.js";
import "./readiness-picture.js";

/** The gaps of the table, in minutes: enough to choose from. */
const GAPS = new Set([0, 2, 4, 5, 6, 8, 10, 15, 20, 30]);

export class ReadinessView extends LitElement {
  static override properties = { readiness: { attribute: false } };
  declare readiness: Readiness | undefined;

  static override styles = [type, css`
    section { display: grid; gap: 10px; }
    .key { display: flex; flex-wrap: wrap; gap: 4px 16px; }
    .key svg { width: 26px; height: 10px; margin-right: 6px; fill: none; stroke: var(--ink); stroke-width: 2.5; }
    .key .dashed { stroke: var(--ink-2); stroke-dasharray: 7 5; }
    dl { display: grid; gap: 0; }
    dl div { display: grid; grid-template-columns: 1fr auto; gap: 2px 12px; padding: 8px 0; border-bottom: 1px solid var(--line); }
    dd { text-align: right; }
    b { white-space: nowrap; }
    details p { margin-bottom: 8px; }
    summary { width: fit-content; min-height: 44px; align-content: center; cursor: pointer; text-decoration: underline; text-underline-offset: 4px; }
    table { width: 100%; border-collapse: collapse; }
    th, td { padding: 6px 0; border-bottom: 1px solid var(--line); text-align: right; font-weight: 400; white-space: nowrap; }
    th:first-child { text-align: left; }
    thead th { color: var(--ink-2); white-space: normal; vertical-align: bottom; }
  `];

  override render() {
    const { readiness } = this;
    if (!readiness) return nothing;
    return html`<section aria-labelledby="ready">
      <h2 id="ready">At the start line</h2>
      <p dir="auto">${readiness.sentence}</p>
      <readiness-picture .series=${readiness.series} .start_s=${readiness.start_s}></readiness-picture>
      <p class="key small"><span><svg viewBox="0 0 26 10" aria-hidden="true"><path d="M0 5H26" /></svg>reserve, with its range</span>
        <span><svg class="dashed" viewBox="0 0 26 10" aria-hidden="true"><path d="M0 5H26" /></svg>muscle warmth</span></p>
      ${readiness.series.reserve.some((percent) => percent < 0) ? html`<p class="small">Where the line lies on the floor, more is asked than the models hold.</p>` : nothing}
      <dl>${QUANTITIES.map(({ quantity, name, steps }) => {
        const range = readiness.at_start[quantity];
        return html`<div><dt>${name}</dt><dd><b>${senseOf(steps, range)}</b> <span class="small">${rangeWords(range)}</span></dd></div>`;
      })}</dl>
      ${this.capacity(readiness)}
      ${this.gaps(readiness)}
      <details><summary>How sure this is</summary>${readiness.notes.map((note) => html`<p>${note}</p>`)}</details>
    </section>`;
  }

  private capacity({ capacity }: Readiness) {
    if (!capacity) return nothing;
    const { watts_low, watts_high, reserve_kj_low, reserve_kj_high } = capacity;
    return html`<p class="small">Reckoned with ${span(watts_low, watts_high)} W that you could hold for long, and ${span(reserve_kj_low, reserve_kj_high)} kJ above that.</p>`;
  }

  private gaps(readiness: Readiness) {
    const rows = readiness.by_gap.filter(({ gap_s }) => GAPS.has(gap_s / 60));
    if (!rows.length) return nothing;
    return html`<details><summary>With another gap</summary><p>${gapWords(readiness)}</p><table>
      <thead><tr><th scope="col">Gap</th><th scope="col">Reserve</th><th scope="col">Warmth</th></tr></thead>
      <tbody>${rows.map((row) => html`<tr><th scope="row">${clock(row.gap_s)}</th><td>${rangeWords(row.reserve)}</td><td>${rangeWords(row.warmth)}</td></tr>`)}</tbody>
    </table></details>`;
  }
}
customElements.define("readiness-view", ReadinessView);

function span(low: number, high: number): string {
  const [least, most] = [String(Math.round(low)), String(Math.round(high))];
  return least === most ? least : `${least} to ${most}`;
}
