/** The log: sessions that were rowed, the newest first, or one of them opened.
 *
 * Properties: `sessions` (those that have been read; undefined before the first), `reading` (there may be more), `unsound` (how many cannot be read), `opened` (the id of one, or ""),
 * `plan` (the address of the opened one's plan, "" where it is gone, undefined while that is looked for), `notice` (a sentence, or ""),
 * `trouble` (why one could not be taken off, or "").
 * Events: `remarked` (detail: id and remarks), `forget` (detail: an id).
 */
import { LitElement, css, html, nothing } from "lit";
import { keyed } from "lit/directives/keyed.js";
import type { LoggedSession } from "../data/log.js";
import type { Remarks } from "../data/remarks.js";
import "./how-it-went.js";
import { buttons, page, type } from "./look.js";
import { COUNTED, figuresLook, pieceList, rowedFigures, wholeWords } from "./rowed-figures.js";
import { sessionWords, whenWords } from "./rowed-words.js";

/** How many are shown before one asks for all. */
const LATEST = 30;

export class LogScreen extends LitElement {
  static override properties = {
    sessions: { attribute: false }, unsound: { type: Number }, reading: { type: Boolean }, opened: {}, plan: {}, notice: {}, trouble: {}, all: { state: true },
  };
  declare sessions: readonly LoggedSession[] | undefined;
  declare unsound: number;
  declare reading: boolean;
  declare opened: string;
  declare plan: string | undefined;
  declare notice: string;
  declare trouble: string;
  declare all: boolean;

  constructor() {
    super();
    this.unsound = 0;
    this.reading = false;
    this.opened = "";
    this.notice = "";
    this.trouble = "";
    this.all = false;
  }

  static override styles = [type, buttons, page, figuresLook, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    header, section { display: grid; gap: 10px; }
    h1, p { overflow-wrap: anywhere; }
    .list { display: grid; gap: 8px; }
    .list a { display: grid; gap: 2px; min-height: var(--target); padding: 13px 16px; background: var(--hull); border: 1px solid var(--line);
      border-radius: var(--r); text-decoration: none; line-height: 1.3; overflow-wrap: anywhere; }
    .list a:hover { border-color: var(--ink); }
    .list b { font-size: 1.25rem; line-height: 1.2; }
    .note { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; overflow: hidden; }
    .notice { padding: 12px 14px; border-left: 6px solid var(--edge); background: var(--hull); border-radius: 6px var(--r) var(--r) 6px; }
    .acts { display: grid; gap: 10px; justify-items: start; }
    .acts ask-first { width: 100%; }
    @media (min-width: 900px) {
      main.whole { width: min(100%, 1000px); }
      .list { grid-template-columns: 1fr 1fr; }
    }
  `];

  override render() {
    const { sessions, opened } = this;
    const session = sessions?.find(({ id }) => id === opened);
    if (session) return this.one(session);
    return html`<main class="whole">
      <a class="back" href="/">What are you rowing today?</a>
      <header><h1 tabindex="-1">Log</h1><p>What you rowed on this device, and how it went. It stays here.</p></header>
      ${this.notice ? html`<p class="notice">${this.notice}</p>` : nothing}
      ${sessions && opened && !this.reading ? html`<p class="notice" role="status">That session is not on this device.</p>` : nothing}
      ${this.unsound ? html`<p class="notice">${this.unsound === 1 ? "One session is" : `${this.unsound} sessions are`} left out here: what is stored of ${this.unsound === 1 ? "it" : "them"} is damaged, or was saved by a newer Slipway.</p>` : nothing}
      ${sessions ? this.list(sessions) : nothing}
      ${this.reading ? html`<p class="small" role="status">${sessions?.length ? "Reading what is older …" : "Reading the log …"}</p>` : nothing}
    </main>`;
  }

  private list(sessions: readonly LoggedSession[]) {
    if (!sessions.length) return this.reading ? nothing : html`<p>Nothing here yet: a session that you row stands here once it has ended.</p>`;
    const shown = this.all ? sessions : sessions.slice(0, LATEST);
    return html`<ul class="list">${shown.map((session) => this.line(session))}</ul>
      ${shown.length < sessions.length ? html`<button type="button" @click=${() => (this.all = true)}>Show all ${sessions.length}</button>` : nothing}`;
  }

  private line(session: LoggedSession) {
    const { id, figures, note } = session;
    return html`<li><a href="/log#${id}"><b dir="auto">${figures.title}</b>
      <span class="small">${whenWords(figures)}</span>
      <span class="small">${sessionWords(session)}</span>
      ${note ? html`<span class="note" dir="auto">${note}</span>` : nothing}</a></li>`;
  }

  private one({ id, figures }: LoggedSession) {
    const { title, done, planned, whole, pieces } = figures;
    const tell = ({ detail }: CustomEvent<Remarks>) => this.dispatchEvent(new CustomEvent("remarked", { detail: { id, remarks: detail } }));
    return html`<main>
      <a class="back" href="/log">Log</a>
      <header><h1 tabindex="-1" dir="auto">${title}</h1><p>${whenWords(figures)}. ${wholeWords(whole)}.</p></header>
      ${rowedFigures(done, planned, whole)}
      ${pieces.length ? html`<section><h2>By your taps</h2>${pieceList(pieces)}</section>` : nothing}
      <p class="small">${COUNTED}</p>
      <how-it-went .session=${id} .seconds_s=${done.seconds_s} @remarked=${tell}></how-it-went>
      ${this.acts(id)}
    </main>`;
  }

  private acts(id: string) {
    const forget = () => this.dispatchEvent(new CustomEvent("forget", { detail: id }));
    return html`<section aria-label="This session">
      ${this.plan === "" ? html`<p class="small">Its plan is not on this device any more.</p>` : nothing}
      <div class="acts">${this.plan ? html`<a class="button" href=${this.plan}>Open its plan</a>` : nothing}
        ${keyed(id, html`<ask-first words="Take it off this device" yes="Yes, take it off this device" @sure=${forget}></ask-first>`)}</div>
      <p role="alert">${this.trouble}</p></section>`;
  }
}
customElements.define("log-screen", LogScreen);
