/** What a person chooses on a device: kept, understood or left at the usual, and followed in every tab. */
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { database } from "../../static/src/data/database.js";
import { changePreferences, isCount, preferencesFrom, readPreferences, USUAL } from "../../static/src/data/preferences.js";
import { changeSettings, readSettings } from "../../static/src/data/settings.js";
import { Chosen, type Channel } from "../../static/src/state/chosen.js";

beforeEach(() => database.remove("settings", "all"));

test("what was never chosen is the usual", async () => {
  assert.deepEqual(await readPreferences(), USUAL);
  assert.deepEqual([USUAL.biggest, USUAL.theme, USUAL.start_count_s, USUAL.hold_count_s], ["time", "device", 10, 5]);
});

test("a change is kept, and leaves every other choice and setting alone", async () => {
  await changeSettings({ draft: "5' r18" });
  await changePreferences({ hand: "left" });
  await changePreferences({ hold_count_s: 0 });
  assert.deepEqual(await readPreferences(), { ...USUAL, hand: "left", hold_count_s: 0 });
  assert.equal((await readSettings()).draft, "5' r18");
});

test("a damaged choice falls back to the usual, and takes no other with it", () => {
  const values = { biggest: "calories", hand: "left", keep_awake: "no", start_count_s: 31, hold_count_s: 2.5, theme: null };
  assert.deepEqual(preferencesFrom({ version: 1, values }), { ...USUAL, hand: "left" });
});

test("what is no record of ours counts as nothing chosen", () => {
  for (const stored of [undefined, null, 7, "left", [], {}, { version: 1 }, { version: 1, values: null }, { version: 1, values: "x" }, { version: 2, values: { hand: "left" } }]) {
    assert.deepEqual(preferencesFrom(stored), USUAL, JSON.stringify(stored));
  }
});

test("a choice that a newer build knows survives a change made by this one", async () => {
  await changeSettings({ preferences: { version: 1, values: { tide: "high" } } });
  await changePreferences({ hand: "left" });
  assert.deepEqual((await readSettings()).preferences, { version: 1, values: { tide: "high", hand: "left" } });
});

test("a count-in is a whole number of seconds from 0 to 30", () => {
  assert.deepEqual([0, 1, 30].map(isCount), [true, true, true]);
  assert.deepEqual([-1, 31, 2.5, NaN, "5", null].map(isCount), Array(6).fill(false));
});

/** Two tabs that hear each other. */
function twoTabs(): [Chosen, Chosen] {
  const ends: Channel[] = [];
  const end = (): Channel => {
    const channel: Channel = {
      onmessage: null,
      postMessage: (data) => ends.filter((other) => other !== channel).forEach((other) => other.onmessage?.call(other as BroadcastChannel, { data } as MessageEvent)),
    };
    ends.push(channel);
    return channel;
  };
  return [new Chosen(end()), new Chosen(end())];
}

test("another tab follows a change", async () => {
  const [here, there] = twoTabs();
  await Promise.all([here.ready, there.ready]);
  const heard = new Promise<void>((done) => there.subscribe(done));
  assert.equal(await here.change({ biggest: "rate" }), true);
  await heard;
  assert.equal(there.now.biggest, "rate");
});

test("a change holds at once, whatever was still being read", async () => {
  await changePreferences({ biggest: "split" });
  const [here] = twoTabs();
  const changing = here.change({ biggest: "rate" });
  assert.equal(here.now.biggest, "rate");
  await Promise.all([changing, here.ready]);
  assert.equal(here.now.biggest, "rate");
});

test("a listener is told of a change once, and not when nothing changes", async () => {
  const [here] = twoTabs();
  await here.ready;
  let told = 0;
  const stop = here.subscribe(() => (told += 1));
  await here.change({ hand: "left" });
  await here.change({ hand: "left" });
  assert.equal(told, 1);
  stop();
  await here.change({ hand: "right" });
  assert.equal(told, 1);
});

test("a choice that cannot be kept holds while the page is open, and that is said", async (context) => {
  const [here] = twoTabs();
  await here.ready;
  context.mock.method(database, "change", async () => {
    throw Object.assign(new Error("full"), { name: "QuotaExceededError" });
  });
  assert.equal(await here.change({ hand: "left" }), false);
  assert.equal(here.now.hand, "left");
});
