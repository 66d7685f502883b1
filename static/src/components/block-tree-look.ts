/** How a plan's blocks look while they are built with. */
import { css } from "lit";

export const treeLook = css`
  :host { display: grid; gap: 22px; }
  section { display: grid; gap: 10px; min-width: 0; }
  h2 { display: flex; justify-content: space-between; align-items: baseline; gap: 12px; border-bottom: 2px solid var(--edge); padding-bottom: 6px; font-size: 1.25rem; }
  h2 span { font-weight: 400; }
  ol { display: grid; gap: 8px; }
  li { display: grid; gap: 8px; min-width: 0; }
  .row { position: relative; display: grid; grid-template-columns: minmax(0, 1fr) 60px; }
  /* below the picture, which stays in sight */
  .row { scroll-margin-block-start: 12px; }
  @media (min-height: 640px) { .row { scroll-margin-block-start: 128px; } }
  @media (min-height: 640px) and (min-width: 1000px) { .row { scroll-margin-block-start: 164px; } }
  .row.before::before, .row.after::after { content: ""; position: absolute; inset: auto 0; height: 4px; background: var(--catch); border-radius: 2px; }
  .row.before::before { top: -6px; }
  .row.after::after { bottom: -6px; }
  .lifted { opacity: 0.5; }
  .words { justify-items: start; gap: 2px; padding: 10px 14px; border-radius: var(--r) 0 0 var(--r); text-align: left; font-size: 1.125rem; font-weight: 400; overflow-wrap: anywhere; }
  .words[aria-expanded="true"] { border-color: var(--catch); box-shadow: inset 0 0 0 2px var(--catch); }
  .words b { font-family: var(--digits); letter-spacing: -0.02em; }
  .handle { display: grid; place-items: center; border: 1px solid var(--edge); border-left: 0; border-radius: 0 var(--r) var(--r) 0; background: var(--hull); cursor: grab; touch-action: none; user-select: none; -webkit-user-select: none; }
  .handle svg { width: 24px; fill: none; stroke: var(--ink-2); stroke-width: 2; pointer-events: none; }
  .open { display: grid; gap: 16px; padding: 14px; border: 2px solid var(--edge); border-radius: var(--r); }
  .inside { display: grid; gap: 8px; padding-left: 10px; border-left: 4px solid var(--edge); min-width: 0; }
  .acts { display: flex; flex-wrap: wrap; gap: 8px; }
  .acts button { font-size: 1.0625rem; padding: 8px 14px; }
  .told { min-height: 1.4em; color: var(--ink-2); font-size: 1rem; margin-block: -14px; }
`;
