/** One of several: real radio buttons that look like tiles, and lists to pick from. */
import { css, html, type TemplateResult } from "lit";

export interface Option<Value> {
  value: Value;
  name: string;
}

export const ON_OR_OFF: readonly Option<boolean>[] = [{ value: true, name: "On" }, { value: false, name: "Off" }];

export const choices = css`
  fieldset { min-width: 0; }
  legend { padding: 0 0 8px; }
  .tiles { display: grid; grid-template-columns: repeat(auto-fill, minmax(6.2em, 1fr)); gap: 8px; }
  .tiles label { position: relative; display: grid; }
  .tiles input { position: absolute; inset: 0; width: 100%; height: 100%; min-height: 0; margin: 0; padding: 0; appearance: none; border: 0;
    background: none; border-radius: var(--r); cursor: pointer; }
  .tiles span { display: grid; place-items: center; min-height: 48px; padding: 6px; border: 2px solid var(--edge); border-radius: var(--r);
    background: var(--hull); text-align: center; line-height: 1.15; font-weight: 700; }
  .tiles input:checked + span { border-color: var(--catch); box-shadow: inset 0 0 0 2px var(--catch); }
  @media (hover: hover) { .tiles input:hover + span { border-color: var(--ink); } .tiles input:checked:hover + span { border-color: var(--catch); } }
  select { width: 100%; min-height: 56px; padding: 8px 12px; border: 2px solid var(--edge); border-radius: var(--r); background: var(--hull);
    color: var(--ink); font: 700 1.125rem/1.2 var(--font); }
  .picks { display: grid; grid-template-columns: repeat(auto-fit, minmax(8.4em, 1fr)); gap: 12px 8px; }
  .picks > div { display: grid; gap: 6px; align-content: start; min-width: 0; }
  @media (forced-colors: active) { .tiles input:checked + span { outline: 4px solid Highlight; outline-offset: -4px; } }
`;

/** Tiles of which one is chosen; `name` groups them. */
export function tiles<Value>(name: string, options: readonly Option<Value>[], chosen: Value | undefined, choose: (value: Value) => void): TemplateResult {
  return html`<div class="tiles">${options.map((option) => html`<label>
    <input type="radio" name=${name} .checked=${option.value === chosen} @change=${() => choose(option.value)} /><span>${option.name}</span></label>`)}</div>`;
}

/** A list to pick from, with its label. */
export function pick<Value extends string | number>(id: string, label: string, options: readonly Option<Value>[], chosen: Value, choose: (value: Value) => void): TemplateResult {
  const picked = (event: Event) => choose(options[(event.target as HTMLSelectElement).selectedIndex]!.value);
  return html`<div><label for=${id}>${label}</label><select id=${id} @change=${picked}>
    ${options.map((option) => html`<option .selected=${option.value === chosen}>${option.name}</option>`)}</select></div>`;
}
