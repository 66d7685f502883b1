/** What stands above a plan's blocks, each in its field. Property `plan`; event `edit` (detail: the plan after a change). */
import { LitElement, css, html, nothing } from "lit";
import { lineIn } from "../plan/field-values.js";
import type { Plan } from "../plan/wire.js";
import { choices } from "./choice-look.js";
import { type } from "./look.js";
import { machineFields } from "./machine-fields.js";
import "./typed-field.js";

export class PlanHead extends LitElement {
  static override properties = { plan: { attribute: false } };
  declare plan: Plan | undefined;
  /** How it begins; whoever unfolds or folds it has the say from then on. */
  private unfolded: boolean | undefined;

  static override styles = [type, choices, css`
    :host, .more { display: grid; gap: 12px; }
    label { font-weight: 700; }
    select { min-height: 60px; }
    summary { width: fit-content; min-height: 44px; align-content: center; cursor: pointer; font-weight: 700; text-decoration: underline; text-underline-offset: 4px; }
  `];

  override render() {
    const { plan } = this;
    if (!plan) return nothing;
    const { title, summary = "", setup = "", setting } = plan;
    this.unfolded ??= Boolean(summary || setup || setting);
    return html`${this.line("Title", title, 80, (text) => text && this.change({ title: text }))}
      <details ?open=${this.unfolded}><summary>For whom, and how to set up</summary><div class="more">
        ${this.line("For whom, and what it costs", summary, 600, (text) => this.change({ summary: text || undefined }))}
        ${this.line("Set-up", setup, 600, (text) => this.change({ setup: text || undefined }))}
        <div class="picks">${machineFields(setting, (next) => this.change({ setting: next }))}</div></div></details>`;
  }

  private line(label: string, value: string, longest: number, set: (text: string) => void) {
    const needed = label === "Title";
    return html`<typed-field .label=${label} .hint=${`Write up to ${longest} plain characters.`} .value=${value}
      .read=${(typed: string) => (needed ? lineIn(typed, longest) || undefined : lineIn(typed, longest))} @value=${({ detail }: CustomEvent<string>) => set(detail)}></typed-field>`;
  }

  /** What is undefined in the changes is left out. */
  private change(changes: { [Name in "title" | "summary" | "setup" | "setting"]?: Plan[Name] | undefined }): void {
    const next = Object.entries({ ...this.plan, ...changes }).filter(([, value]) => value !== undefined);
    this.dispatchEvent(new CustomEvent<Plan>("edit", { detail: Object.fromEntries(next) as unknown as Plan }));
  }
}
customElements.define("plan-head", PlanHead);
