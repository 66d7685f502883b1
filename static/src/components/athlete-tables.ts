/** What follows from a person's results: likely times, what can be held, and the bands to row in. Property `answer`. */
import type { AthleteAnswer, Band, CriticalPower, Prediction } from "../plan/wire.js";
import { LitElement, css, html, nothing } from "lit";
import { splitClock } from "../plan/format.js";
import { heartWords } from "../plan/heart-words.js";
import { metreWords, timeWords } from "../plan/result-words.js";
import { type } from "./look.js";
import { talkWords } from "./segment-words.js";

export class AthleteTables extends LitElement {
  static override properties = { answer: { attribute: false } };
  declare answer: AthleteAnswer | null;

  constructor() {
    super();
    this.answer = null;
  }

  static override styles = [type, css`
    :host { display: grid; gap: 28px; }
    section { display: grid; gap: 10px; }
    h2 { border-bottom: 2px solid var(--edge); padding-bottom: 6px; }
    table { width: 100%; border-collapse: collapse; }
    th, td { padding: 9px 0 9px 8px; font-size: 1rem; border-bottom: 1px solid var(--line); text-align: right; font-weight: 400; vertical-align: baseline; }
    th:first-child { padding-left: 0; text-align: left; font-weight: 700; }
    thead th, thead th:first-child { color: var(--ink-2); font-weight: 400; }
    td b, .range { letter-spacing: -0.03em; white-space: nowrap; }
    td b, td .range { font-family: var(--digits); }
    .range { display: inline-block; min-width: 11.5em; }
    @media (max-width: 480px) { .range { display: block; min-width: 0; } th .range { text-transform: lowercase; } th .range::before { content: "and "; } td .range { color: var(--ink-2); } }
    .piece { white-space: nowrap; }
    .outside { display: block; color: var(--ink-2); font-size: 1rem; }
    .bands { display: grid; }
    .band { display: grid; grid-template-columns: 1fr auto; gap: 2px 12px; padding: 11px 0; border-bottom: 1px solid var(--line); }
    .band p { grid-column: 1 / -1; }
    .splits { font-family: var(--digits); font-weight: 700; letter-spacing: -0.03em; white-space: nowrap; }
  `];

  override render() {
    if (!this.answer) return nothing;
    const { predictions, critical_power, bands, heart_rate } = this.answer;
    return html`${predictions.length ? likely(predictions) : nothing}
      ${critical_power ? held(critical_power) : nothing}
      <section aria-labelledby="zones"><h2 id="zones">Zones to row in</h2>
        <p class="small">Common practice, drawn up in more than one way: go by the feel when it disagrees.</p>
        ${heart_rate ? html`<p class="small">${heartWords(heart_rate)}</p>` : nothing}
        <ul class="bands">${bands.filter(({ pressure }) => !pressure).map(band)}</ul></section>
      <section aria-labelledby="pressures"><h2 id="pressures">What a pressure means</h2>
        <ul class="bands">${bands.filter(({ pressure }) => pressure).map(band)}</ul></section>`;
  }
}
customElements.define("athlete-tables", AthleteTables);

function likely(predictions: readonly Prediction[]) {
  return html`<section aria-labelledby="likely"><h2 id="likely">Likely, if you trained for it</h2>
    <table><thead><tr><th scope="col">Piece</th><th scope="col">Likely <span class="range">Range</span></th></tr></thead>
      <tbody>${predictions.map((each) => html`<tr><th scope="row"><span class="piece">${each.name}</span>${each.by.some(({ within_range }) => within_range) ? nothing : html`<span class="outside">a guess</span>`}</th>
        <td><b>${reached(each, "likely")}</b> <span class="range">${each.measured ? "rowed" : `${reached(each, "low")} to ${reached(each, "high")}`}</span></td></tr>`)}</tbody></table></section>`;
}

/** A time over a distance, or the metres in a time. */
function reached(each: Prediction, which: "low" | "likely" | "high"): string {
  const seconds = each[`${which}_s`];
  return seconds === undefined ? metreWords(Math.round(each[`${which}_metres`] ?? 0)) : timeWords(seconds);
}

function held({ watts, watts_error, split_s, reserve_kj, reserve_kj_error }: CriticalPower) {
  return html`<section aria-labelledby="held"><h2 id="held">Critical power</h2>
    <p>About <b>${Math.round(watts)} W</b>, give or take ${Math.round(watts_error)}: a split of ${splitClock(split_s)}. It is worked out from your
      results, and is a border more than a pace: above it you spend a reserve of about <b>${reserve_kj.toFixed(1)} kJ</b>, give or take ${reserve_kj_error.toFixed(1)};
      the longer you row, the further below it you stay.</p></section>`;
}

function band(each: Band) {
  const words = [
    `r${each.rate_low} to r${each.rate_high}`,
    span("", each.power_low_percent, each.power_high_percent, " % of 2 km power"),
    span("heart rate ", each.heart_rate_low, each.heart_rate_high),
    span("effort ", each.cr10_low, each.cr10_high, " of 10"),
    talkWords(each.talk),
  ];
  return html`<li class="band"><b>${each.name}</b><span class="splits">${splitWords(each)}</span>
    <p>${each.sense}</p><p class="small">${words.filter(Boolean).join(" · ")}</p></li>`;
}

/** "2:21.0 to 2:13.3", "quicker than 1:53.6"; "" without a result. */
function splitWords({ split_slow_s, split_quick_s }: Band): string {
  if (split_slow_s === undefined) return split_quick_s === undefined ? "" : `slower than ${splitClock(split_quick_s)}`;
  if (split_quick_s === undefined) return `quicker than ${splitClock(split_slow_s)}`;
  return split_slow_s === split_quick_s ? splitClock(split_slow_s) : `${splitClock(split_slow_s)} to ${splitClock(split_quick_s)}`;
}

/** "55 to 70 %", "under 55 %", "over 105 %"; "" where neither end is known. */
function span(before: string, low: number | undefined, high: number | undefined, after = ""): string {
  if (low === undefined && high === undefined) return "";
  if (low === undefined) return `${before}under ${high}${after}`;
  if (high === undefined) return `${before}over ${low}${after}`;
  return `${before}${low === high ? low : `${low} to ${high}`}${after}`;
}
