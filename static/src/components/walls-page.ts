/** The walls whose keys are on this device: what each shows, and what it is to show next.
 *
 * Properties: `key` (what stands behind the # of a key link, or ""), `source` and `name` of a plan to put on one of them.
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { fromKeyLink, isWrongKey, keepKey, newWall, readWalls, settleKey, type KeyedWall, type WallKey } from "../data/keyed-walls.js";
import { needsKey } from "../data/links.js";
import { NoAnswer } from "../data/api.js";
import { openPlan, type PlanRecord, type Source } from "../data/plans.js";
import { changeSettings } from "../data/settings.js";
import { buttons, fields, page, type } from "./look.js";
import { NoSlips } from "./no-slips.js";
import { replaceAddress, tellScreen } from "./routes.js";
import "./plan-choice.js";
import "./wall-card.js";
import { failedWords } from "./wall-card-words.js";

const NO_SIGNAL = "Walls are led through the server, so this needs signal, and there is none.";
const OTHER_KEY = "The key of this link is not that of the wall: it may have been replaced. The key that is here stays.";
const UNASKED_KEY = "There is no signal to ask whether the key of this link is right. It is kept beside the one that is here, and the one that works is used.";
const NO_KEY = "This is no key link, or it was cut short. Copy the whole of it, or have its code scanned again.";

export class WallsPage extends LitElement {
  static override properties = {
    key: { attribute: false }, source: { attribute: false }, name: { attribute: false }, walls: { state: true }, record: { state: true },
    trouble: { state: true }, asksKey: { state: true }, busy: { state: true }, choosing: { state: true },
  };
  declare key: string;
  declare source: Source | undefined;
  declare name: string | undefined;
  declare walls: readonly KeyedWall[] | undefined;
  declare record: PlanRecord | undefined;
  declare trouble: string;
  declare asksKey: boolean;
  declare busy: boolean;
  /** The plans stand here instead of the walls. */
  declare choosing: boolean;

  constructor() {
    super();
    this.key = "";
    this.trouble = "";
    this.asksKey = false;
    this.busy = false;
    this.choosing = false;
    this.addEventListener("click", new NoSlips(), { capture: true });
  }

  static override styles = [type, buttons, fields, page, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    header, form { display: grid; gap: 8px; justify-items: start; }
    form { justify-items: stretch; }
  `];

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Walls · Slipway";
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has("key") || changed.has("name")) void this.gather();
    if (changed.get("choosing") !== undefined) tellScreen(this);
  }

  override render() {
    const { walls, record } = this;
    if (this.choosing) return this.choice();
    return html`<main>
      <a class="back" href="/">All plans</a>
      <header><h1 tabindex="-1">Walls</h1>
        ${record ? html`<p>To be put on a wall: <b dir="auto">${record.plan.title}</b></p><button type="button" @click=${this.choose}>Choose another plan</button>`
          : html`<p>A tablet on a wall shows what a phone with its key tells it to.</p>`}</header>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}
      ${this.asksKey ? this.keyForm() : nothing}
      ${(walls ?? []).map((wall) => html`<wall-card .wall=${wall} .plan=${record?.plan} @walls=${this.change} @choose=${this.choose}></wall-card>`)}
      ${walls?.length === 0 ? html`<p>A wall is a screen for the whole room, a tablet or a television. A phone chooses the plan on it, starts it and clears it;
        what lets a phone do that is the wall’s key.</p>
        <p><b>Make a wall</b> gives you one with its key. To lead a wall that is there already, let a phone that leads it show you the code of its key, and scan that.</p>` : nothing}
      <button type="button" ?disabled=${this.busy} @click=${() => void this.make()}>Make a wall</button>
    </main>`;
  }

  /** Whichever is chosen, this page has its name in the address. */
  private choice() {
    const chosen = (event: Event) => {
      if (event.composedPath().some((node) => node instanceof HTMLAnchorElement)) this.choosing = false;
    };
    return html`<main @click=${chosen}>
      <button type="button" class="back" @click=${() => (this.choosing = false)}>Back to the walls</button>
      <h1 tabindex="-1">Which plan is for the wall?</h1>
      <plan-choice></plan-choice></main>`;
  }

  private readonly choose = (): void => {
    this.choosing = true;
  };

  private keyForm() {
    const give = (event: Event) => {
      event.preventDefault();
      const publish_key = this.renderRoot.querySelector<HTMLInputElement>("#publish")!.value.trim();
      void changeSettings({ publish_key }).then(() => this.make());
    };
    return html`<form @submit=${give}><label for="publish">Key of this server</label>
      <input id="publish" autocomplete="off" autocapitalize="off" spellcheck="false" required /><button type="submit">Go on</button></form>`;
  }

  private async gather(): Promise<void> {
    const given = fromKeyLink(this.key);
    if (this.key) replaceAddress("/walls");
    if (this.key && !given) this.trouble = NO_KEY;
    this.walls = await (given ? keepKey(given) : readWalls());
    this.record = this.name ? await openPlan(this.source ?? "built-in", this.name).catch(() => undefined) : undefined;
    tellScreen(this);
    if (given) await this.settle(given);
  }

  private async settle(given: WallKey): Promise<void> {
    try {
      this.walls = await settleKey(given);
    } catch (error) {
      this.trouble = isWrongKey(error) ? OTHER_KEY : error instanceof NoAnswer ? UNASKED_KEY : failedWords(error);
      this.walls = await readWalls();
    }
  }

  private async make(): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    try {
      this.walls = await newWall();
      [this.trouble, this.asksKey] = ["", false];
    } catch (error) {
      this.asksKey = needsKey(error);
      this.trouble = error instanceof NoAnswer ? NO_SIGNAL : failedWords(error);
    }
    this.busy = false;
  }

  private change({ detail }: CustomEvent<readonly KeyedWall[]>): void {
    this.walls = detail;
  }
}
customElements.define("walls-page", WallsPage);
