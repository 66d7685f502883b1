/** Brings the first screen what it shows: plans of the server and of this device, an open session. */
import { LitElement, html, type TemplateResult } from "lit";
import { readAthlete } from "../data/athlete.js";
import { database } from "../data/database.js";
import { everyKept, libraryPlans, type PlanRecord, type UnsoundPlan } from "../data/plans.js";
import { isSound, openSession } from "../data/sessions.js";
import { applyUpdate, canSave, lookForUpdate, onUpdateReady, savedProof, updateIsReady } from "../offline/worker-bridge.js";
import { player, sessionIsOpen } from "../state/player.js";
import "./first-screen.js";
import { keptCard, libraryCard } from "./plan-cards.js";
import type { PlanCard } from "./plan-library.js";
import { cannotBeKeptWords } from "./plain-http.js";
import { goTo } from "./routes.js";

const NO_STORE = "This browser keeps nothing for this page, as in a private window. Sessions run while this page stays open.";
const NEWER_STORE = "What is stored on this device was written by a newer Slipway, which this one cannot read. It is not touched. Close all tabs and open the page once with signal: it then brings itself up to date.";

export class PlansHome extends LitElement {
  static override properties = {
    library: { state: true },
    kept: { state: true },
    proved: { state: true },
    newcomer: { state: true },
    trouble: { state: true },
    updateReady: { state: true },
    running: { state: true },
    stranded: { state: true },
    unsound: { state: true },
  };
  declare library: readonly PlanCard[] | undefined;
  declare kept: readonly PlanRecord[];
  declare proved: boolean;
  /** Has opened nothing yet, or says to be new to rowing. */
  declare newcomer: boolean;
  declare trouble: string;
  declare updateReady: boolean;
  declare running: string;
  /** The open session cannot be gone on with. */
  declare stranded: boolean;
  declare unsound: readonly UnsoundPlan[];
  private runsAt = "/row";
  private stopWatching: (() => void)[] = [];

  constructor() {
    super();
    this.kept = [];
    this.proved = false;
    this.newcomer = false;
    this.trouble = "";
    this.updateReady = false;
    this.running = "";
    this.stranded = false;
    this.unsound = [];
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Slipway";
    this.stopWatching = [player.subscribe(() => void this.look()), onUpdateReady(() => (this.updateReady = true))];
    void this.look();
    void this.gather();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopWatching.forEach((stop) => stop());
  }

  override render() {
    return html`<first-screen .builtIn=${this.library} .kept=${this.kept.map((record) => keptCard(record, this.proved))}
      .ready=${this.proved} .newcomer=${this.newcomer} .running=${this.running} .stranded=${this.stranded} .unsound=${this.unsound}
      .trouble=${this.trouble} .notice=${this.notice()}
      .updateReady=${this.updateReady && !this.running}
      @resume=${() => goTo(this, this.runsAt)} @update=${this.changeApp}></first-screen>`;
  }

  /** A session left open is offered before anything else, whichever tab or run of the app it was in. */
  private async look(): Promise<void> {
    const open = await openSession();
    this.running = !open ? "" : isSound(open) ? open.record.plan.title : open.title || "a session";
    this.stranded = open !== undefined && !isSound(open);
    this.runsAt = `/${(open && isSound(open) && open.record.led_by) || "row"}`;
  }

  private async gather(): Promise<void> {
    const { sound, unsound } = await everyKept();
    [this.kept, this.unsound] = [sound, unsound];
    this.newcomer = !this.kept.length || (await readAthlete()).athlete.level === "novice";
    this.updateReady = await updateIsReady();
    void lookForUpdate();
    await Promise.all([this.gatherLibrary(), savedProof().then((proof) => (this.proved = proof.state === "proved" && database.where() === "disk"))]);
  }

  private async gatherLibrary(): Promise<void> {
    try {
      this.library = (await libraryPlans()).map((plan) => libraryCard(plan));
    } catch {
      this.library = [];
      this.trouble = "The library needs signal the first time. Plans opened before are above.";
    }
  }

  /** Never under a session that runs, in whatever tab. */
  private async changeApp(): Promise<void> {
    if (!(await sessionIsOpen())) await applyUpdate();
  }

  private notice(): TemplateResult | string {
    if (!canSave()) return cannotBeKeptWords(html`A plan’s page offers all of it as one file, which needs no server.`);
    if (database.isNewer()) return NEWER_STORE;
    return database.where() === "memory" && !database.isSilent() ? NO_STORE : "";
  }
}
customElements.define("plans-home", PlansHome);
