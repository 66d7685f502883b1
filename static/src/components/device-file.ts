/** Everything on this device as one file, and back from one. Event: `brought`, after something was added. */
import { LitElement, css, html, nothing } from "lit";
import { database } from "../data/database.js";
import { BroughtInPart, bringBack, everything, type Brought } from "../data/everything.js";
import { NotEverything } from "../data/everything-file.js";
import { MOST_RESULTS } from "../data/results.js";
import { MOST_TAGS } from "../plan/tags.js";
import { buttons, type } from "./look.js";
import { saveFile } from "./save-file.js";

const REFUSED = "This device could not store it: its storage is full or closed to this page. Make room and try again.";
const UNCHANGED = "Nothing here has changed.";
const IN_PART = "Then this device could not store more: its storage is full or closed to this page. Make room and bring the file back again: it adds the rest.";
const WITHOUT = "Storage on this device does not answer yet, so what it holds cannot be saved, nor anything be added to it. Try again once it does.";

export class DeviceFile extends LitElement {
  static override properties = { busy: { state: true }, said: { state: true }, trouble: { state: true } };
  declare busy: boolean;
  declare said: string;
  /** What went wrong and what that changed, a sentence each. */
  declare trouble: readonly string[];

  constructor() {
    super();
    this.busy = false;
    this.said = "";
    this.trouble = [];
  }

  static override styles = [type, buttons, css`
    section { display: grid; gap: 12px; }
    h2 { border-bottom: 2px solid var(--edge); padding-bottom: 6px; }
    .acts { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 14em), 1fr)); gap: 10px; }
    input { display: none; }
    .note { display: grid; gap: 6px; padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--edge); border-radius: 6px var(--r) var(--r) 6px; overflow-wrap: anywhere; }
    .trouble { border-left-color: var(--catch); }
  `];

  override render() {
    return html`<section aria-labelledby="everything"><h2 id="everything">Everything on this device</h2>
      <p>Your plans with their tags, your results, what you set here, what you are writing, and the sessions you rowed with your notes, in one file: to keep, or to take to another device.</p>
      <div class="acts"><button type="button" ?disabled=${this.busy} @click=${this.save}>Save it to a file</button>
        <button type="button" ?disabled=${this.busy} aria-describedby="back" @click=${this.choose}>${this.busy ? "Reading it …" : "Bring a file back"}</button></div>
      <input type="file" accept=".json,application/json" tabindex="-1" @change=${this.chosen}>
      <div role="status">${this.said ? html`<p class="note" dir="auto">${this.said}</p>` : nothing}</div>
      <div role="alert">${this.trouble.length ? html`<div class="note trouble" dir="auto">${this.trouble.map((sentence) => html`<p>${sentence}</p>`)}</div>` : nothing}</div>
      <p class="small" id="back">Bringing a file back adds what is missing here. What is here stays as it is.</p>
      <p class="small">The file tells about you: your results, what you rowed and how it went. Keys, to walls and for publishing, are not in it.</p></section>`;
  }

  private choose(): void {
    this.renderRoot.querySelector("input")!.click();
  }

  private chosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file) void this.bring(file);
    // The same file may be chosen again.
    input.value = "";
  }

  private async save(): Promise<void> {
    await this.working(async () => {
      const now = new Date();
      const { text, plans, sessions, left, unsaid } = await everything(now);
      const name = `slipway-${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}.json`;
      saveFile(name, new Blob([text], { type: "application/json" }));
      this.said = `Saved to ${name}: ${count(plans, "plan")}, ${count(sessions, "session")}, your results and settings.${left ? ` ${count(left, "plan or session", "plans and sessions")} on this device cannot be read any more, and stayed behind.` : ""}${unsaid ? ` What was said of ${count(unsaid, "session")} could not be read and is not in it: save it once more.` : ""}`;
    });
  }

  private async bring(file: Blob): Promise<void> {
    await this.working(async () => {
      const brought = await bringBack(file);
      this.said = broughtWords(brought);
      if (database.where() === "memory") this.said += " This browser keeps nothing for this page, so it is gone when the page is closed.";
      this.dispatchEvent(new CustomEvent("brought"));
    });
  }

  private async working(work: () => Promise<void>): Promise<void> {
    if (this.busy) return;
    [this.said, this.trouble] = ["", database.isWithout() ? [WITHOUT, UNCHANGED] : []];
    if (this.trouble.length) return;
    this.busy = true;
    try {
      await work();
    } catch (error) {
      this.trouble = error instanceof BroughtInPart ? [addedWords(error.brought), IN_PART] : [error instanceof NotEverything ? error.message : REFUSED, UNCHANGED];
    } finally {
      this.busy = false;
    }
  }
}
customElements.define("device-file", DeviceFile);

export function broughtWords(brought: Brought): string {
  const { results_left: left, tags_left } = brought;
  const added = addedWords(brought);
  if (!added && !left && !tags_left.length) return "All of it was here already. Nothing here has changed.";
  const no_room = left ? ` ${count(left, "result")} had no room beside those that are here: ${MOST_RESULTS} are kept.` : "";
  const no_tags = tags_left.map(({ title, tags }) => ` ${count(tags, "tag")} had no room on ${title}: a plan has ${MOST_TAGS} at most.`).join("");
  return `${added || "Nothing was added."}${no_room}${no_tags} All the rest was here already.`;
}

function addedWords({ plans, tagged, results, sessions, remarked, others }: Brought): string {
  const parts = [
    plans ? count(plans, "plan") : "", tagged ? `tags on ${count(tagged, "plan")}` : "", results ? count(results, "result") : "",
    sessions ? count(sessions, "session") : "", remarked ? `remarks on ${count(remarked, "session")}` : "", others ? count(others, "setting or fact", "settings and facts") : "",
  ].filter(Boolean);
  return parts.length ? `Added: ${parts.join(", ")}.` : "";
}

function count(many: number, one: string, more = `${one}s`): string {
  return `${many} ${many === 1 ? one : more}`;
}

function two(number: number): string {
  return String(number).padStart(2, "0");
}
