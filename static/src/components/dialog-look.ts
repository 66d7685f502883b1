/** How a question over the screen looks. */
import { css } from "lit";

export const dialogs = css`
  dialog {
    width: min(520px, 100vw - 24px);
    max-height: calc(100dvh - 24px);
    padding: 22px 20px 20px;
    border: 2px solid var(--edge);
    border-radius: 20px;
    background: var(--water);
    color: var(--ink);
    overflow: auto;
    overscroll-behavior: contain;
  }
  dialog[open] {
    display: grid;
    gap: 16px;
  }
  dialog::backdrop {
    background: rgb(0 0 0 / 0.72);
  }
  dialog h2 {
    font-size: 1.625rem;
  }
  .choices {
    display: grid;
    gap: 10px;
  }
`;
