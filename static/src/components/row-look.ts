/** How the row screen is laid out: phone upright, phone on its side (the garage layout), tablet and desktop.
 *
 * Digits follow the screen: 110 px type on a 390 px wide phone gives capitals of 12.8 mm, 22 arcmin at 2 m.
 */
import { css } from "lit";

export const rowLook = css`
  :host {
    container-type: size;
    height: 100dvh;
    overflow: hidden;
  }
  .screen {
    display: flex;
    flex-direction: column;
    gap: clamp(6px, 1.2cqh, 12px);
    height: 100%;
    padding: max(8px, env(safe-area-inset-top)) var(--side) max(10px, env(safe-area-inset-bottom));
    overflow: auto;
    overscroll-behavior: contain;
  }
  .head { display: flex; justify-content: space-between; align-items: center; gap: 8px; }
  .where { font-size: 16px; line-height: 1.25; color: var(--ink-2); min-width: 0; }
  .where b { display: block; color: var(--ink); }
  .where .block { display: none; }
  .tools { --between: 3px; display: flex; flex: none; margin: 0 calc(-1 * var(--between)); }
  .tools button { padding: 0 var(--between); border: 0; background: transparent; font-size: 16px; }
  .tools span { display: grid; place-items: center; width: 100%; min-height: 42px; padding: 4px 9px; border: 1px solid var(--edge); border-radius: 12px; background: var(--hull); }
  .call { flex: none; display: flex; align-items: center; min-height: 1.2em; font-size: clamp(22px, 6.6cqw, 28px); font-weight: 700; line-height: 1.12; overflow-wrap: anywhere; }
  .face { flex: 1 0 auto; display: grid; grid-template-columns: auto auto; align-content: center; align-items: start; justify-content: space-between; gap: clamp(8px, 2cqh, 18px) 8px; }
  .time { grid-column: 1 / -1; }
  .big { font-size: min(33.8cqw, 19cqh); margin-left: -0.04em; white-space: nowrap; }
  .big.five { font-size: min(31cqw, 19cqh); }
  .big.seven { font-size: min(22cqw, 19cqh); }
  .mid { font-size: min(28.2cqw, 17cqh); white-space: nowrap; }
  .mid i { font-style: normal; font-size: 0.42em; color: var(--ink-2); margin-right: 0.04em; }
  .tight .mid { letter-spacing: -0.065em; }
  .tight .mid i { font-size: 0.34em; }
  .strokes { text-align: right; }
  .unit { display: block; margin-top: 10px; font-size: 17px; line-height: 1.2; color: var(--ink-2); }
  .want, .next { flex: none; }
  .want { display: flex; justify-content: space-between; align-items: center; gap: 10px; min-height: 52px; padding: 8px 14px; border-radius: var(--r); background: var(--hull); font-size: 18px; line-height: 1.2; }
  .want b { font-size: 23px; }
  @media (min-width: 380px) { .want > b { flex-shrink: 0; max-width: 60%; } }
  .want > span:nth-child(2) { white-space: nowrap; }
  .chip { flex: none; width: 14px; height: 30px; border-radius: 4px; border: 1px solid var(--edge); background: var(--gap); }
  .chip.d1 { background: var(--p-light); }
  .chip.d2 { background: var(--p-half); }
  .chip.d3 { background: var(--p-three-quarter); }
  .chip.d4 { background: var(--p-full); }
  .chip.d5 { background: var(--p-race); }
  .want .talk { margin-left: auto; text-align: right; }
  plan-profile { flex: 0 1 80px; min-height: 26px; height: auto; }
  stroke-ticks[hidden] { display: none; }
  .next { display: flex; justify-content: space-between; align-items: baseline; gap: 12px; font-size: 19px; line-height: 1.2; }
  .next b { text-align: right; }
  .next > span { color: var(--ink-2); }
  .done { display: grid; grid-template-columns: 1fr 1fr 1.6fr; gap: 10px; }
  .done button { font-size: 17px; padding: 6px; }
  .done .go { font-size: 24px; }
  .done .go.long { font-size: 19px; line-height: 1.1; }
  .keys { position: sticky; bottom: 0; display: grid; grid-template-columns: 1fr 1.7fr 1fr 1fr; gap: clamp(4px, 2cqw, 10px); background: var(--water); }
  .keys button { padding: 4px; }
  .minute { font-size: 1.125rem; }
  .call.long { font-size: clamp(19px, 5.2cqw, 24px); }
  .call.lost { justify-content: center; width: 100%; min-height: var(--target); }
  stroke-rail, stroke-ticks { flex: none; }
  .foot { display: flex; justify-content: space-between; gap: 12px; flex-wrap: wrap; }
  .help { display: none; }
  .held .big, .held .mid { color: var(--ink-2); }
  .count { flex: 1 1 auto; display: grid; place-content: center; gap: 18px; text-align: center; }
  .count .digits { font-size: min(60cqw, 46cqh); }
  .count p { font-size: 24px; font-weight: 700; }
  .side { display: contents; }
  /* only their dialogs are seen, and no room is kept for them */
  stop-signs, end-question, more-choices, stroke-check { position: absolute; }
  drill-picture { display: none; }

  /* a call or a message of two lines moves nothing */
  @container (orientation: portrait) {
    .call { min-height: 2.24em; }
  }
  @container (max-height: 900px) and (orientation: portrait) {
    .screen:has(.done) plan-profile { display: none; }
    .screen:has(.done) .unit { margin-top: 4px; }
  }

  /* zoomed in so far that held buttons would cover what they are for */
  @container (max-height: 460px) {
    .keys { position: static; }
  }

  /* upright, and tall enough for the drawing of a drill beside all the rest */
  @container (min-height: 840px) and (orientation: portrait) {
    drill-picture[known] { display: block; flex: 0 0 auto; height: clamp(80px, 10cqh, 200px); }
  }
  @container (min-height: 840px) and (max-height: 900px) and (orientation: portrait) {
    .screen:has(drill-picture[known]) plan-profile { display: none; }
  }

  /* upright, with the browser's own bars taking room */
  @container (max-height: 700px) and (orientation: portrait) {
    .foot, plan-profile { display: none; }
    .want { min-height: 40px; padding: 2px 12px; }
    .call { font-size: 20px; }
    .unit, .noted .unit { margin-top: 4px; }
    .big { font-size: min(33.8cqw, 15.5cqh); }
    stroke-rail { --rail: 58px; --seat: 38px; }
    stroke-ticks { height: 14px; }
    .done ~ stroke-ticks, .screen:has(.done) .next { display: none; }
    .screen:has(.done) .big { font-size: min(33.8cqw, 14cqh); }
    .screen:has(.done) .mid { font-size: min(28cqw, 11cqh); }
  }

  /* the smallest phones: Done, the rail and the three keys come before everything else */
  @container (max-height: 600px) and (orientation: portrait) {
    .screen { gap: 6px; }
    .call { font-size: 19px; }
    .big { font-size: min(30cqw, 14cqh); }
    .mid { font-size: min(26cqw, 12cqh); }
    .unit { font-size: 14px; }
    .next { font-size: 17px; }
    .screen:has(.done) { gap: 4px; }
    .screen:has(.done) .next { display: none; }
    .screen:has(.done) .want { min-height: 36px; padding: 0 12px; font-size: 16px; }
    .screen:has(.done) .face { flex: 0 1 auto; gap: 4px 8px; }
    .screen:has(.done) .big { font-size: min(28cqw, 13cqh); }
    .screen:has(.done) .mid { font-size: min(24cqw, 11cqh); }
    .screen:has(.done) .unit { margin-top: 2px; font-size: 15px; }
    .done button { min-height: 52px; font-size: 15px; }
    .tools { --between: 1px; }
    .tools span { padding: 4px 6px; }
  }
`;

