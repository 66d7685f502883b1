/** This device's clock against the server's, from Dates of whole seconds. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { clockWords } from "../../static/src/components/clock-words.js";
import { clockDifference, type Answer } from "../../static/src/data/server-clock.js";
import { chance } from "./builders.js";

interface World {
  /** The device is so much ahead of the server. */
  ahead_ms: number;
  /** The way there and the way back. */
  there_ms: () => number;
  back_ms: () => number;
}

/** Measures in a world of its own; also how often the server was asked and how long it took. */
async function measure({ ahead_ms, there_ms, back_ms }: World) {
  let [now_ms, asked] = [1_795_000_000_321 + ahead_ms, 0];
  const begun_ms = now_ms;
  const ask = async (): Promise<Answer> => {
    asked += 1;
    const sent_ms = now_ms;
    now_ms += there_ms();
    const date_ms = Math.floor((now_ms - ahead_ms) / 1000) * 1000;
    now_ms += back_ms();
    return { sent_ms, got_ms: now_ms, date_ms };
  };
  const wait = async (milliseconds: number) => void (now_ms += milliseconds);
  const found = await clockDifference(ask, () => now_ms, wait);
  return { found, asked, took_ms: now_ms - begun_ms };
}

test("a difference is found to some hundredths of a second, in a few seconds, and never claimed too narrow", async () => {
  const next = chance(17);
  for (let round = 0; round < 300; round += 1) {
    const ahead_ms = Math.round((next() - 0.5) * 10 ** Math.floor(next() * 8));
    const way = () => 5 + next() * 40;
    const { found, asked, took_ms } = await measure({ ahead_ms, there_ms: way, back_ms: way });
    assert.ok(found);
    assert.ok(Math.abs(found.ahead_s * 1000 - ahead_ms) <= found.within_s * 1000 + 1e-6, `${found.ahead_s} is not ${ahead_ms}`);
    assert.ok(found.within_s < 0.06, `${found.within_s}`);
    assert.ok(asked <= 8);
    assert.ok(took_ms < 9000, `${took_ms}`);
  }
});

test("a long way to the server makes it less sure, and that is said", async () => {
  const { found } = await measure({ ahead_ms: 2400, there_ms: () => 700, back_ms: () => 200 });
  assert.ok(found!.within_s > 0.4 && found!.within_s < 0.6, `${found!.within_s}`);
  assert.ok(Math.abs(found!.ahead_s - 2.4) <= found!.within_s);
});

test("with no answer, or a clock that is moved meanwhile, nothing is known", async () => {
  assert.equal(await clockDifference(() => Promise.reject(new Error("no signal"))), undefined);
  let asked = 0;
  const moved = async (): Promise<Answer> => {
    asked += 1;
    return { sent_ms: asked * 100_000, got_ms: asked * 100_000 + 10, date_ms: 5000 };
  };
  assert.equal(await clockDifference(moved, () => 0, async () => undefined), undefined);
});

test("what is said", () => {
  const words = (ahead_s: number, within_s = 0.02) => clockWords({ ahead_s, within_s });
  assert.equal(words(0.03), "Right by the server's clock, to 0.1 s.");
  assert.equal(words(-0.3, 0.44), "Right by the server's clock, to 0.5 s.");
  assert.equal(words(2.41), "This clock is 2.4 s ahead of the server's.");
  assert.equal(words(-42.2), "This clock is 42 s behind the server's.");
  assert.equal(words(-300), "This clock is 5 min behind the server's.");
  assert.equal(words(3 * 3600), "This clock is 3 h ahead of the server's.");
  assert.equal(clockWords("unknown"), "No signal to check this clock by.");
});
