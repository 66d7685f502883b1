/** What has to be stored is stored in its order, however often storage refuses. */
import assert from "node:assert/strict";
import { mock, test } from "node:test";
import { WriteQueue } from "../../static/src/data/write-queue.js";

/** A storage that can refuse; `stored` is what it took. */
class Storage {
  refuses: string | null = null;
  stored: number[] = [];

  write(number: number): () => Promise<void> {
    return async () => {
      if (this.refuses) throw Object.assign(new Error("no"), { name: this.refuses });
      this.stored.push(number);
    };
  }
}

const settled = () => new Promise((done) => setImmediate(done));

test("what storage refuses is kept and written in its order when it answers again", async () => {
  mock.timers.enable({ apis: ["setTimeout"] });
  const [storage, queue] = [new Storage(), new WriteQueue(() => undefined)];
  await queue.add(storage.write(0));
  storage.refuses = "UnknownError";
  await Promise.all([queue.add(storage.write(1)), queue.add(storage.write(2))]);
  assert.deepEqual([storage.stored, queue.trouble], [[0], "refused"]);
  storage.refuses = null;
  mock.timers.tick(1000);
  await settled();
  assert.deepEqual([storage.stored, queue.trouble], [[0, 1, 2], null]);
  mock.timers.reset();
});

test("a full device is told, once, and once when there is room again", async () => {
  const told: unknown[] = [];
  const storage = new Storage();
  const queue: WriteQueue = new WriteQueue(() => told.push(queue.trouble));
  storage.refuses = "QuotaExceededError";
  await queue.add(storage.write(1));
  await queue.flush();
  await queue.flush();
  storage.refuses = null;
  await queue.flush();
  assert.deepEqual(told, ["full", null]);
});

test("a sign of life that is refused is trouble, and is not written later", async () => {
  const [storage, queue] = [new Storage(), new WriteQueue(() => undefined)];
  storage.refuses = "UnknownError";
  await queue.once(storage.write(1));
  assert.equal(queue.trouble, "refused");
  storage.refuses = null;
  await queue.once(storage.write(2));
  assert.deepEqual([storage.stored, queue.trouble], [[2], null]);
});

test("a sign of life that storage takes brings what waits after it", async () => {
  const [storage, queue] = [new Storage(), new WriteQueue(() => undefined)];
  storage.refuses = "UnknownError";
  await queue.add(storage.write(1));
  storage.refuses = null;
  await queue.once(storage.write(2));
  assert.deepEqual([storage.stored, queue.trouble], [[2, 1], null]);
});

test("what is given up is not written any more, even if it was just being tried", async () => {
  const [storage, queue] = [new Storage(), new WriteQueue(() => undefined)];
  let refuse: (() => void) | undefined;
  const written = queue.add(() => new Promise((_done, failed) => (refuse = () => failed(new Error("no")))));
  void queue.add(storage.write(2));
  queue.clear();
  refuse!();
  await written;
  assert.deepEqual([storage.stored, queue.trouble], [[], null]);
});

test("signs of life do not heap up before storage that is silent", async () => {
  const queue = new WriteQueue(() => undefined);
  const asked: (() => void)[] = [];
  const alive = () => queue.once(() => new Promise((done) => asked.push(done)));
  for (let second = 0; second < 60; second += 1) void alive();
  assert.equal(asked.length, 10);
  asked.forEach((answer) => answer());
  await settled();
  void alive();
  assert.equal(asked.length, 11);
});
