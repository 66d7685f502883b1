/** Opens the plan of a link and shows it like any other; says in a sentence why a link cannot be opened.
 *
 * Properties: `carried` (what stands behind the # of an address that carries its plan) or `short` (the end of a short one).
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { NoAnswer } from "../data/api.js";
import { LinkError } from "../data/link-codec.js";
import { openCarried, openShort } from "../data/links.js";
import { page, type } from "./look.js";
import "./plan-opened.js";
import { tellScreen } from "./routes.js";

const NO_SIGNAL =
  "A short link needs signal the first time, and there is none. A link that carries its plan, or one opened on this device before, needs none.";

export class LinkOpened extends LitElement {
  static override properties = { carried: { attribute: false }, short: { attribute: false }, name: { state: true }, trouble: { state: true }, once: { state: true } };
  declare carried: string | undefined;
  declare short: string | undefined;
  declare name: string;
  declare trouble: string;
  /** The address of a link that stood there twice. */
  declare once: string;

  constructor() {
    super();
    this.name = "";
    this.trouble = "";
    this.once = "";
  }

  static override styles = [type, page, css`a { font-weight: 700; }`];

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "A plan by a link · Slipway";
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has("carried") || changed.has("short")) void this.open();
  }

  override render() {
    if (this.name) return html`<plan-opened .source=${"sent"} .name=${this.name}></plan-opened>`;
    return html`<main><h1 tabindex="-1">${this.trouble ? "This link cannot be opened" : "Opening the plan …"}</h1>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}
      ${this.once ? html`<p><a href=${this.once}>Open it once</a></p>` : nothing}
      <p><a href="/">All plans</a></p></main>`;
  }

  private async open(): Promise<void> {
    const { carried, short } = this;
    [this.name, this.trouble, this.once] = ["", "", ""];
    try {
      const { name } = await (short === undefined ? openCarried(carried ?? "") : openShort(short));
      if (carried === this.carried && short === this.short) this.name = name;
    } catch (error) {
      this.trouble = error instanceof NoAnswer ? NO_SIGNAL : error instanceof Error ? error.message : String(error);
      if (error instanceof LinkError && error.fault === "doubled") this.once = `/p#${half(carried ?? "")}`;
      tellScreen(this);
    }
  }
}
customElements.define("link-opened", LinkOpened);

/** One of two links that stand one after the other. */
function half(carried: string): string {
  return carried.includes("#") ? carried.slice(carried.lastIndexOf("#") + 1) : carried.slice(0, Math.floor(carried.length / 2));
}
