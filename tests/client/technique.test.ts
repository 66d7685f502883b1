/** The coach's library on the device: found by the names that coaches write, and there when there is no signal. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { NoAnswer } from "../../static/src/data/api.js";
import { drillIn, drillNamed, renewTechnique, technique } from "../../static/src/data/technique.js";
import type { TechniqueLibrary } from "../../static/src/plan/wire.js";

const shared = JSON.parse(readFileSync("tests/shared/names/drills.json", "utf8")) as Pick<TechniqueLibrary, "drills"> & { found: Record<string, string | null> };
const library = (how: string): TechniqueLibrary => ({ positions: [], drills: [{ ...shared.drills[0]!, how }], focuses: [] });

/** A network that answers so, or gives no answer at all. */
function network(answer?: TechniqueLibrary): void {
  globalThis.fetch = async () => {
    if (!answer) throw new TypeError("Failed to fetch");
    return new Response(JSON.stringify(answer));
  };
}

test("drills are found here as the planner finds them", () => {
  const found = Object.keys(shared.found).map((written) => [written, drillIn(shared, written)?.name ?? null]);
  assert.deepEqual(Object.fromEntries(found), shared.found);
});

test("without an answer and never fetched before there is no library, and a drill is only a name", async () => {
  network();
  await assert.rejects(technique(), NoAnswer);
  assert.equal(await drillNamed("arms only"), undefined);
});

test("once fetched it is there without a signal, until it is fetched anew", async () => {
  network(library("as it was"));
  await renewTechnique();
  network();
  assert.equal((await technique()).drills[0]!.how, "as it was");
  assert.equal((await drillNamed("Arms only"))?.how, "as it was");
  await assert.rejects(renewTechnique(), NoAnswer);
  assert.equal((await technique()).drills[0]!.how, "as it was");
});
