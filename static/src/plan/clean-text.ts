/** Text that may stand in a plan, as planner/text.py leaves it: one line, composed, with nothing hidden in it. */

const REFUSED =
  /[\u0000-\u001f\u007f-\u009f\u115f\u1160\u180e\u200b\u2028-\u202e\u2060-\u206f\u3164\ufdd0-\ufdef\ufeff\uffa0\ufff9-\uffff\u{e0000}-\u{e007f}]|\p{Surrogate}|\p{Noncharacter_Code_Point}/u;
const SHOWS_SOMETHING = /(?!\u2800)[\p{L}\p{N}\p{P}\p{S}]/u;
const PILED_UP = /\p{M}{5}/u;

/** Whether the planner would keep this text exactly as it is; `longest` is in characters. */
export function isClean(text: string, longest: number): boolean {
  if (text.length > 4 * longest || [...text].length > longest || REFUSED.test(text)) return false;
  const line = text.normalize("NFC").replace(/\s+/g, " ").trim();
  return line === text && SHOWS_SOMETHING.test(text) && !PILED_UP.test(text);
}
