/** What a plan comes to: time, strokes, distance, work, split, and what that costs the body. */
import { css, html, nothing, type TemplateResult } from "lit";
import { clock, splitClock } from "../plan/format.js";
import type { Energy, Timeline } from "../plan/wire.js";

export const sumsLook = css`
  .sums { display: grid; grid-template-columns: repeat(auto-fit, minmax(140px, 1fr)); gap: 8px; }
  .sums div { display: flex; flex-direction: column-reverse; justify-content: flex-end; gap: 2px; padding: 12px 12px; background: var(--hull); border-radius: var(--r); }
  .sums dd { font-family: var(--digits); font-weight: 700; font-size: 1.625rem; letter-spacing: -0.04em; }
  .left-sums { display: grid; gap: 8px; }
`;

export function planSums({ totals, segments }: Timeline, energy: Energy | undefined): TemplateResult {
  const about = totals.estimated ? ", about" : "";
  const guessed = segments.some((segment) => segment.ends === "tap" || segment.basis === "assumed");
  return html`<div class="left-sums"><dl class="sums">
    <div><dt class="small">in all${about}</dt><dd>${clock(totals.seconds_s)}</dd></div>
    ${totals.strokes ? html`<div><dt class="small">strokes${about}</dt><dd>${totals.strokes}</dd></div>` : nothing}
    ${totals.metres === undefined ? nothing : html`<div><dt class="small">km, about</dt><dd>${(totals.metres / 1000).toFixed(1)}</dd></div>`}
    ${totals.work_kj === undefined ? nothing : html`<div><dt class="small">kJ of work, about</dt><dd>${Math.round(totals.work_kj)}</dd></div>`}
    ${totals.split_s === undefined ? nothing : html`<div><dt class="small">/500 m on average, about</dt><dd>${splitClock(totals.split_s)}</dd></div>`}
  </dl>${guessed ? html`<p class="small">Some blocks end when you say so: their time is a guess.</p>` : nothing}
    ${energy ? html`<p class="small">${energyWords(energy)}</p>` : nothing}</div>`;
}

/** What the work costs the body: a range by efficiency, and by the tables of energy cost where a mass is known. */
function energyWords({ kcal, by_table }: Energy): string {
  const tables = by_table.map((cost) => `${cost.kcal} by the table of ${cost.edition}`).join(", ");
  return `About ${kcal.low} to ${kcal.high} kcal, an estimate from the work${tables ? `; ${tables}` : ""}.`;
}
