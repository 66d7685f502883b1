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

  .large .keys { grid-template: "hold hold hold" auto "back skip minute" auto / 1fr 1fr 1fr; }
  .large .keys button { min-height: 96px; font-size: 1.5rem; }
  .large .back { grid-area: back; }
  .large .hold { grid-area: hold; }
  .large .skip { grid-area: skip; }
  .large .minute { grid-area: minute; }
  .large .done button { min-height: 84px; }
  .large .tools span { min-height: 52px; font-size: 18px; line-height: 1.1; }

  /* End stands under More, too */
  @container (max-width: 374px) {
    .end { display: none; }
  }

  @container (max-width: 480px) {
    .tools span { padding: 4px 7px; }
    .large .tools button { width: min-content; }
    .where .word { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  }

  @container (orientation: portrait) and (max-height: 900px) {
    .large .foot, .large drill-picture[known] { display: none; }
    .large .done button { min-height: 72px; }
    .large:has(.done) .keys button { min-height: 84px; }
  }
  @container (orientation: portrait) and (max-height: 980px) {
    .large plan-profile { display: none; }
  }
  @container (orientation: portrait) and (max-height: 830px) {
    .large .next { display: none; }
  }
  @container (orientation: portrait) and (max-height: 1100px) {
    .large .call { font-size: 22px; }
    .large .unit { margin-top: 6px; }
    .large .big, .large .big.short { font-size: min(33.8cqw, 15cqh); }
    .large .big.five { font-size: min(31cqw, 15cqh); }
    .large .big.six { font-size: min(26cqw, 15cqh); }
    .large .big.seven { font-size: min(22cqw, 15cqh); }
    .large .mid { font-size: min(28.2cqw, 13cqh); }
    .large .mid.c4 { font-size: min(20cqw, 13cqh); }
    .large .mid.c5 { font-size: min(16.5cqw, 13cqh); }
    .large .mid.c7 { font-size: min(11.5cqw, 13cqh); }
    .large:has(.done) .keys { grid-template: "back hold skip minute" auto / 1fr 1.7fr 1fr 1fr; }
    .large:has(.done) .keys button { font-size: 1.125rem; }
  }
  @container (orientation: portrait) and (max-height: 700px) {
    .large .want, .large stroke-ticks { display: none; }
    .large .call { font-size: 19px; }
    .large:has(.done) button { min-height: 72px; }
  }

  @container (max-width: 340px) {
    .want { gap: 8px; padding: 2px 8px; font-size: 15px; }
    .want b { font-size: 20px; }
  }

  @container (max-height: 700px) and (orientation: portrait) {
    .big.six { font-size: min(26cqw, 16.5cqh); }
    .big.short { font-size: min(44cqw, 16.5cqh); }
  }

  @container (orientation: landscape) and (max-height: 540px) and (min-width: 560px) {
    .big.six, .screen .noted .big.six { font-size: min(40cqh, 12.5cqw); }
    .big.short { font-size: min(36cqh, 20cqw); }
    .mid.c4 { font-size: min(20cqh, 8cqw); }
    .mid.c5 { font-size: min(16cqh, 7.4cqw); }
    .mid.c7 { font-size: min(12cqh, 5.2cqw); }
    .left-hand .where { text-align: left; }
    .large .done button { min-height: 60px; }
    .screen.large:has(.done) .noted .big { font-size: min(20cqh, 16cqw); }
    .large:has(.done) .mid { font-size: min(22cqh, 12cqw); }
    .large .side { display: none; }
    .large .call { align-self: start; }
    .large .keys { grid-template: "back hold" 1fr "skip minute" 1fr / 1fr 1fr; }
    .screen.large { grid-template-columns: auto auto minmax(96px, 1fr) 210px 80px; }
    .large .big, .large .big.short { font-size: min(34cqh, 17cqw); }
    .large .big.five { font-size: min(34cqh, 15cqw); }
    .large .big.six { font-size: min(30cqh, 11cqw); }
    .large .big.seven { font-size: min(30cqh, 10cqw); }
    .screen.left-hand.large { grid-template-columns: 80px 210px auto auto minmax(96px, 1fr); }
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

  @container (orientation: portrait) and (max-height: 600px) {
    .large .tools span { min-height: 44px; font-size: 16px; }
    .large:not(:has(.done)) .keys button { min-height: 80px; }
    .large stroke-rail { --rail: 54px; --seat: 34px; }
  }

  @container (orientation: landscape) and (max-height: 400px) and (min-width: 560px) {
    .call.long { font-size: 16px; }
    .side { font-size: 15px; line-height: 1.1; }
    .want b { font-size: 18px; }
  }

  @container (orientation: landscape) and (max-height: 540px) and (min-width: 560px) and (max-width: 740px) {
    .screen.large { grid-template-columns: auto auto minmax(80px, 1fr) 176px 60px; gap: 2px 6px; }
    .screen.left-hand.large { grid-template-columns: 60px 176px auto auto minmax(80px, 1fr); }
    .large .big, .large .big.short { font-size: min(30cqh, 14cqw); }
    .large .big.five { font-size: min(30cqh, 12cqw); }
    .large .big.six, .screen.large .noted .big.six { font-size: min(30cqh, 9cqw); }
    .large .big.seven { font-size: min(30cqh, 8cqw); }
    .large .mid { font-size: min(22cqh, 10cqw); }
    .large .mid.c4 { font-size: min(16cqh, 6cqw); }
    .large .mid.c5 { font-size: min(16cqh, 5cqw); }
    .large .rate, .large .strokes { padding-right: 8px; }
    .large .call { font-size: 17px; line-height: 1.1; }
    .large .call.long { font-size: 14px; }
    .large .tools button { font-size: 14px; }
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
    .large .keys { grid-template: "back hold" auto "skip minute" auto / 1fr 1fr; }
    .large .keys button { min-height: 96px; }
    .large .side { gap: 8px; }
    .large .side .want b { font-size: 28px; }
    .large .big, .large .big.five, .large .big.short { font-size: min(20cqw, 25cqh); }
    .large .noted .big { font-size: min(18cqw, 20cqh); }
    .large .side .want { padding: 8px 20px; font-size: 20px; }
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
