/** Addresses that lead other devices nowhere, since every device means itself by them; and what to do about that. */
import { css, html, nothing, type TemplateResult } from "lit";

const LOOPBACK = /^(localhost|.+\.localhost|127(\.\d+){3}|\[::1\])$/;

/** Whether an address is a loopback one (RFC 1122, 3.2.1.3; RFC 4291, 2.5.3; RFC 6761, 6.3). */
export function isHereOnly(address: string): boolean {
  return LOOPBACK.test(new URL(address).hostname.replace(/\.$/, ""));
}

export const hereOnlyLook = css`
  .here-only { padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--catch); border-radius: 6px var(--r) var(--r) 6px; overflow-wrap: anywhere; }
`;

/** `what`: the links that it is said of. `instead`: what else can be done where it is said. */
export function hereOnlyWords(what: string, instead: TemplateResult | typeof nothing = nothing): TemplateResult {
  const { phone } = document.documentElement.dataset;
  return html`<p class="here-only" role="note">To every device ${location.hostname} is itself, so ${what} on this one alone. For others in the room,
    ${phone ? html`open Slipway at the address that <a href=${phone} target="_self">the page for phones</a> names, and share from there`
      : html`run <b>make phone</b> on the computer (README.md says how) and share from the address that it prints`}. ${instead}</p>`;
}
