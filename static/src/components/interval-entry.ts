/** A set of intervals of one's own: how many, how long each, how long the rest. Method `read()`. */
import { LitElement, css, html } from "lit";
import { BOUNDS, inFives, type Repetitions } from "../plan/piece-choices.js";
import { choices, pick, type Option } from "./choice-look.js";
import { fields, type } from "./look.js";

type Unit = "metres" | "minutes";
type Field = "times" | "each" | "rest";

const UNITS: readonly Option<Unit>[] = [{ value: "metres", name: "metres" }, { value: "minutes", name: "minutes" }];

export class IntervalEntry extends LitElement {
  static override properties = { unit: { state: true }, problem: { state: true } };
  declare unit: Unit;
  declare problem: { field: Field; sentence: string } | undefined;

  constructor() {
    super();
    this.unit = "metres";
  }

  static override styles = [type, fields, choices, css`
    :host { display: grid; gap: 8px; }
    .picks { grid-template-columns: repeat(auto-fit, minmax(7.4em, 1fr)); }
    input { min-height: 56px; }
    input[aria-invalid="true"] { border-color: var(--catch); }
    .bad { font-weight: 700; }
  `];

  override render() {
    return html`<div class="picks">
        ${this.field("times", "How many", "6")}
        ${this.field("each", "Each", this.unit === "metres" ? "750" : "3")}
        ${pick("unit", "Counted in", UNITS, this.unit, (unit) => (this.unit = unit))}
        ${this.field("rest", "Rest, minutes", "3")}
      </div>
      <p id="problem" role="alert" class="bad" ?hidden=${!this.problem}>${this.problem?.sentence}</p>`;
  }

  /** The set as typed; undefined, and the reason at its field, where it cannot be read. */
  read(): Repetitions | undefined {
    const times = this.number("times", "how many repetitions", BOUNDS.times, true);
    const each = times && this.number("each", `the ${this.unit} of each`, BOUNDS[this.unit], this.unit === "metres");
    const rest = each && this.number("rest", "the minutes of rest", BOUNDS.rest, false);
    if (!times || !each || !rest) return undefined;
    this.problem = undefined;
    const length = this.unit === "metres" ? { metres: each } : { seconds: inFives(each) };
    return { times, length, rest_seconds: inFives(rest) };
  }

  private field(id: Field, label: string, usual: string) {
    return html`<div><label for=${id}>${label}</label><input id=${id} inputmode="decimal" autocomplete="off" value=${usual}
      aria-describedby="problem" aria-invalid=${this.problem?.field === id ? "true" : "false"} /></div>`;
  }

  private number(field: Field, name: string, { low, high }: { low: number; high: number }, whole: boolean): number | undefined {
    const value = Number(this.renderRoot.querySelector<HTMLInputElement>(`#${field}`)!.value.trim().replace(",", "."));
    if (value >= low && value <= high && (!whole || Number.isInteger(value))) return value;
    this.problem = { field, sentence: `Write ${name} as a ${whole ? "whole number" : "number"} from ${low} to ${high}.` };
    return undefined;
  }
}
customElements.define("interval-entry", IntervalEntry);
