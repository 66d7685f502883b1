/** The tags of a plan. Property `tags`; event `tags` (detail: those it has now). */
import { LitElement, css, html } from "lit";
import { tagsIn, tagsProblem } from "../plan/tag-reading.js";
import { type } from "./look.js";
import "./typed-field.js";

export class TagEntry extends LitElement {
  static override properties = { tags: { attribute: false } };
  declare tags: readonly string[];

  constructor() {
    super();
    this.tags = [];
  }

  static override styles = [type, css`:host { display: grid; gap: 6px; width: 100%; }`];

  override render() {
    return html`<typed-field label="Tags, with commas between" .hint=${tagsProblem} .value=${this.tags.join(", ")}
        .read=${tagsIn} @value=${({ detail }: CustomEvent<string[]>) => this.dispatchEvent(new CustomEvent("tags", { detail }))}></typed-field>
      <p class="small">Such as: Tuesday, juniors. The first screen finds plans by them. They stay on this device.</p>`;
  }
}
customElements.define("tag-entry", TagEntry);
