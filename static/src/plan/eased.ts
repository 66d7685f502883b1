/** What a plan says of itself after a mend: a description of a hard piece does not outlive its pressure. */
import type { Edit, Plan } from "./wire.js";

const EFFORT_OF_PART = /^\/parts\/(\d+)\/.*\/effort$/;
const SOFT = ["light", "half"];
const EASED = "An easier version: the pressure of the main piece was taken down. Stop at any sharp pain, faintness or tightness in the chest.";

/** The mended plan, described anew where the edits took the pressure of a main part down. `before` is what they changed. */
export function describedAfter(edits: readonly Edit[], before: Plan, mended: Plan): Plan {
  const eased = edits.some(({ path, value }) => before.parts[partOf(path)]?.kind === "main" && isSoft(value));
  return eased && mended.summary ? { ...mended, summary: EASED } : mended;
}

function partOf(path: string): number {
  return Number(EFFORT_OF_PART.exec(path)?.[1] ?? NaN);
}

function isSoft(effort: unknown): boolean {
  return SOFT.includes((effort as { pressure?: string } | undefined)?.pressure ?? "");
}
