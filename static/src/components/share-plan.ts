/** A plan made into links: a short one from the server, one that carries the plan, and a code of either.
 *
 * Property `plan`. Opens by itself; nothing is sent before a button asks for the short one. Event `closed`.
 */
import { LitElement, css, html, nothing } from "lit";
import { NoAnswer } from "../data/api.js";
import { carryingAddress, needsKey, shortAddress } from "../data/links.js";
import type { Plan } from "../plan/wire.js";
import { dialogs } from "./dialog-look.js";
import { hereOnlyLook, hereOnlyWords, isHereOnly } from "./here-only.js";
import { buttons, fields, type } from "./look.js";
import { fitsCode, pngOf, svgOf } from "./qr-code.js";
import { saveFile } from "./save-file.js";
import "./share-link.js";

const NO_SIGNAL = "There is no signal, or the server is away, so there is no short link just now.";

export class SharePlan extends LitElement {
  static override properties = { plan: { attribute: false }, short: { state: true }, trouble: { state: true }, making: { state: true }, asksKey: { state: true }, carrying: { state: true } };
  declare plan: Plan;
  /** The short address; "" until it is known. */
  declare short: string;
  /** Why there is no short address. */
  declare trouble: string;
  declare making: boolean;
  declare asksKey: boolean;
  /** The address that carries the plan, if the plan is not too long for one. */
  declare carrying: string | undefined;

  constructor() {
    super();
    this.short = "";
    this.trouble = "";
    this.making = false;
    this.asksKey = false;
  }

  static override styles = [type, buttons, fields, dialogs, hereOnlyLook, css`
    form, section { display: grid; gap: 8px; }
    section + section { padding-top: 18px; border-top: 1px solid var(--line); }
    header { display: flex; gap: 12px; align-items: center; justify-content: space-between; }
    header button { min-height: 48px; font-size: 1.125rem; }
    .pictures { display: flex; flex-wrap: wrap; gap: 8px; }
    .pictures button { min-height: 48px; padding: 6px 16px; font-size: 1.125rem; }
    p:empty { display: none; }
    .make { justify-self: start; min-height: 48px; }
    qr-code { max-width: min(460px, 100dvh - 90px); }
  `];

  override firstUpdated(): void {
    this.carrying = carryingAddress(this.plan);
    this.renderRoot.querySelector("dialog")!.showModal();
  }

  override render() {
    return html`<dialog aria-labelledby="share" @close=${() => this.dispatchEvent(new CustomEvent("closed"))}>
      <header><h2 id="share" tabindex="-1" autofocus>Share this plan</h2>
        <button type="button" @click=${() => this.renderRoot.querySelector("dialog")!.close()}>Close</button></header>
      ${isHereOnly(location.href) ? hereOnlyWords("links and codes with it open", html`The plan file and the one-file page, under Download, can be sent anywhere.`) : nothing}
      <section aria-labelledby="short"><h3 id="short">Short link</h3>${this.shortPart()}</section>
      <section aria-labelledby="carrying"><h3 id="carrying">Link that carries the plan</h3>${this.carryingPart()}</section>
      <section aria-labelledby="code"><h3 id="code">Code to scan</h3>${this.codePart()}</section>
    </dialog>`;
  }

  private shortPart() {
    if (this.asksKey) return this.keyForm();
    if (!this.short && !this.making) {
      return html`<p class="small">This sends the plan to the server, which keeps it: ${isHereOnly(location.href) ? "the link opens it there" : "anybody who has the link can open it there"}.</p>
        <p role="status">${this.trouble}</p><button type="button" class="make" @click=${() => this.shorten()}>Make the short link</button>`;
    }
    return html`<p class="small">${isHereOnly(this.short || location.href) ? "It opens" : "Anybody who has it can open it,"} for as long as this server keeps it; what it shows never changes.</p>
      <share-link label="Short link" .address=${this.short} .title=${this.plan.title}></share-link>`;
  }

  private keyForm() {
    return html`<form @submit=${this.giveKey}><p role="status">${this.trouble}</p>
      <label for="key">Key of this server</label><input id="key" autocomplete="off" autocapitalize="off" spellcheck="false" required />
      <button type="submit">Make the short link</button></form>`;
  }

  private carryingPart() {
    if (this.carrying === undefined) return html`<p>This plan is too long for a link that carries it. Send the short link, or its plan file.</p>`;
    return html`<p class="small">${isHereOnly(location.href) ? "It opens where Slipway runs or is saved at this address" : "It needs no server where Slipway is saved"}, and nothing about it is stored anywhere. ${this.carrying.length} characters.</p>
      <share-link label="Link that carries the plan" .address=${this.carrying} .title=${this.plan.title}></share-link>`;
  }

  private codePart() {
    const { carrying, short } = this;
    if (carrying !== undefined && fitsCode(carrying)) {
      return html`<p class="small">This code carries the whole plan.</p><qr-code .text=${carrying} label="Code that carries the whole plan"></qr-code>${this.pictures(carrying)}`;
    }
    if (!short) return html`<p>The plan is too long for a code of its own. Once there is a short link, its code stands here.</p>`;
    return html`<p class="small">The plan is too long for a code of its own: this is the code of the short link, which needs signal.</p>
      <qr-code .text=${short} label="Code of the short link"></qr-code>${this.pictures(short)}`;
  }

  /** For paper and slides. */
  private pictures(address: string) {
    return html`<div class="pictures"><button type="button" @click=${() => saveFile("plan-code.svg", svgOf(address))}>Save it as SVG</button>
      <button type="button" @click=${async () => saveFile("plan-code.png", await pngOf(address))}>Save it as PNG</button></div>`;
  }

  private async shorten(key?: string): Promise<void> {
    this.making = true;
    try {
      this.short = await shortAddress(this.plan, key);
      [this.trouble, this.asksKey] = ["", false];
    } catch (error) {
      this.asksKey = needsKey(error);
      this.trouble = error instanceof NoAnswer ? NO_SIGNAL : error instanceof Error ? error.message : String(error);
    } finally {
      this.making = false;
    }
  }

  private giveKey(event: Event): void {
    event.preventDefault();
    void this.shorten(this.renderRoot.querySelector<HTMLInputElement>("#key")!.value.trim());
  }
}
customElements.define("share-plan", SharePlan);
