/** Words from the library to choose from, found by typing a part of them.
 *
 * Properties: `label` (what the button says), `words` (each with what it is about). Event: `pick` (detail: the one chosen).
 */
import { LitElement, css, html } from "lit";
import { dialogs } from "./dialog-look.js";
import { buttons, fields, type } from "./look.js";

export interface Word {
  text: string;
  about: string;
}

export class WordPicker extends LitElement {
  static override properties = { label: {}, words: { attribute: false }, sought: { state: true }, opened: { state: true } };
  declare label: string;
  declare words: readonly Word[];
  declare sought: string;
  /** While it is not, there is no list that keys would wait for. */
  declare opened: boolean;

  constructor() {
    super();
    this.label = "";
    this.words = [];
    this.sought = "";
    this.opened = false;
  }

  static override styles = [type, buttons, fields, dialogs, css`
    :host { display: grid; }
    ul { display: grid; gap: 8px; }
    li button { width: 100%; justify-items: start; text-align: left; font-size: 1.125rem; }
    li .small { font-weight: 400; }
    .about { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 6; overflow: hidden; }
    .open { font-size: 1.0625rem; }
    .search { display: grid; gap: 10px; }
    /* it covers what goes by beneath it, to the edge of the dialog */
    .foot { position: sticky; bottom: -20px; display: grid; margin: 0 -20px -20px; padding: 12px 20px 20px; background: var(--water); border-top: 1px solid var(--line); }
  `];

  override render() {
    const found = this.opened ? this.words.filter((word) => fits(word, this.sought)) : [];
    return html`<button type="button" class="open" ?disabled=${!this.words.length} @click=${this.open}>${this.label}</button>
      <dialog aria-labelledby="title" @close=${this.closed}><h2 id="title">From the library</h2>
        <div class="search"><label for="search">Search</label><input id="search" type="search" autocomplete="off" .value=${this.sought} @input=${this.search}></div>
        <p class="small" role="status">${found.length ? `${found.length} found` : "Nothing found. Try fewer or other words, or go back and write it yourself."}</p>
        <ul>${found.map((word) => html`<li><button type="button" @click=${() => this.pick(word)}><span dir="auto">${word.text}</span><span class="small about" dir="auto">${word.about}</span></button></li>`)}</ul>
        <div class="foot"><button type="button" @click=${this.close}>Back</button></div></dialog>`;
  }

  private readonly open = () => {
    this.opened = true;
    this.dialog.showModal();
  };

  private readonly closed = () => {
    this.opened = false;
    this.sought = "";
  };

  private readonly close = () => this.dialog.close();

  private get dialog(): HTMLDialogElement {
    return this.renderRoot.querySelector("dialog")!;
  }

  private search(event: Event): void {
    this.sought = (event.target as HTMLInputElement).value;
  }

  private pick(word: Word): void {
    this.close();
    this.dispatchEvent(new CustomEvent<Word>("pick", { detail: word }));
  }
}
customElements.define("word-picker", WordPicker);

/** Every part that was typed stands somewhere in it. */
function fits({ text, about }: Word, sought: string): boolean {
  const all = `${text} ${about}`.toLowerCase();
  return sought.toLowerCase().split(/\s+/).every((part) => all.includes(part));
}
