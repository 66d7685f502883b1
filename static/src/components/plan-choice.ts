/** Every plan that can be had here, to choose one to be put on a wall: a card leads back to the walls with it. */
import { LitElement, css, html, nothing } from "lit";
import { everyKept, libraryPlans } from "../data/plans.js";
import { type } from "./look.js";
import { keptCard, libraryCard } from "./plan-cards.js";
import "./plan-finder.js";
import type { PlanCard } from "./plan-library.js";
import { queryOf } from "./routes.js";

export class PlanChoice extends LitElement {
  static override properties = { own: { state: true }, library: { state: true }, trouble: { state: true } };
  declare own: readonly PlanCard[];
  declare library: readonly PlanCard[] | undefined;
  declare trouble: string;

  constructor() {
    super();
    this.own = [];
    this.trouble = "";
  }

  static override styles = [type, css`plan-finder, section { display: grid; gap: 24px; } section { gap: 12px; }`];

  override connectedCallback(): void {
    super.connectedCallback();
    void this.gather();
  }

  override render() {
    const { own, library } = this;
    return html`<plan-finder apart .plans=${[...own, ...(library ?? [])]}>
      ${own.length ? html`<section aria-labelledby="own"><h2 id="own">On this device</h2><plan-library .plans=${own}></plan-library></section>` : nothing}
      ${library ? html`<plan-library grouped .plans=${library}></plan-library>` : html`<p class="small" role="status">Fetching the plans …</p>`}
      ${this.trouble ? html`<p role="status">${this.trouble}</p>` : nothing}</plan-finder>`;
  }

  /** Without a signal what was opened here before is there to choose. */
  private async gather(): Promise<void> {
    const { sound } = await everyKept();
    const library = await libraryPlans().catch(() => undefined);
    if (!library) this.trouble = "The library needs signal the first time. Plans opened on this device are above.";
    this.library = (library ?? []).map((plan) => libraryCard(plan, addressWith("built-in", plan.slug)));
    this.own = sound.filter(({ source }) => source !== "built-in" || !library).map((record) => keptCard(record, false, addressWith(record.source, record.name)));
  }
}
customElements.define("plan-choice", PlanChoice);

function addressWith(source: Parameters<typeof queryOf>[0], name: string): string {
  return `/walls${queryOf(source, name)}`;
}
