/** How the row screen looks by choice: another figure largest, buttons for the left hand. */
import { css } from "lit";

export const rowLookChosen = css`
  .big i { font-style: normal; font-size: 0.42em; color: var(--ink-2); margin-right: 0.04em; }
  .big.six { font-size: min(26cqw, 19cqh); }
  .mid.c4 { font-size: min(20cqw, 17cqh); }
  .mid.c5 { font-size: min(16.5cqw, 17cqh); }
  .mid.c7 { font-size: min(11.5cqw, 17cqh); }
  .big.short { font-size: min(44cqw, 19cqh); }
  .left-hand .head { flex-direction: row-reverse; }
  .left-hand .where { text-align: right; }
  .left-hand .done { grid-template-columns: 1.6fr 1fr 1fr; }
  .left-hand .done .go { order: -1; }

  /* End stands under More, too */
  @container (max-width: 374px) and (orientation: portrait) {
    .end { display: none; }
  }

  @container (max-width: 480px) {
    .tools span { padding: 4px 7px; }
    .where .word { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  }

  @container (max-width: 340px) {
    .want { gap: 8px; padding: 2px 8px; font-size: 15px; }
    .want b { font-size: 20px; }
  }

  @container (max-height: 700px) and (orientation: portrait) {
    .big.six { font-size: min(26cqw, 17.5cqh); }
    .big.short { font-size: min(44cqw, 17.5cqh); }
  }

  @container (orientation: landscape) and (max-height: 540px) and (min-width: 560px) {
    .big.six, .screen .noted .big.six { font-size: min(40cqh, 12.5cqw); }
    .big.short { font-size: min(36cqh, 20cqw); }
    .mid.c4 { font-size: min(20cqh, 8cqw); }
    .mid.c5 { font-size: min(16cqh, 7.4cqw); }
    .mid.c7 { font-size: min(12cqh, 5.2cqw); }
    .left-hand .where { text-align: left; }
    .screen.left-hand {
      grid-template:
        "tools keys time time where" auto
        "tools keys time time call" 1fr
        "tools keys rate strokes side" auto
        "tools keys rail rail rail" auto
        "tools keys ticks ticks ticks" auto
        "tools keys profile profile profile" auto
        / 80px 80px auto auto minmax(120px, 1fr);
    }
  }

  @container (orientation: landscape) and (max-height: 350px) and (min-width: 560px) {
    .big.six, .screen .noted .big.six { font-size: min(32cqh, 11cqw); }
    .big.short { font-size: min(24cqh, 17cqw); }
    .screen.left-hand { grid-template-columns: 68px 68px auto auto minmax(96px, 1fr); }
  }

  @container (min-width: 840px) and (min-height: 541px) and (orientation: landscape) {
    .big.six { font-size: min(17.5cqw, 33cqh); }
    .big.short { font-size: min(20cqw, 27cqh); }
    .mid.c4 { font-size: min(10cqw, 17cqh); }
    .mid.c5 { font-size: min(8.4cqw, 17cqh); }
    .mid.c7 { font-size: min(6cqw, 17cqh); }
    .left-hand .where { text-align: left; }
    .screen.left-hand {
      grid-template:
        "head head head" auto
        "side call call" auto
        "side time time" 1fr
        "done time time" auto
        "keys rate strokes" auto
        "rail rail rail" auto
        "ticks ticks ticks" auto
        "profile profile profile" auto
        "foot foot foot" auto
        / minmax(260px, 32%) auto auto;
    }
  }
`;
