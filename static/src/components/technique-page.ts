/** The coach's library to read: the four positions of the stroke, the drills, and what is called for each focus. */
import { LitElement, css, html, nothing, type TemplateResult } from "lit";
import { technique } from "../data/technique.js";
import type { Focus, KnownDrill, Position, TechniqueLibrary, TechnicalCall } from "../plan/wire.js";
import { page, type } from "./look.js";
import { tellScreen } from "./routes.js";
import "./stroke-figure.js";

const NAMES: Record<string, string> = { catch: "Catch", drive: "Drive", finish: "Finish", recovery: "Recovery", whole: "Whole stroke" };

export class TechniquePage extends LitElement {
  static override properties = { library: { state: true }, lacking: { state: true } };
  declare library: TechniqueLibrary | undefined;
  declare lacking: boolean;

  static override styles = [type, page, css`
    main { gap: 30px; }
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    section { display: grid; gap: 12px; }
    .cards { display: grid; gap: 12px; }
    .card { display: grid; align-content: start; gap: 6px; padding: 14px 16px; background: var(--hull); border: 1px solid var(--line); border-radius: var(--r); --figure-ground: var(--hull); }
    h3 { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: baseline; gap: 0 12px; font-size: 1.25rem; line-height: 1.2; }
    h3 .small { font-weight: 400; }
    stroke-figure { aspect-ratio: 252 / 128; margin: 2px 0; }
    details { border-bottom: 1px solid var(--line); }
    summary { min-height: var(--target); align-content: center; cursor: pointer; font-weight: 700; }
    details ul { display: grid; gap: 10px; padding: 2px 0 16px 18px; }
    @media (min-width: 700px) { main { width: min(100%, 1000px); } .cards { grid-template-columns: 1fr 1fr; } }
  `];

  constructor() {
    super();
    this.lacking = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Technique · Slipway";
    technique().then((library) => (this.library = library), () => (this.lacking = true));
  }

  override firstUpdated(): void {
    tellScreen(this);
  }

  override render() {
    return html`<main>
      <a class="back" href="/">All plans</a>
      <h1 tabindex="-1">Technique</h1>
      <p>Learn the stroke from somebody who can see you row; these pictures and words only remind. Ease off when it falls
        apart, and stop when anything hurts.</p>
      ${this.library ? this.all(this.library) : html`<p role="status">${this.lacking ? "There is no signal, and this page was never opened on this device." : "Opening …"}</p>`}
    </main>`;
  }

  private all({ positions, drills, focuses }: TechniqueLibrary) {
    return html`
      <section><h2>The four positions</h2><div class="cards">${positions.map(position)}</div></section>
      <section><h2>Drills</h2><p class="small">Thin lines show where a drill comes from, two bars that it stops.</p>
        <div class="cards">${drills.map(drill)}</div></section>
      <section><h2>What a coach calls</h2><p class="small">One focus at a time; open one for its calls and what each mends.</p>
        <div>${focuses.map(focus)}</div></section>`;
  }
}
customElements.define("technique-page", TechniquePage);

function position({ phase, looks, beware }: Position): TemplateResult {
  return html`<article class="card"><h3>${NAMES[phase]}</h3><stroke-figure name=${phase}></stroke-figure>
    <p>${looks}</p><p><b>${beware}</b></p></article>`;
}

function drill(known: KnownDrill): TemplateResult {
  const { name, phase, how, caution, mends } = known;
  return html`<article class="card"><h3>${name[0]!.toUpperCase() + name.slice(1)}<span class="small">${NAMES[phase]}</span></h3>
    <stroke-figure name=${name}></stroke-figure>
    <p>${how}</p><p><b>${caution}</b></p><p class="small">Mends: ${mends}</p><p class="small">${bounds(known)}</p></article>`;
}

function bounds({ rate_low, rate_high, sides, level }: KnownDrill): string {
  const turns = sides ? `, ${sides.least_seconds} to ${sides.most_seconds} s a side` : "";
  return `r${rate_low} to r${rate_high}${turns}${level === "novice" ? "" : "; not for beginners"}`;
}

function focus({ name, phase, calls }: Focus): TemplateResult {
  return html`<details><summary>${name} <span class="small">${NAMES[phase]}</span></summary><ul>${calls.map(call)}</ul></details>`;
}

function call({ text, mends, caution, level, highest_rate }: TechnicalCall): TemplateResult {
  const bounds = [caution, highest_rate ? `Up to r${highest_rate}.` : "", level === "novice" ? "" : `From ${level} level.`].filter(Boolean).join(" ");
  return html`<li><b>${text}</b><br><span class="small">Mends: ${mends}.</span>${bounds ? html` <span class="small">${bounds}</span>` : nothing}</li>`;
}
