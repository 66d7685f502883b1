/** A search over all plans, above the lists that it takes the place of while something is sought.
 *
 * Properties: `plans` (cards, each once), `apart` (plans are chosen here, and none is made). Slot: what is shown while nothing is sought.
 */
import { LitElement, css, html, nothing } from "lit";
import { EVERYTHING, NEEDS, found, isEverything, type Need, type Range, type Sought } from "../plan/seeking.js";
import { together } from "../plan/tags.js";
import type { Level } from "../plan/types.js";
import { choices, pick, type Option } from "./choice-look.js";
import { LEVELS } from "./level-names.js";
import { buttons, fields, type } from "./look.js";
import "./plan-library.js";
import type { PlanCard } from "./plan-library.js";

const RANGES: readonly Option<Range>[] = [
  { value: "any", name: "any" }, { value: "short", name: "up to 15 min" }, { value: "half-hour", name: "15 to 30 min" },
  { value: "hour", name: "30 to 60 min" }, { value: "long", name: "over an hour" },
];
const SUITS: readonly Option<Level | "">[] = [{ value: "", name: "anybody" }, ...LEVELS];
const LACKING: readonly Option<Need | "">[] = [
  { value: "", name: "any" }, ...(Object.keys(NEEDS) as Need[]).map((value) => ({ value, name: `without ${NEEDS[value]}` })),
];
const ANY_TAG: Option<string> = { value: "", name: "any" };

/** What was sought last, while the page is open: who comes back from a plan looks on where they were. */
let last = EVERYTHING;

export class PlanFinder extends LitElement {
  static override properties = { plans: { attribute: false }, apart: { type: Boolean }, sought: { state: true } };
  declare plans: readonly PlanCard[];
  declare apart: boolean;
  declare sought: Sought;
  /** How it begins; whoever unfolds or folds it has the say from then on. */
  private readonly unfolded = !isEverything({ ...last, words: "" });

  constructor() {
    super();
    this.plans = [];
    this.apart = false;
    this.sought = last;
  }

  static override styles = [type, buttons, fields, choices, css`
    search, .found { display: grid; gap: 12px; }
    .words { display: grid; gap: 6px; }
    input { font-family: var(--font); }
    summary { width: fit-content; min-height: 44px; align-content: center; cursor: pointer; font-weight: 700; text-decoration: underline; text-underline-offset: 4px; }
    label { font-weight: 700; }
    .none { display: grid; gap: 10px; padding: 12px 14px; border-left: 6px solid var(--edge); background: var(--hull); border-radius: 6px var(--r) var(--r) 6px; }
    .found > button { justify-self: start; }
  `];

  override render() {
    const { sought } = this;
    const everything = isEverything(sought);
    return html`<search aria-label="Plans"><div class="words"><label for="words">Find a plan</label>
          <input id="words" type="search" autocomplete="off" aria-describedby="how" .value=${sought.words} @input=${(event: Event) => this.seek({ words: (event.target as HTMLInputElement).value })}>
          <p class="small" id="how">Such as 2 km, r20, ladder, one foot</p></div>
        <details ?open=${this.unfolded}><summary>Length, level, equipment</summary><div class="picks">${this.picks(sought)}</div></details></search>
      ${everything ? html`<slot></slot>` : this.found(found(this.plans, sought))}`;
  }

  private picks({ range, level, lacking, tag }: Sought) {
    const tags = together(this.plans.flatMap((plan) => plan.tags ?? [])).sort((a, b) => a.localeCompare(b));
    return html`${pick("range", "Length", RANGES, range, (next) => this.seek({ range: next }))}
      ${pick("level", "Suits", SUITS, level, (next) => this.seek({ level: next }))}
      ${pick("lacking", "Equipment", LACKING, lacking, (next) => this.seek({ lacking: next }))}
      ${tags.length || tag ? pick("tag", "Tag", [ANY_TAG, ...together(tags, [tag]).map((value) => ({ value, name: value }))], tag, (next) => this.seek({ tag: next })) : nothing}`;
  }

  private found(plans: readonly PlanCard[]) {
    return html`<section class="found" aria-label="Found"><p role="status">${plans.length ? `${plans.length} of ${this.plans.length} plans` : "No plan here fits that."}</p>
      ${plans.length ? html`<plan-library .plans=${plans}></plan-library>` : this.none()}
      <button type="button" @click=${() => this.seek(EVERYTHING)}>Show all plans</button></section>`;
  }

  /** How to go on where nothing was found. */
  private none() {
    return html`<div class="none"><p>Try fewer or other words${isEverything({ ...this.sought, words: "" }) ? "" : ", or set length, level and equipment back to any"}.${this.sought.level ? " Plans of your own say no level, so none of them is among these." : ""}</p>
      ${this.apart ? nothing : html`<p>Or have one made: choose above what you row today. Or <a href="/write">write your own</a>.</p>`}</div>`;
  }

  private seek(changes: Partial<Sought>): void {
    last = this.sought = { ...this.sought, ...changes };
  }
}
customElements.define("plan-finder", PlanFinder);
