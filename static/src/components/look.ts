/** What every screen shares: type, buttons, fields and focus. Colours and sizes are tokens of the page. */
import { css } from "lit";

export const type = css`
  :host {
    display: block;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  *,
  ::before,
  ::after {
    box-sizing: border-box;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  dd,
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
  }
  ul,
  ol {
    list-style: none;
  }
  h1 {
    font-size: clamp(1.875rem, 8.6vw, 2.75rem);
    line-height: 1.1;
    text-wrap: balance;
  }
  h2 {
    font-size: 1.3125rem;
    line-height: 1.25;
  }
  .small {
    color: var(--ink-2);
    font-size: 1rem;
  }
  .digits {
    font-family: var(--digits);
    font-weight: 700;
    letter-spacing: -0.04em;
    font-variant-numeric: tabular-nums;
    line-height: 0.82;
  }
  .heard-only {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  a {
    color: inherit;
  }
  :focus-visible {
    outline: 3px solid var(--ink);
    outline-offset: 3px;
  }
  h1[tabindex]:focus-visible {
    outline: none;
  }
  @media (forced-colors: active) {
    /* the plate that this mode puts behind text would cut into digits set this close */
    .digits, .digits * { forced-color-adjust: none; color: CanvasText !important; }
  }
  ::selection {
    background: var(--catch);
    color: var(--on-catch);
  }
`;

export const buttons = css`
  button,
  .button {
    display: inline-grid;
    place-items: center;
    min-height: var(--target);
    min-width: var(--target);
    padding: 8px 20px;
    border: 1px solid var(--edge);
    border-radius: var(--r);
    background: var(--hull);
    color: var(--ink);
    font: 700 1.25rem/1.15 var(--font);
    text-align: center;
    text-decoration: none;
    cursor: pointer;
    touch-action: manipulation;
    -webkit-tap-highlight-color: transparent;
  }
  button:hover,
  .button:hover {
    border-color: var(--ink);
  }
  button:active,
  .button:active {
    background: var(--line);
  }
  button:disabled {
    color: var(--ink-2);
    border-style: dashed;
    cursor: default;
  }
  .go {
    border-color: transparent;
    background: var(--catch);
    color: var(--on-catch);
  }
  .go:active {
    background: var(--catch);
    filter: brightness(0.92);
  }
  .quiet {
    border-color: transparent;
    background: transparent;
    text-decoration: underline;
    text-underline-offset: 4px;
    text-decoration-thickness: 2px;
  }
  @media (forced-colors: active) {
    button,
    .button {
      border-color: ButtonText;
    }
    .go {
      border: 3px solid Highlight;
    }
  }
`;

export const fields = css`
  label,
  legend {
    font-weight: 700;
  }
  input,
  textarea {
    width: 100%;
    min-height: var(--target);
    padding: 12px 14px;
    border: 2px solid var(--edge);
    border-radius: var(--r);
    background: var(--hull);
    color: var(--ink);
    font: 400 1.25rem/1.4 var(--font);
  }
  input {
    font-family: var(--digits);
    font-weight: 700;
    letter-spacing: -0.03em;
  }
  ::placeholder {
    color: var(--ink-2);
    font: 400 1.125rem/1.4 var(--font);
    letter-spacing: 0;
    opacity: 1;
  }
`;

/** A reading screen: one column, wide enough to read and no wider, with room for a bar at the foot. */
export const page = css`
  main {
    display: grid;
    gap: 24px;
    width: min(100%, 720px);
    margin: 0 auto;
    padding: max(18px, env(safe-area-inset-top)) var(--side) calc(var(--foot) + 18px);
  }
  .bar {
    position: sticky;
    bottom: 0;
    display: grid;
    gap: 10px;
    margin: 0 calc(var(--side) * -1);
    padding: 12px var(--side) var(--foot);
    background: var(--water);
    border-top: 1px solid var(--line);
  }
  /* zoomed in so far that it would hide what it is for */
  @media (max-height: 300px) {
    .bar { position: static; }
  }
`;
