/** Starts the page: the library on the first screen, one plan on its own. */
import { html, nothing, render } from "lit";
import "./components/block-list.js";
import "./components/plan-library.js";
import "./components/plan-profile.js";
import { fetchPlan, fetchPlans } from "./data/api.js";
import { register } from "./offline/worker-bridge.js";
import { clock } from "./plan/format.js";
import type { BuiltinPlan, PlanSummary } from "./plan/wire.js";

const app = document.querySelector("#app");
const PLAN = /^\/plan\/([^/]+)$/;

async function show(): Promise<void> {
  const slug = PLAN.exec(location.pathname)?.[1];
  const [title, screen] = slug === undefined ? libraryScreen(await fetchPlans()) : planScreen(await fetchPlan(slug));
  document.title = title;
  paint(screen);
}

function paint(screen: unknown): void {
  if (app instanceof HTMLElement) render(html`<main class="page">${screen}</main>`, app);
}

function libraryScreen(plans: readonly PlanSummary[]): [string, unknown] {
  const cards = plans.map((plan) => ({ ...plan, href: `/plan/${plan.slug}`, saved: false }));
  return ["Slipway", html`<h1>What are you rowing today?</h1>
    <plan-library grouped .plans=${cards}></plan-library>`];
}

function planScreen({ plan, timeline }: BuiltinPlan): [string, unknown] {
  const about = timeline.totals.estimated ? "about " : "";
  return [plan.title, html`<p><a href="/">All plans</a></p>
    <h1 dir="auto">${plan.title}</h1>
    ${plan.summary ? html`<p dir="auto">${plan.summary}</p>` : nothing}
    <plan-profile labels .timeline=${timeline}></plan-profile>
    <p>${about}${clock(timeline.totals.seconds_s)} · ${timeline.totals.strokes} strokes</p>
    <block-list .timeline=${timeline}></block-list>
    <p class="small">Stop at once with chest pain, faintness or unusual breathlessness, and get help. Ask a
      doctor first if you are unsure or have known disease or symptoms. A coach on site and local rules come
      before any plan.</p>`];
}

function sayWhatFailed(error: unknown): void {
  document.title = "Slipway";
  paint(html`<h1>This plan cannot be shown</h1><p>${error instanceof Error ? error.message : String(error)}</p>
    <p><a href="/">All plans</a></p>`);
}

void show().catch(sayWhatFailed);
void register();
