/** A few facts about a person, none of them needed. Property `athlete`; event `facts` (detail: what has changed), which bubbles. */
import { LitElement, css, html, nothing } from "lit";
import { FACT_BOUNDS, type Fact } from "../plan/fact-bounds.js";
import type { Athlete } from "../plan/wire.js";
import { choices, tiles } from "./choice-look.js";
import { LEVELS } from "./level-names.js";
import { fields, type } from "./look.js";

const FACTS: readonly { fact: Fact; label: string }[] = [
  { fact: "age", label: "Age, years" },
  { fact: "mass_kg", label: "Body mass, kg" },
  { fact: "heart_rate_rest", label: "Heart rate at rest" },
  { fact: "heart_rate_max", label: "Highest heart rate" },
];

export class AthleteFacts extends LitElement {
  static override properties = { athlete: { attribute: false }, problems: { state: true } };
  declare athlete: Athlete;
  declare problems: Partial<Record<Fact, string>>;

  constructor() {
    super();
    this.problems = {};
  }

  static override styles = [type, fields, choices, css`
    section { display: grid; gap: 14px; }
    h2 { border-bottom: 2px solid var(--edge); padding-bottom: 6px; }
    .facts { display: grid; grid-template-columns: repeat(auto-fit, minmax(9em, 1fr)); gap: 12px 8px; }
    .facts > div { display: grid; gap: 6px; align-content: start; }
    input { min-height: 56px; }
    input[aria-invalid="true"] { border-color: var(--catch); }
    .bad { font-weight: 700; }
  `];

  override render() {
    return html`<section aria-labelledby="about"><h2 id="about">About you</h2>
      <p class="small">All of it can be left empty. Age and heart rates give heart-rate bands; mass gives energy.</p>
      <fieldset><legend>Your rowing</legend>${tiles("level", LEVELS, this.athlete.level ?? "club", (level) => this.tell({ level }))}</fieldset>
      <div class="facts">${FACTS.map((each) => this.field(each))}</div></section>`;
  }

  private field({ fact, label }: (typeof FACTS)[number]) {
    const { low, high, whole } = FACT_BOUNDS[fact];
    const problem = this.problems[fact] ?? "";
    const read = (event: Event) => this.read(event, fact, low, high, whole);
    return html`<div><label for=${fact}>${label}</label>
      <input id=${fact} inputmode=${whole ? "numeric" : "decimal"} autocomplete="off" aria-describedby="${fact}-problem" aria-invalid=${problem ? "true" : "false"}
        .value=${String(this.athlete[fact] ?? "")} @input=${problem ? read : nothing} @change=${read} />
      <p id="${fact}-problem" class="bad" role="alert" ?hidden=${!problem}>${problem}</p></div>`;
  }

  private read(event: Event, fact: Fact, low: number, high: number, whole: boolean): void {
    const text = (event.target as HTMLInputElement).value.trim().replace(",", ".");
    const value = whole ? Number(text) : Math.round(Number(text) * 10) / 10;
    const fine = !text || (value >= low && value <= high && (!whole || Number.isInteger(value)));
    this.problems = { ...this.problems, [fact]: fine ? "" : `Write a ${whole ? "whole number" : "number"} from ${low} to ${high}, or nothing.` };
    if (fine) this.tell({ [fact]: text ? value : undefined });
  }

  private tell(changes: Partial<Athlete>): void {
    this.dispatchEvent(new CustomEvent<Partial<Athlete>>("facts", { detail: changes, bubbles: true, composed: true }));
  }
}
customElements.define("athlete-facts", AthleteFacts);
