/** Settings that storage does not keep still count while the page is open; damaged ones count as never chosen. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { database } from "../../static/src/data/database.js";
import { changeSettings, DEFAULTS, keepSettings, readSettings } from "../../static/src/data/settings.js";

test("on a full device a change counts for this page, and is kept when there is room again", async (t) => {
  await changeSettings({ draft: "before" });
  t.mock.method(database, "change", () => Promise.reject(new Error("full")));
  assert.equal((await changeSettings({ cautions_read: true })).cautions_read, true);
  await assert.rejects(keepSettings({ volume: 0.5 }), /full/);
  assert.deepEqual(await readSettings(), { ...DEFAULTS, draft: "before", cautions_read: true, volume: 0.5 });
  t.mock.restoreAll();
  await changeSettings({ draft: "after" });
  const stored = await database.get("settings", "all");
  assert.deepEqual(stored!.values, { draft: "after", cautions_read: true, volume: 0.5 });
});

test("storage that does not answer gives the defaults", async (t) => {
  await database.remove("settings", "all");
  t.mock.method(database, "get", () => Promise.reject(new Error("lost")));
  assert.deepEqual(await readSettings(), DEFAULTS);
});

test("a damaged setting counts as never chosen, and the others hold", async () => {
  await database.put("settings", { name: "all", values: { volume: 7, sound: false, draft: null as unknown as string } });
  assert.deepEqual(await readSettings(), { ...DEFAULTS, sound: false });
});