/** The garage layout: a phone on its side. Buttons stand at the right, digits take the rest. */
export const rowLookOnItsSide = css`
  @container (orientation: landscape) and (max-height: 540px) and (min-width: 560px) {
    .screen {
      display: grid;
      grid-template:
        "time time where keys tools" auto
        "time time call keys tools" 1fr
        "rate strokes side keys tools" auto
        "rail rail rail keys tools" auto
        "ticks ticks ticks keys tools" auto
        "profile profile profile keys tools" auto
        / auto auto minmax(120px, 1fr) 80px 80px;
      gap: 3px 10px;
      padding-block: 6px;
      align-items: center;
    }
    .head, .face { display: contents; }
    .foot { display: none; }
    .where { grid-area: where; align-self: start; font-size: 15px; }
    .time { grid-area: time; }
    .big { font-size: min(40cqh, 20cqw); }
    .big.five { font-size: min(40cqh, 18cqw); }
    .big.seven { font-size: min(40cqh, 13cqw); }
    .noted .big { font-size: min(36cqh, 18cqw); }
    .noted .unit { max-width: none; margin-top: 4px; }
    .rate { grid-area: rate; align-self: start; padding-right: 24px; }
    .strokes { grid-area: strokes; align-self: start; padding-right: 20px; text-align: left; }
    .mid { font-size: min(28cqh, 15cqw); }
    .unit { margin-top: 6px; font-size: 16px; max-width: 11em; }
    .call { grid-area: call; min-height: 0; align-self: center; font-size: 22px; }
    .call.long { font-size: 18px; }
    .side { grid-area: side; display: grid; gap: 2px; align-self: end; min-width: 0; font-size: 17px; line-height: 1.2; }
    .want { display: flex; flex-wrap: wrap; justify-content: start; gap: 0 8px; min-height: 0; padding: 0; background: none; font-size: inherit; }
    .want b { font-size: 20px; }
    .want .talk { margin: 0; text-align: left; }
    .chip { width: 10px; height: 20px; }
    .next { display: block; font-size: inherit; }
    stroke-rail { grid-area: rail; --rail: 54px; --seat: 34px; }
    stroke-ticks { grid-area: ticks; height: 14px; }
    plan-profile { grid-area: profile; height: 24px; }
    .keys, .tools { display: grid; grid-template-columns: 1fr; grid-auto-rows: 1fr; gap: 8px; height: 100%; align-self: stretch; }
    .keys { grid-area: keys; }
    .tools { grid-area: tools; margin: 0; }
    .tools button, .tools span { width: 100%; height: 100%; }
    .keys button, .tools button { min-width: 0; padding: 0; }
    .done { grid-area: ticks; }
    .done button { min-height: 52px; font-size: 17px; }
    .screen:has(.done) stroke-ticks, .screen:has(.done) plan-profile { display: none; }
    .screen:has(.done) .noted .big { font-size: min(27cqh, 20cqw); }
  }
  @container (orientation: landscape) and (max-height: 345px) and (min-width: 560px) {
    .screen:has(.done) .next { display: none; }
    .screen:has(.done) .call, .screen:has(.done) .call.long { font-size: 15px; line-height: 1.15; }
    .screen:has(.done) .want b { font-size: 17px; }
  }

  /* the smallest phones on their side */
  @container (orientation: landscape) and (max-height: 350px) and (min-width: 560px) {
    .screen { grid-template-columns: auto auto minmax(96px, 1fr) 68px 68px; gap: 2px 8px; padding-block: 4px; }
    .big, .big.five { font-size: min(32cqh, 17cqw); }
    .big.seven { font-size: min(32cqh, 12cqw); }
    .noted .big, .screen:has(.done) .noted .big { font-size: min(24cqh, 17cqw); }
    .noted .unit { margin-top: 0; }
    .mid { font-size: min(22cqh, 12cqw); }
    .unit { margin-top: 2px; font-size: 14px; }
    .rate, .strokes { padding-right: 10px; }
    .call { font-size: 18px; }
    .call.long { font-size: 15px; line-height: 1.1; }
    .side { font-size: 15px; line-height: 1.1; }
    .want b { font-size: 17px; }
    stroke-rail { --rail: 40px; --seat: 26px; }
    stroke-ticks { height: 10px; }
    plan-profile { display: none; }
    .keys button, .tools button { font-size: 15px; }
    .keys, .tools { gap: 5px; }
  }
`;

