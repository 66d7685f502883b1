/** When to stop rowing: one list, shown on the caution page and while rowing. Standard signs [M], our words. */
import { html } from "lit";

export const STOP_SIGNS: readonly string[] = [
  "pain or pressure in the chest, jaw, neck or arm",
  "breath that is far shorter than the work explains",
  "dizziness, faintness, confusion",
  "a heart that races, flutters or skips",
  "feeling sick with a cold sweat",
  "arms or legs that no longer do what you want",
  "back pain that is new, or that runs into a leg",
  "in heat: shivering, no more sweat, a headache",
];

export const GET_HELP =
  "Chest pain, fainting or confusion: get help at once, and call the emergency number of the place you are in.";

export function stopSigns() {
  return html`<ul class="signs">${STOP_SIGNS.map((sign) => html`<li>${sign}</li>`)}</ul>`;
}
