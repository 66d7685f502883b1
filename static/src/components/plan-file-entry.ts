/** A plan from a file: chosen here, dropped anywhere on this screen, or pasted as its text. It is opened when all of it will do. */
import { LitElement, css, html, nothing } from "lit";
import { NoAnswer } from "../data/api.js";
import { readAthlete } from "../data/athlete.js";
import { NotAPlan, looksLikeJson, openPlanFile } from "../data/plan-file.js";
import { addressOf } from "../data/plans.js";
import { buttons, type } from "./look.js";
import { goTo } from "./routes.js";

const NO_SIGNAL = "A plan file is checked by the server, so this needs signal, and there is none.";
const UNCHANGED = "Nothing here has changed.";

export class PlanFileEntry extends LitElement {
  static override properties = { busy: { state: true }, named: { state: true }, trouble: { state: true } };
  declare busy: boolean;
  declare named: string;
  declare trouble: readonly string[];

  constructor() {
    super();
    this.busy = false;
    this.named = "";
    this.trouble = [];
  }

  static override styles = [type, buttons, css`
    :host { display: grid; gap: 8px; padding: 14px; border: 2px dashed var(--edge); border-radius: var(--r); }
    :host([data-over]) { border-color: var(--catch); background: var(--hull); }
    input { display: none; }
    .trouble { display: grid; gap: 6px; padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--catch); border-radius: 6px var(--r) var(--r) 6px; overflow-wrap: anywhere; }
    .trouble ul { display: grid; gap: 6px; padding-left: 20px; list-style: disc; }
  `];

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener("dragover", this.hover);
    addEventListener("dragleave", this.left);
    addEventListener("drop", this.dropped);
    addEventListener("paste", this.pasted, { capture: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener("dragover", this.hover);
    removeEventListener("dragleave", this.left);
    removeEventListener("drop", this.dropped);
    removeEventListener("paste", this.pasted, { capture: true });
  }

  override render() {
    return html`<button type="button" aria-describedby="how" ?disabled=${this.busy} @click=${this.choose}>${this.busy ? "Reading it …" : "Open a plan file"}</button>
      <input type="file" accept=".json,application/json" tabindex="-1" @change=${this.chosen}>
      <p class="small" id="how">Or drop one on this page, or paste its text. Plan files come from Download on a plan’s page.</p>
      <div role="alert">${this.trouble.length ? html`<div class="trouble"><p>${this.named ? html`<b><bdi>${this.named}</bdi></b> cannot be opened.` : "This cannot be opened."}</p>
        <ul>${this.trouble.map((sentence) => html`<li dir="auto">${sentence}</li>`)}</ul><p>${UNCHANGED}</p></div>` : nothing}</div>`;
  }

  private choose(): void {
    this.renderRoot.querySelector("input")!.click();
  }

  private chosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file) void this.open(file, file.name);
    // The same file may be chosen again once it has been mended.
    input.value = "";
  }

  private readonly hover = (event: DragEvent): void => {
    if (!event.dataTransfer?.types.includes("Files")) return;
    event.preventDefault();
    this.toggleAttribute("data-over", true);
  };

  private readonly left = (event: DragEvent): void => {
    if (!event.relatedTarget) this.toggleAttribute("data-over", false);
  };

  private readonly dropped = (event: DragEvent): void => {
    this.toggleAttribute("data-over", false);
    const [file] = event.dataTransfer?.files ?? [];
    if (!file) return;
    event.preventDefault();
    void this.open(file, file.name);
  };

  /** The text of a plan file is opened instead of being put into the box, which takes shorthand. */
  private readonly pasted = (event: ClipboardEvent): void => {
    const [file] = event.clipboardData?.files ?? [];
    const text = event.clipboardData?.getData("text/plain") ?? "";
    if (!file && !looksLikeJson(text)) return;
    event.preventDefault();
    event.stopPropagation();
    void this.open(file ?? new Blob([text]), file?.name ?? "");
  };

  private async open(file: Blob, name: string): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    this.named = name;
    this.trouble = [];
    try {
      goTo(this, addressOf(await openPlanFile(file, await readAthlete())));
    } catch (error) {
      this.trouble = troubleOf(error);
      await this.updateComplete;
      this.scrollIntoView({ block: "nearest" });
    } finally {
      this.busy = false;
    }
  }
}
customElements.define("plan-file-entry", PlanFileEntry);

function troubleOf(error: unknown): readonly string[] {
  if (error instanceof NotAPlan) return error.sentences;
  if (error instanceof NoAnswer) return [NO_SIGNAL];
  return [error instanceof Error ? error.message : String(error)];
}
