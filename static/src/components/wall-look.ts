/** How a wall is laid out; every size comes from wall-sizes through custom properties. */
import { css } from "lit";

export const wallLook = css`
  :host { display: block; height: 100dvh; overflow: hidden; cursor: none; }
  :host([awake]) { cursor: auto; }
  @media (max-height: 300px) { :host { overflow: hidden auto; } }
  main { display: grid; height: 100%; padding: 2vh 2.6vw; gap: 1.3vh 2.8vw; transform: translate(var(--shift-x, 0), var(--shift-y, 0)); }
  header { grid-area: head; display: flex; justify-content: space-between; align-items: baseline; gap: 1em; font-size: var(--top); line-height: 1.2; white-space: nowrap; }
  h1 { flex: 1 1 0; min-width: 0; font-size: 1em; line-height: 1.2; text-wrap: nowrap; overflow: hidden; text-overflow: ellipsis; }
  .where { flex: 0 1 auto; min-width: 0; overflow: hidden; text-overflow: ellipsis; color: var(--ink-2); }
  .heard { flex: none; max-width: 60%; white-space: normal; text-align: right; }
  .clock { flex: none; }
  .face { grid-area: face; min-width: 0; }
  .figure { font-size: var(--figure); white-space: nowrap; margin-left: -0.04em; }
  .note:not(:first-child) { margin-top: 0.35em; }
  .note:first-child { margin-bottom: 0.35em; }
  .note { font-size: var(--top); line-height: 1.2; color: var(--ink-2); }
  .pair { grid-area: pair; display: flex; align-items: flex-end; gap: calc(var(--pair) * 0.4); min-width: 0; }
  .pair .digits { display: block; font-size: var(--pair); white-space: nowrap; }
  .pair i { font-style: normal; font-size: 0.5em; color: var(--ink-2); margin-right: 0.05em; }
  .unit { display: block; margin-top: 0.4em; font-size: var(--top); line-height: 1.15; color: var(--ink-2); }
  .effort { color: var(--ink); font-weight: 700; }
  .call { grid-area: call; align-self: center; font-size: var(--call); font-weight: 700; line-height: 1.15; min-height: 1.15em; overflow: hidden;
    display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; overflow-wrap: anywhere; }
  stroke-rail { grid-area: rail; --rail: var(--rail-height); --seat: calc(var(--rail-height) * 0.86); }
  wall-lanes { grid-area: lanes; min-width: 0; }
  footer { grid-area: foot; display: grid; gap: 0.8vh; min-width: 0; }
  plan-profile { height: var(--profile); }
  .next { display: flex; justify-content: space-between; align-items: baseline; gap: 1em; font-size: var(--next); line-height: 1.2; white-space: nowrap; }
  .next b { flex: 1 1 auto; min-width: 0; overflow: hidden; text-overflow: ellipsis; }
  .next .lost { flex: none; }
  .next span { flex: none; color: var(--ink-2); font-size: 0.82em; }
  .of-lanes { width: min(760px, 100vw - 24px); cursor: auto; }
  .held .figure, .held .pair .digits { color: var(--ink-2); }

  .lanes { grid-template: "head head" auto "face lanes" auto "pair lanes" auto "call lanes" 1fr "rail lanes" auto "foot foot" auto / minmax(0, 1fr) var(--side-width); }
  .lanes wall-lanes { align-self: center; }
  .alone { grid-template: "head head" auto "face pair" 1fr "call call" auto "rail rail" auto "foot foot" auto / minmax(0, 1fr) var(--side-width); align-items: center; }
  .alone .pair { flex-direction: column; align-items: flex-start; gap: 3vh; }
  .alone .call { align-self: end; }
  .upright { grid-template: "head" auto "face" auto "pair" auto "call" 1fr "rail" auto "lanes" auto "foot" auto / minmax(0, 1fr); padding: 10px 16px; }
  .upright header { flex-wrap: wrap; gap: 0 0.8em; }
  .upright .lost + span { display: none; }
  .upright .where { order: 3; flex-basis: 100%; text-align: left; }
`;
