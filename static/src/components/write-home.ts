/** A plan being written: brings the screen its text, keeps what is typed, and makes it one of one's own plans.
 *
 * Properties: `source` and `name` of the plan it is written from, or undefined for a new one. Slot: what is shown until all is read.
 */
import { LitElement, html, type PropertyValues } from "lit";
import { NoAnswer, Refused } from "../data/api.js";
import { readAthlete, resultsOf, type AthleteRecord } from "../data/athlete.js";
import { draftOf, dropDraft, keepDraft } from "../data/drafts.js";
import { addressOf, allPlans, openPlan, type PlanRecord, type Source } from "../data/plans.js";
import { technique } from "../data/technique.js";
import { keepWritten } from "../data/writing.js";
import type { Mend, Plan, Result, TechniqueLibrary } from "../plan/wire.js";
import { written } from "../plan/written.js";
import { Composer, type Composed } from "../state/composer.js";
import { goTo, tellScreen } from "./routes.js";
import "./write-screen.js";
import type { WriteScreen } from "./write-screen.js";

const NO_SIGNAL = "To be kept, the text has to be read, and that needs signal: there is none. It stays here as you wrote it.";

export class WriteHome extends LitElement {
  static override properties = {
    source: { attribute: false },
    name: { attribute: false },
    composed: { state: true },
    record: { state: true },
    missing: { state: true },
    busy: { state: true },
    trouble: { state: true },
    library: { state: true },
    plans: { state: true },
    rower: { state: true },
    other: { state: true },
  };
  declare source: Source | undefined;
  declare name: string | undefined;
  declare composed: Composed | undefined;
  declare record: PlanRecord | undefined;
  /** Why the plan to write from cannot be had, or "". */
  declare missing: string;
  declare busy: boolean;
  declare trouble: string;
  declare library: TechniqueLibrary | undefined;
  declare plans: readonly Plan[];
  declare rower: AthleteRecord | undefined;
  /** Somebody else's result, whose splits are shown. */
  declare other: Result | undefined;
  private composer: Composer | undefined;
  private begun = false;
  private readonly online = () => this.composer?.begin();

  constructor() {
    super();
    this.missing = "";
    this.busy = false;
    this.trouble = "";
    this.plans = [];
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Write a plan · Slipway";
    addEventListener("online", this.online);
    // Without it, drills and calls are typed.
    technique().then((library) => (this.library = library), () => undefined);
    void allPlans().then((plans) => (this.plans = plans));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener("online", this.online);
    this.composer?.close();
  }

  /** Another address may be another plan in the same place, or a new one. */
  override updated(changed: PropertyValues<this>): void {
    if (changed.has("name") || changed.has("source") || !this.begun) void this.gather();
  }

  override render() {
    const { composed, composer, record } = this;
    if (this.missing) return html`<write-screen .missing=${this.missing}></write-screen>`;
    if (!composed || !composer) return html`<slot></slot>`;
    return html`<write-screen .composed=${composed} .from=${record?.plan.title ?? ""} .own=${record?.source === "mine"} .back=${record ? addressOf(record) : "/"}
      .busy=${this.busy} .trouble=${this.trouble} .library=${this.library} .plans=${this.plans} .known=${this.rower !== undefined && resultsOf(this.rower).length > 0} .other=${this.other}
      @rower=${({ detail }: CustomEvent<Result | null>) => this.rowedBy(detail ?? undefined)} @typed=${({ detail }: CustomEvent<string>) => composer.type(detail)} @undo=${() => composer.undo()} @redo=${() => composer.redo()}
      @mend=${this.mend} @edit=${({ detail }: CustomEvent<Plan>) => composer.edit(detail)} @again=${() => composer.begin()} @keep=${this.keep}></write-screen>`;
  }

  private async gather(): Promise<void> {
    this.begun = true;
    this.composer?.close();
    this.composed = this.record = this.other = undefined;
    this.missing = "";
    const { source, name } = this;
    try {
      if (source && name !== undefined) this.record = await openPlan(source, name);
      await this.compose(this.record);
    } catch (error) {
      this.missing = error instanceof NoAnswer ? "There is no signal, and this plan was never opened on this device." : messageOf(error);
    }
    await this.updateComplete;
    tellScreen(this);
  }

  /** What was being written is gone on with; Undo leads back to the plan as it is kept. */
  private async compose(record: PlanRecord | undefined): Promise<void> {
    const id = record?.id ?? "";
    const [rower, draft] = [await readAthlete(), await draftOf(id)];
    if (!this.isConnected || record !== this.record) return;
    this.rower = rower;
    const kept = record ? written(record.plan) : "";
    const composer = new Composer(kept, rower, (composed) => (this.composed = composed), (text) => void keepDraft(id, text));
    if (record) composer.know(kept, record.plan);
    this.composer = composer;
    this.composed = composer.now;
    if (draft !== undefined && draft !== kept) composer.put(draft);
    composer.begin();
  }

  private mend({ detail }: CustomEvent<Mend>): void {
    this.trouble = "";
    this.composer?.mend(detail);
  }

  private rowedBy(other: Result | undefined): void {
    this.other = other;
    this.composer?.rowedBy(other ? { id: "me", athlete: { results: [other] }, answer: null } : this.rower!);
  }

  private async keep(): Promise<void> {
    const { composer, record } = this;
    if (!composer || this.busy) return;
    this.busy = true;
    this.trouble = "";
    try {
      const plan = await composer.read();
      const kept = await keepWritten(plan, record, this.other ? undefined : composer.advice);
      composer.close();
      await dropDraft(record?.id ?? "");
      goTo(this, addressOf(kept));
    } catch (error) {
      this.trouble = error instanceof NoAnswer ? NO_SIGNAL : error instanceof Refused && error.problems.length ? "" : messageOf(error);
      await this.updateComplete;
      this.renderRoot.querySelector<WriteScreen>("write-screen")!.showFirstProblem();
    } finally {
      this.busy = false;
    }
  }
}
customElements.define("write-home", WriteHome);

function messageOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.?!]$/.test(text) ? "" : "."}`;
}
