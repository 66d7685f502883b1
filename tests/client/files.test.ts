/** Files that the server makes of a plan: the name that comes with them, refusals, silence. */
import assert from "node:assert/strict";
import { afterEach, test } from "node:test";
import { NoAnswer, Refused, fetchFile } from "../../static/src/data/api.js";
import { row, timeline } from "./builders.js";
import { network } from "./network.js";

const realFetch = globalThis.fetch;
afterEach(() => void (globalThis.fetch = realFetch));
const { plan } = timeline(row(60, 24));

function answering(body: string, headers: Record<string, string>, status = 200): void {
  globalThis.fetch = async () => new Response(body, { status, headers });
}

test("a file has the name that the server gave it, whatever is in that", async () => {
  answering("WEBVTT", { "Content-Disposition": "attachment; filename=\"ete.vtt\"; filename*=UTF-8''%C3%89t%C3%A9%20%28a%3Bb%29.vtt" });
  const { name, blob } = await fetchFile("vtt", { plan });
  assert.equal(name, "Été (a;b).vtt");
  assert.equal(await blob.text(), "WEBVTT");
});

test("what a gateway in between answers is no file", async () => {
  answering("<html>sign in to the wifi</html>", {});
  await assert.rejects(fetchFile("csv", { plan }), NoAnswer);
});

test("too many files are refused in the server's words", async () => {
  answering(JSON.stringify({ detail: "more than 120 downloads", problems: [] }), {}, 429);
  await assert.rejects(fetchFile("csv", { plan }), (error) => error instanceof Refused && error.message === "more than 120 downloads");
});

test("a result goes along in the body, never in the address", async () => {
  const asked = network({});
  await assert.rejects(fetchFile("csv", { plan, athlete: { results: [{ metres: 2000, seconds: 462 }] } }), NoAnswer);
  assert.deepEqual(asked.map(({ path }) => path), ["/api/exports/csv"]);
});
