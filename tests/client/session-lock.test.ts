/** One tab has the session, where there are no Web Locks: tabs that ask each other over a channel. */
import assert from "node:assert/strict";
import { afterEach, beforeEach, test } from "node:test";
import { makeSessionLock, type SessionLock } from "../../static/src/state/session-lock.js";

/** Channels of one browser; a word arrives at all others a moment later. */
class Channel {
  static all = new Set<Channel>();
  onmessage: ((event: { data: unknown }) => void) | null = null;

  constructor() {
    Channel.all.add(this);
  }

  postMessage(data: unknown): void {
    const others = [...Channel.all].filter((channel) => channel !== this);
    for (const channel of others) setImmediate(() => channel.onmessage?.({ data }));
  }

  close(): void {
    this.onmessage = null;
    Channel.all.delete(this);
  }
}

const real = { channel: globalThis.BroadcastChannel, navigator: Object.getOwnPropertyDescriptor(globalThis, "navigator") };

beforeEach(() => {
  Object.assign(globalThis, { BroadcastChannel: Channel });
  Object.defineProperty(globalThis, "navigator", { value: {}, configurable: true });
  Channel.all.clear();
});

afterEach(() => {
  Object.assign(globalThis, { BroadcastChannel: real.channel });
  if (real.navigator) Object.defineProperty(globalThis, "navigator", real.navigator);
  else Reflect.deleteProperty(globalThis, "navigator");
});

function tab(): { lock: SessionLock; lost: () => number } {
  let times = 0;
  return { lock: makeSessionLock(() => (times += 1)), lost: () => times };
}

test("the first tab gets it, the second does not, and after a release the second does", async () => {
  const [one, two] = [tab(), tab()];
  assert.equal(await one.lock.take(), true);
  assert.equal(await two.lock.take(), false);
  one.lock.release();
  assert.equal(await two.lock.take(), true);
  assert.equal(one.lost(), 0);
});

test("a tab that has it may ask again", async () => {
  const one = tab();
  assert.deepEqual([await one.lock.take(), await one.lock.take()], [true, true]);
});

test("a tab that is taken over from is told, once", async () => {
  const [one, two] = [tab(), tab()];
  await one.lock.take();
  await two.lock.takeOver();
  await new Promise((done) => setImmediate(done));
  assert.deepEqual([one.lost(), two.lost()], [1, 0]);
  assert.equal(await one.lock.take(), false);
});

test("of two tabs that take it in the same moment exactly one keeps it", async () => {
  const tabs = [tab(), tab()];
  const taken = await Promise.all(tabs.map(({ lock }) => lock.take()));
  await new Promise((done) => setTimeout(done, 100));
  assert.equal(tabs.filter(({ lost }, index) => taken[index] && lost() === 0).length, 1);
});

/** Web Locks of one browser, as far as they are used: one has it, the others wait until they give up. */
class Locks {
  private had = false;
  private readonly waiting: (() => void)[] = [];

  request(_name: string, { signal }: LockOptions, use: () => Promise<void> | undefined): Promise<void> {
    return new Promise((done, failed) => {
      let begun = false;
      const begin = () => {
        if (signal?.aborted) return this.next();
        this.had = begun = true;
        void Promise.resolve(use()).then(() => (this.next(), done()));
      };
      signal?.addEventListener("abort", () => void (begun || failed(new Error("given up"))));
      if (this.had) this.waiting.push(begin);
      else {
        this.had = true;
        setImmediate(begin);
      }
    });
  }

  private next(): void {
    this.had = false;
    this.waiting.shift()?.();
  }
}

test("with Web Locks, a tab that asks twice at once has it, and given up before the answer it is nobody's", async (t) => {
  const awake = setInterval(() => undefined, 100); // time limits alone do not keep Node waiting
  t.after(() => clearInterval(awake));
  Object.defineProperty(globalThis, "navigator", { value: { locks: new Locks() }, configurable: true });
  const [one, two] = [tab(), tab()];
  assert.deepEqual(await Promise.all([one.lock.take(), one.lock.take()]), [true, true]);
  assert.equal(await two.lock.take(), false);
  one.lock.release();
  const asked = two.lock.take();
  two.lock.release();
  assert.equal(await asked, false);
  assert.equal(await one.lock.take(), true);
  one.lock.release();
  const first = two.lock.take();
  two.lock.release();
  assert.deepEqual(await Promise.all([first, two.lock.take()]), [true, true]);
});
