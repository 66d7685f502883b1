/** Plans to choose from, grouped by kind. Property `plans`; attribute `grouped`. */
import { LitElement, css, html, nothing, type TemplateResult } from "lit";
import type { Level, Plan } from "../plan/types.js";
import { type } from "./look.js";

export interface PlanCard {
  href: string;
  title: string;
  plan: Plan;
  summary?: string;
  kind?: string;
  /** The least that a plan of the library is meant for. */
  level?: Level;
  tags?: readonly string[];
  seconds_s: number;
  estimated: boolean;
  /** When one's own plan was last opened, in ms since 1970: it tells plans of one title apart. */
  opened_ms?: number;
  /** Proved to run with no signal. */
  saved: boolean;
}

/** The kinds of plan in the order of the library; a kind not named here follows under its own name. */
const KINDS: Record<string, string> = {
  "first row": "Never rowed before",
  "warm-up": "Warm-ups",
  technique: "Technique",
  ladder: "Ladders",
  steady: "Steady rowing",
  intervals: "Intervals",
  test: "Test pieces",
  "cool-down": "Cool-downs",
};

export class PlanLibrary extends LitElement {
  static override properties = { plans: { attribute: false }, grouped: { type: Boolean } };
  declare plans: readonly PlanCard[];
  declare grouped: boolean;

  constructor() {
    super();
    this.plans = [];
    this.grouped = false;
  }

  static override styles = [type, css`
    :host { display: grid; gap: 18px; }
    h2 { font-size: 1.0625rem; color: var(--ink-2); margin-bottom: 8px; }
    ul { display: grid; gap: 8px; }
    a { display: grid; grid-template-columns: 1fr auto; gap: 2px 14px; align-items: baseline; min-height: var(--target); align-content: center;
      padding: 13px 16px; background: var(--hull); border: 1px solid var(--line); border-radius: var(--r); text-decoration: none; }
    a:hover { border-color: var(--ink); }
    b { font-size: 1.25rem; line-height: 1.2; overflow-wrap: anywhere; }
    .minutes { white-space: nowrap; font-weight: 700; }
    .line { grid-column: 1 / -1; line-height: 1.3; overflow-wrap: anywhere; }
    .about { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; overflow: hidden; }
    .saved { display: inline-flex; gap: 6px; align-items: center; }
    svg { width: 13px; height: 13px; fill: none; stroke: currentColor; stroke-width: 2.2; }
    @media (min-width: 900px) { ul { grid-template-columns: 1fr 1fr; } }
  `];

  override render() {
    if (!this.grouped) return list(this.plans);
    const kinds = [...new Set([...Object.keys(KINDS), ...this.plans.map((plan) => plan.kind ?? "")])]
      .filter((kind) => this.plans.some((plan) => (plan.kind ?? "") === kind));
    return kinds.map((kind) => html`<section>
      ${kind ? html`<h2>${KINDS[kind] ?? capital(kind)}</h2>` : nothing}
      ${list(this.plans.filter((plan) => (plan.kind ?? "") === kind))}
    </section>`);
  }
}
customElements.define("plan-library", PlanLibrary);

function list(plans: readonly PlanCard[]): TemplateResult {
  return html`<ul>${plans.map((plan) => html`<li><a href=${plan.href}>
    <b dir="auto">${plan.title}</b>
    <span class="minutes">${minutes(plan)}</span>
    ${plan.summary ? html`<span class="small line about" dir="auto">${plan.summary}</span>` : nothing}
    ${plan.tags?.length ? html`<span class="small line" dir="auto">${plan.tags.join(" · ")}</span>` : nothing}
    ${plan.opened_ms === undefined ? nothing : html`<span class="small line">Last opened ${WHEN.format(plan.opened_ms)}</span>`}
    ${plan.saved ? html`<span class="small line saved"><svg viewBox="0 0 14 14" aria-hidden="true"><path d="M2 7l3.5 4L12 3" /></svg>Saved on this device</span>` : nothing}
  </a></li>`)}</ul>`;
}

const WHEN = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" });

function minutes(plan: PlanCard): string {
  const whole = Math.max(1, Math.round(plan.seconds_s / 60));
  const text = whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
  return plan.estimated ? `about ${text}` : text;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
