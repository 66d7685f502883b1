/** What cannot be done where the app cannot be kept, in a line, and the ways out. */
import { html, nothing, type TemplateResult } from "lit";

/** `instead`: what can be done where it is said. */
export function cannotBeKeptWords(instead: TemplateResult): TemplateResult {
  if (isSecureContext) return html`This browser keeps no app for when there is no signal, and a session runs only while this page stays open. ${instead}`;
  // Where the server has a way to https for phones, its page says so.
  const { phone } = document.documentElement.dataset;
  return html`This connection is not https, so nothing can be kept here for when there is no signal, the screen may go dark, and a session
    runs only while this page stays open. ${phone ? html`<a href=${phone} target="_self">How this phone gets all of that</a>. ` : nothing}${instead}`;
}
