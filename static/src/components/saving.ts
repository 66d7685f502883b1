/** Whether a plan is proved to run with no signal: the plan read back from storage, the app from the cache. */
import { alone } from "../plan/alone.js";
import { isKept } from "../data/plans.js";
import { canSave, savedProof } from "../offline/worker-bridge.js";

export type Saved = "saving" | "saved" | "not-saved" | "insecure";

const TRIES = 20;
const PAUSE_MS = 3000;

/** Looks until it is proved, or until looking on is no use; tells each state as it changes. `also` is to be proved with it. */
export async function watchSaved(
  id: string, tell: (saved: Saved) => void, gone: () => boolean, also: () => Promise<boolean> = async () => true,
): Promise<void> {
  if (alone) return tell("saved");
  if (!canSave()) return tell("insecure");
  for (let tried = 0; tried < TRIES && !gone(); tried += 1) {
    const saved = (await isSaved(id)) && (await also());
    if (gone()) return;
    tell(saved ? "saved" : tried ? "not-saved" : "saving");
    if (saved) return;
    await new Promise((done) => setTimeout(done, PAUSE_MS));
  }
}

export async function isSaved(id: string): Promise<boolean> {
  const [kept, proof] = await Promise.all([isKept(id), savedProof()]);
  return kept && proof.state === "proved";
}

/** Whether a script that is not part of the first load is kept: a screen asks with its own address. */
export async function keptLater(address: string): Promise<boolean> {
  return (await caches.match(address)) !== undefined;
}
