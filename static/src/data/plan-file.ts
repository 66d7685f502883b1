/** A plan read back in from a file or a text: checked by the server, and kept only when all of it will do. */
import { pointerWords } from "../plan/pointer-words.js";
import type { Plan } from "../plan/wire.js";
import { Refused, refusalOf } from "./api.js";
import type { AthleteRecord } from "./athlete.js";
import { compiled } from "./compiling.js";
import { keepMine, type PlanRecord } from "./plans.js";

/** As much as the server takes, with room for what stands around a plan in a request. */
export const MOST_BYTES = 250_000;

const EVERYTHING = "It is a file of everything on a device: bring it back under Settings.";

/** What was given is no plan: a sentence for each mistake, with its place. Nothing has changed. */
export class NotAPlan extends Error {
  override readonly name = "NotAPlan";

  constructor(readonly sentences: readonly string[]) {
    super(sentences.join(" "));
  }
}

/** Whether a text is meant to be a plan file rather than a coach's shorthand. */
export function looksLikeJson(text: string): boolean {
  return /^\s*[{[]/.test(text);
}

/** Opens a plan file and keeps the plan as one's own. Throws NotAPlan, NoAnswer; then nothing has changed. */
export async function openPlanFile(file: Blob, rower: AthleteRecord): Promise<PlanRecord> {
  if (file.size > MOST_BYTES) throw new NotAPlan([`It is ${Math.ceil(file.size / 1000)} kB long, and a plan takes ${MOST_BYTES / 1000} kB at most. A file of everything on a device is brought back under Settings.`]);
  const text = textOf(await file.arrayBuffer());
  const plan = await documentIn(text);
  if ((plan as { slipway?: unknown } | null)?.slipway === "everything") throw new NotAPlan([EVERYTHING]);
  try {
    return await keepMine(await compiled(plan as Plan, rower));
  } catch (error) {
    throw error instanceof Refused ? new NotAPlan(sentencesOf(error)) : error;
  }
}

/** The text of a file; a byte order mark before it is left out. */
function textOf(bytes: ArrayBuffer): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new NotAPlan(["It is not text in UTF-8. It may be damaged, or another kind of file."]);
  }
}

/** What a text says as JSON. Browsers do not all say where one ends to be that, so the server is asked. */
async function documentIn(text: string): Promise<unknown> {
  try {
    return JSON.parse(text);
  } catch {
    const { message } = await refusalOf(text);
    throw new NotAPlan([`It is not whole JSON: ${message}.`]);
  }
}

function sentencesOf({ message, problems }: Refused): string[] {
  if (!problems.length) return [sentence("", message)];
  return problems.map((problem) => sentence(pointerWords(problem.pointer), problem.sentence));
}

function sentence(place: string, words: string): string {
  const told = place ? `${place}: ${words}` : words;
  return `${told.charAt(0).toUpperCase()}${told.slice(1)}.`;
}