/** Tablet on its side and desktop: what to hold and what comes next stand beside the digits. */
export const rowLookWide = css`
  @container (min-width: 840px) and (min-height: 541px) and (orientation: landscape) {
    .screen {
      display: grid;
      grid-template:
        "head head head" auto
        "call call side" auto
        "time time side" 1fr
        "time time done" auto
        "rate strokes keys" auto
        "rail rail rail" auto
        "ticks ticks ticks" auto
        "profile profile profile" auto
        "foot foot foot" auto
        / auto auto minmax(260px, 32%);
      gap: clamp(6px, 1.4cqh, 14px) 40px;
      padding: 12px max(34px, var(--side)) 12px;
    }
    .face { display: contents; }
    .head { grid-area: head; }
    .where { font-size: 20px; }
    .where b, .where .block { display: inline; }
    .where span + span::before { content: "· "; }
    .call { grid-area: call; font-size: 36px; }
    .call.long { font-size: 28px; }
    .time { grid-area: time; align-self: center; }
    .big, .big.five { font-size: min(22cqw, 33cqh); }
    .big.seven { font-size: min(15cqw, 33cqh); }
    .rate { grid-area: rate; }
    .strokes { grid-area: strokes; text-align: left; }
    .mid { font-size: min(13cqw, 17cqh); }
    .unit { font-size: 20px; }
    .side { grid-area: side; display: grid; align-content: center; gap: 20px; }
    .want { display: grid; grid-template-columns: auto 1fr; justify-content: start; gap: 6px 16px; padding: 20px; font-size: 24px; }
    .want b { font-size: 40px; font-family: var(--digits); letter-spacing: -0.03em; }
    .want .talk { grid-column: 2; margin: 0; text-align: left; }
    .chip { grid-row: span 2; width: 18px; height: 100%; min-height: 34px; }
    .next { display: grid; font-size: 24px; }
    .next b { text-align: left; }
    stroke-rail { grid-area: rail; }
    stroke-ticks { grid-area: ticks; }
    plan-profile { grid-area: profile; height: clamp(50px, 10cqh, 120px); }
    .keys { grid-area: keys; align-self: center; grid-template-columns: 1fr 1.3fr 1fr 1fr; }
    .keys button { min-height: 84px; padding: 8px; }
    .help { display: block; }
    .done { grid-area: done; }
    .foot { grid-area: foot; }
    .noted .big { font-size: min(20cqw, 27cqh); }
  }

  @container (min-width: 840px) and (min-height: 860px) and (orientation: landscape) {
    drill-picture[known] { display: block; height: 13cqh; }
    .side:has(drill-picture[known]) { gap: 10px; }
    .side:has(drill-picture[known]) .want { min-height: auto; padding: 8px 20px; font-size: 20px; }
    .side:has(drill-picture[known]) .want b { font-size: 26px; }
  }
`;
