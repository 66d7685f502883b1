/** Keys of walls: whatever answer is lost and whatever link is opened, the key that works stays on the device. */
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { show } from "../../static/src/data/afar.js";
import { NoAnswer, Refused } from "../../static/src/data/api.js";
import { forgetWall, fromKeyLink, keepKey, keyLink, newKey, newWall, readWalls, renameWall, settleKey, tabletAddress } from "../../static/src/data/keyed-walls.js";
import { changeSettings } from "../../static/src/data/settings.js";

const ID = "a".repeat(16);
const [OLD, OTHER] = ["k".repeat(43), "x".repeat(43)];
const wall = { id: ID, key: OLD, name: "Wall 1" };
const shown = { id: ID, version: 2, plans: [], starts_at_s: null };

Object.assign(globalThis, { location: { origin: "https://row.example" } });

/** A server with one wall, which knows one key; a road that may lose what is asked, or what is answered. */
class Served {
  key = OLD;
  loses: "nothing" | "asked" | "answered" = "nothing";
  tried: string[] = [];

  constructor() {
    globalThis.fetch = async (path, options) => {
      const { method = "GET", headers, body } = options ?? {};
      const given = (headers as Record<string, string>).Authorization?.replace("Bearer ", "");
      if (this.loses === "asked") throw new TypeError("Failed to fetch");
      const answer = this.answer(String(path), method, given, body ? JSON.parse(String(body)) : undefined);
      if (this.loses === "answered") throw new TypeError("Failed to fetch");
      return answer;
    };
  }

  private answer(path: string, method: string, given: string | undefined, body: { key?: string } | undefined): Response {
    if (path === "/api/walls") return Response.json({ id: ID, key: OLD, url: `/wall/${ID}` }, { status: 201 });
    if (given) this.tried.push(given);
    if ((given || method !== "GET") && given !== this.key) return Response.json({ status: 401, detail: "the key is not that of the wall" }, { status: 401 });
    if (path.endsWith("/key")) {
      assert.match(body!.key!, /^[A-Za-z0-9_-]{43}$/);
      this.key = body!.key!;
      return Response.json({ id: ID, key: this.key, url: `/wall/${ID}` });
    }
    return Response.json(shown);
  }
}

beforeEach(() => changeSettings({ walls: null, publish_key: "" }));

test("a wall that is made has its key kept here, and a key link gives it to another phone", async () => {
  new Served();
  assert.deepEqual(await newWall(), [wall]);
  assert.equal(keyLink(wall), `https://row.example/walls#${ID}.${OLD}`);
  assert.equal(tabletAddress(wall), `https://row.example/wall/${ID}`);
  assert.deepEqual(fromKeyLink(keyLink(wall).split("#")[1]!), { id: ID, key: OLD });
  for (const bad of ["", ID, `${ID}.short`, `${ID}.${OLD}x`, `${ID.toUpperCase()}.${OLD}`]) assert.equal(fromKeyLink(bad), undefined);
  assert.deepEqual(await renameWall(ID, "Upstairs"), [{ ...wall, name: "Upstairs" }]);
  assert.deepEqual(await forgetWall(ID), []);
});

test("damaged walls in storage are left out, and damaged spare keys", async () => {
  await changeSettings({ walls: [{ ...wall, next_key: 5, given_keys: ["short", null, OTHER] }, null, { id: "x" }, { id: ID }] });
  assert.deepEqual(await readWalls(), [{ ...wall, given_keys: [OTHER] }]);
});

test("a replaced key is made here, by chance, and is the only one afterwards", async () => {
  const server = new Served();
  await keepKey(wall);
  const [first] = await newKey(wall);
  assert.deepEqual(first, { ...wall, key: server.key });
  const [second] = await newKey(first!);
  assert.deepEqual([second!.key, new Set([OLD, first!.key, second!.key]).size], [server.key, 3]);
});

test("where the answer to a replacing is lost, both keys stay, and the next change finds the one that works", async () => {
  const server = new Served();
  for (const loses of ["asked", "answered"] as const) {
    await changeSettings({ walls: [wall] });
    [server.key, server.loses, server.tried] = [OLD, loses, []];
    await assert.rejects(newKey(wall), NoAnswer);
    const [unsure] = await readWalls();
    assert.deepEqual([unsure!.key, unsure!.next_key !== undefined], [OLD, true]);
    server.loses = "nothing";
    await show(wall, []);
    const [sure] = await readWalls();
    assert.equal(sure!.key, server.key);
    assert.equal(sure!.key === OLD, loses === "asked");
    const [again] = await newKey(unsure!);
    assert.deepEqual(again, { ...wall, key: server.key });
    if (loses === "asked") assert.equal(again!.key, unsure!.next_key, "the key that was kept is asked for again");
  }
});

test("a replacing whose answer was lost is done again by itself: with the key that was to come", async () => {
  const server = new Served();
  await keepKey(wall);
  server.loses = "answered";
  await assert.rejects(newKey(wall), NoAnswer);
  server.loses = "nothing";
  assert.deepEqual(await newKey(wall), [{ ...wall, key: server.key }]);
  assert.deepEqual(server.tried, [OLD, OLD, server.key]);
});

test("an old or a stranger's key link takes nothing away", async () => {
  const server = new Served();
  await keepKey(wall);
  await keepKey({ id: ID, key: OTHER });
  assert.deepEqual(await readWalls(), [{ ...wall, given_keys: [OTHER] }]);
  await assert.rejects(settleKey({ id: ID, key: OTHER }), Refused);
  assert.deepEqual(await readWalls(), [wall]);
  assert.deepEqual(server.tried, [OTHER]);
});

test("a newer key link takes the place of the key only once the server has said so", async () => {
  const server = new Served();
  await keepKey(wall);
  server.key = OTHER;
  await keepKey({ id: ID, key: OTHER });
  assert.deepEqual(await settleKey({ id: ID, key: OTHER }), [{ ...wall, key: OTHER }]);
});

test("a key link opened with no signal is kept beside the key, and the next change finds out", async () => {
  const server = new Served();
  await keepKey(wall);
  [server.key, server.loses] = [OTHER, "asked"];
  await keepKey({ id: ID, key: OTHER });
  await assert.rejects(settleKey({ id: ID, key: OTHER }), NoAnswer);
  assert.deepEqual(await readWalls(), [{ ...wall, given_keys: [OTHER] }]);
  server.loses = "nothing";
  await show(wall, []);
  assert.deepEqual(await readWalls(), [{ ...wall, key: OTHER }]);
});

test("where no key here is right nothing is thrown away, and the refusal is told", async () => {
  const server = new Served();
  await changeSettings({ walls: [{ ...wall, next_key: OTHER }] });
  server.key = "y".repeat(43);
  await assert.rejects(show(wall, []), /not that of the wall/);
  assert.deepEqual(await readWalls(), [{ ...wall, next_key: OTHER }]);
  assert.deepEqual(server.tried, [OLD, OTHER]);
});
