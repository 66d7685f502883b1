/** The coach's library on this device: fetched once the app stands, and kept for when there is no signal. */
import type { KnownDrill, TechniqueLibrary } from "../plan/wire.js";
import { fetchTechnique } from "./api.js";
import { database } from "./database.js";

export interface TechniqueRecord {
  id: "technique";
  library: TechniqueLibrary;
}

const ID = "technique";
let library: Promise<TechniqueLibrary> | undefined;

/** The library as it is kept here, or else as the server has it. Throws Refused, NoAnswer where there is neither. */
export function technique(): Promise<TechniqueLibrary> {
  library ??= kept().then((found) => found ?? renewTechnique());
  library.catch(() => (library = undefined));
  return library;
}

/** Fetches the library anew and keeps it; a device that is full can still show it. */
export async function renewTechnique(): Promise<TechniqueLibrary> {
  const found = await fetchTechnique();
  await database.put("technique", { id: ID, library: found }).catch(() => undefined);
  return found;
}

/** The drill that a coach calls so, if the library is at hand and has it. */
export async function drillNamed(name: string): Promise<KnownDrill | undefined> {
  const found = await technique().catch(() => undefined);
  return found && drillIn(found, name);
}

/** As planner/drills.py finds it: without case, punctuation and filling words, or by what stands before a comma. */
export function drillIn({ drills }: Pick<TechniqueLibrary, "drills">, name: string): KnownDrill | undefined {
  const called = (written: string) => drills.find((drill) => [drill.name, ...drill.other_names].some((own) => plain(own) === plain(written)));
  return called(name) ?? called(name.split(",")[0]!);
}

async function kept(): Promise<TechniqueLibrary | undefined> {
  return (await database.get("technique", ID))?.library;
}

function plain(name: string): string {
  return name.toLowerCase().replace(/\b(?:the|a|drill)\b|[^\w/]+/g, " ").trim().replace(/ +/g, " ");
}
