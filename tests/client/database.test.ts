/** What is kept survives lost connections, and a browser that refuses to store. */
import assert from "node:assert/strict";
import { test, type TestContext } from "node:test";
import type { PlanRecord } from "../../static/src/data/plans.js";
import { makeDatabase, type Database } from "../../static/src/data/database.js";
import { isLostConnection } from "../../static/src/data/disk.js";
import { WriteQueue } from "../../static/src/data/write-queue.js";

type Open = Parameters<typeof makeDatabase>[0];
type Handle = Awaited<ReturnType<Open>>;

const settings = (name: string) => ({ name, values: { draft: name } });

/**
 * Connections over one set of records; `broken` says how many more requests fail, and with what, and how many are never
 * answered: those `late` come through all the same, unless their transaction is aborted.
 */
function connections(broken: { left: number; error: Error; silent?: number; late?: boolean }) {
  const records = new Map<string, unknown>();
  const log: string[] = [];
  const durabilities: unknown[] = [];
  async function work<Result>(what: string, does: () => Result): Promise<Result> {
    log.push(what);
    if (broken.silent) {
      broken.silent -= 1;
      if (broken.late) does();
      return new Promise(() => undefined);
    }
    if (broken.left > 0) {
      broken.left -= 1;
      throw broken.error;
    }
    return does();
  }
  const store = {
    put: (value: { name: string }) => work("put", () => records.set(value.name, value)),
    delete: (key: string) => work("remove", () => records.delete(key)),
    get: (key: string) => work("get", () => records.get(key)),
    getAll: () => work("all", () => [...records.values()]),
    count: () => work("count", () => records.size),
  };
  const handle = {
    close: () => undefined,
    transaction: (_stores: string | string[], _mode: string, options?: { durability: string }) => {
      if (options) durabilities.push(options.durability);
      const abort = () => {
        log.push("abort");
        if (broken.late) throw new Error("its commit is under way");
      };
      return { store, objectStore: () => store, done: Promise.resolve(), abort };
    },
  };
  const open: Open = async () => {
    log.push("open");
    return handle as unknown as Handle;
  };
  return { open, log, durabilities };
}

const lost = () => Object.assign(new Error("Connection to Indexed Database server lost. Refresh the page to try again"), { name: "UnknownError" });

const full = () => Object.assign(new Error("full"), { name: "QuotaExceededError" });

test("a lost connection is opened anew and the request tried once more", async () => {
  const { open, log } = connections({ left: 1, error: lost() });
  const database = makeDatabase(open);
  await database.put("settings", settings("a"));
  assert.deepEqual(log, ["open", "put", "open", "put"]);
  assert.deepEqual(await database.get("settings", "a"), settings("a"));
  assert.equal(database.where(), "disk");
});

test("a change that loses its connection begins anew from what is stored", async () => {
  const { open, log } = connections({ left: 1, error: lost() });
  const changed = await makeDatabase(open).change("settings", "a", (before) => ({ name: "a", values: { draft: before?.values.draft ?? "new" } }));
  assert.deepEqual(changed, { name: "a", values: { draft: "new" } });
  assert.deepEqual(log, ["open", "get", "open", "get", "put"]);
});

test("it is tried once more, not for ever", async () => {
  const { open, log } = connections({ left: 9, error: lost() });
  await assert.rejects(makeDatabase(open).get("settings", "a"), /lost/);
  assert.deepEqual(log, ["open", "get", "open", "get"]);
});

test("a full device is cleared of what it can do without, and the request tried once more", async () => {
  const { open, log } = connections({ left: 1, error: full() });
  const database = makeDatabase(open, async () => (log.push("clear"), true));
  await database.put("settings", settings("a"));
  assert.deepEqual(log, ["open", "put", "clear", "put"]);
});

test("a device that stays full is cleared once, and the error passes through", async () => {
  const { open, log } = connections({ left: 9, error: full() });
  const database = makeDatabase(open, async () => (log.push("clear"), true));
  await assert.rejects(database.put("settings", settings("a")), /full/);
  assert.deepEqual(log, ["open", "put", "clear", "put"]);
});

test("what was on disk is not taken for gone when the disk cannot be opened any more", async () => {
  const failing = { left: 0, error: lost() };
  const { open } = connections(failing);
  let closed = false;
  const database = makeDatabase((dropped) => (closed ? Promise.reject(lost()) : open(dropped)));
  await database.put("settings", settings("a"));
  [failing.left, closed] = [1, true];
  await assert.rejects(database.get("settings", "a"), /lost/);
  await assert.rejects(database.get("settings", "a"), /lost/);
  assert.equal(database.where(), "disk");
  closed = false;
  assert.deepEqual(await database.get("settings", "a"), settings("a"));
});

test("what was kept in memory goes to the disk when that can be opened again", async () => {
  const { open } = connections({ left: 0, error: lost() });
  let broken = true;
  const database = makeDatabase((dropped) => (broken ? Promise.reject(lost()) : open(dropped)));
  const plan = { id: "mine:a", name: "mine:a" } as PlanRecord;
  await database.put("plans", plan);
  assert.equal(database.where(), "memory");
  broken = false;
  await database.reopen();
  assert.equal(database.where(), "disk");
  assert.deepEqual(await database.get("plans", "mine:a"), plan);
});

test("a database of a newer build is not touched, and that is said", async () => {
  const database = makeDatabase(async () => {
    throw Object.assign(new Error("The requested version (2) is less than the existing version (3)."), { name: "VersionError" });
  });
  await database.put("settings", settings("a"));
  assert.deepEqual([database.where(), database.isNewer()], ["memory", true]);
});

const sleeping = (t: TestContext) => t.mock.timers.enable({ apis: ["setTimeout"] });

/** Lets this much time pass, and everything happen that is due by then. */
async function pass(t: TestContext, seconds: number): Promise<void> {
  for (let second = 0; second < seconds; second += 1) {
    t.mock.timers.tick(1000);
    await new Promise((done) => setImmediate(done));
  }
}

test("a request that is not answered is taken back and asked anew over another connection, as often as it takes", async (t) => {
  sleeping(t);
  const { open, log } = connections({ left: 0, error: lost(), silent: 3 });
  const database = makeDatabase(open);
  const answer = database.get("settings", "a");
  await pass(t, 2);
  assert.equal(database.isSilent(), false);
  await pass(t, 2);
  assert.equal(database.isSilent(), true);
  await pass(t, 2 + 10);
  assert.deepEqual(log.slice(2), ["abort", "open", "get", "abort", "open", "get"], "after 5 s, and 10 s after that");
  await pass(t, 20);
  assert.equal(await answer, undefined);
  assert.deepEqual(log, ["open", "get", "abort", "open", "get", "abort", "open", "get", "abort", "open", "get"]);
  assert.deepEqual([database.isSilent(), database.where()], [false, "disk"]);
});

test("what waits is taken back together, so that it is written in its order", async (t) => {
  sleeping(t);
  const { open, log } = connections({ left: 0, error: lost(), silent: 2 });
  const database = makeDatabase(open);
  const [before, after] = [{ name: "a", values: { draft: "1" } }, { name: "a", values: { draft: "2" } }];
  const first = database.put("settings", before);
  await pass(t, 4);
  const second = database.put("settings", after);
  await pass(t, 2);
  await Promise.all([first, second]);
  assert.deepEqual(log, ["open", "put", "put", "abort", "abort", "open", "put", "put"]);
  assert.deepEqual(await database.get("settings", "a"), after);
});

test("a change that was not answered is made once, whether or not its commit came through", async (t) => {
  sleeping(t);
  const add = (before: ReturnType<typeof settings> | undefined) => ({ name: "a", values: { draft: `${before?.values.draft ?? ""}x` } });
  for (const late of [false, true]) {
    const broken = { left: 0, error: lost(), silent: 0, late };
    const database = makeDatabase(connections(broken).open);
    const first = database.change("settings", "a", add as never);
    await pass(t, 1);
    await first;
    let silenced = false;
    const second = database.change("settings", "a", ((before: ReturnType<typeof settings>) => {
      // The reading was answered, the writing is not.
      if (!silenced) [silenced, broken.silent] = [true, 1];
      return add(before);
    }) as never);
    await pass(t, 6);
    assert.deepEqual(await second, { name: "a", values: { draft: "xx" } });
    assert.deepEqual(await database.get("settings", "a"), { name: "a", values: { draft: "xx" } });
  }
});

test("what is called off while storage is silent is taken back, and not asked again", async (t) => {
  sleeping(t);
  const { open, log } = connections({ left: 0, error: lost(), silent: 1 });
  const database = makeDatabase(open);
  const queue = new WriteQueue(() => undefined);
  void queue.add((calledOff) => database.put("settings", settings("mine"), "strict", calledOff));
  void queue.once((calledOff) => database.put("settings", settings("alive"), "relaxed", calledOff));
  await pass(t, 1);
  queue.clear();
  await pass(t, 60);
  assert.equal(await database.get("settings", "mine"), undefined);
  assert.equal(queue.trouble, null);
  assert.ok(log.includes("abort"));
  await queue.add((calledOff) => database.put("settings", settings("later"), "strict", calledOff));
  assert.deepEqual(await database.get("settings", "later"), settings("later"));
});

test("what is called off before the connection is open is never asked", async (t) => {
  sleeping(t);
  let let_in: () => void = () => undefined;
  const { open, log } = connections({ left: 0, error: lost() });
  const database = makeDatabase(async (dropped) => {
    await new Promise<void>((done) => (let_in = done));
    return open(dropped);
  });
  const queue = new WriteQueue(() => undefined);
  void queue.add((calledOff) => database.put("settings", settings("mine"), "strict", calledOff));
  await pass(t, 1);
  queue.clear();
  let_in();
  await pass(t, 1);
  assert.deepEqual(log, ["open"]);
});

test("an opening that is never answered is asked again, and nothing is taken for gone meanwhile", async (t) => {
  sleeping(t);
  let answers = false;
  const { open } = connections({ left: 0, error: lost() });
  const database = makeDatabase((dropped) => (answers ? open(dropped) : new Promise(() => undefined)));
  let answer: unknown = "none yet";
  void database.get("settings", "a").then((found) => (answer = found));
  await pass(t, 60);
  assert.deepEqual([answer, database.isSilent(), database.where()], ["none yet", true, "disk"]);
  answers = true;
  await pass(t, 16);
  assert.deepEqual([answer, database.isSilent(), database.where()], [undefined, false, "disk"]);
});

test("only by choice does one go on without storage that is silent, and what was done meanwhile goes there later", async (t) => {
  sleeping(t);
  let answers = false;
  const { open, log } = connections({ left: 0, error: lost() });
  const database = makeDatabase((dropped) => (answers ? open(dropped) : new Promise(() => undefined)));
  database.goOnWithout();
  assert.equal(database.isSilent(), false, "there is nothing to go on without yet");
  const asked = database.get("plans", "mine:a");
  await pass(t, 4);
  let told = 0;
  database.subscribe(() => (told += 1));
  database.goOnWithout();
  assert.equal(await asked, undefined);
  assert.deepEqual([told, database.isSilent(), database.where()], [1, true, "memory"]);
  const plan = { id: "mine:a", name: "mine:a" } as PlanRecord;
  await database.put("plans", plan);
  await database.remove("plans", "mine:b");
  answers = true;
  await pass(t, 21);
  assert.deepEqual([told > 1, database.isSilent(), database.where()], [true, false, "disk"]);
  assert.deepEqual(log.slice(-2), ["remove", "put"]);
  assert.deepEqual(await database.get("plans", "mine:a"), plan);
});

test("a full disk is no lost connection: the error passes through", async () => {
  const { open, log } = connections({ left: 1, error: full() });
  await assert.rejects(makeDatabase(open).put("settings", settings("a")), /full/);
  assert.deepEqual(log, ["open", "put"]);
});

test("the errors that browsers give for a closed connection are known", () => {
  const errors = [
    { name: "InvalidStateError", message: "Failed to execute 'transaction' on 'IDBDatabase': The database connection is closing." },
    lost(),
    { name: "AbortError", message: "The transaction was aborted" },
  ];
  assert.deepEqual(errors.map(isLostConnection), [true, true, true]);
  assert.equal(isLostConnection({ name: "DataError", message: "not a valid key" }), false);
});

test("facts are written strictly, signs of life relaxed", async () => {
  const { open, durabilities } = connections({ left: 0, error: lost() });
  const database = makeDatabase(open);
  await database.put("settings", settings("a"), "strict");
  await database.put("settings", settings("b"));
  assert.deepEqual(durabilities, ["strict", "relaxed"]);
});

function withoutDisk(): Database {
  return makeDatabase(async () => {
    throw Object.assign(new Error("A mutation operation was attempted on a database that did not allow mutations."), { name: "InvalidStateError" });
  });
}

test("without a disk the records are held in memory, and that is said", async () => {
  const database = withoutDisk();
  assert.equal(await database.get("settings", "a"), undefined);
  assert.equal(database.where(), "memory");
  await database.put("settings", settings("a"));
  assert.deepEqual(await database.get("settings", "a"), settings("a"));
  await database.remove("settings", "a");
  assert.deepEqual(await database.all("settings"), []);
});

test("in memory a range holds the same records, in the same order, as on disk", async () => {
  const database = withoutDisk();
  for (const [session, number] of [["b", 0], ["a", 10], ["a", 2], ["c", 1], ["a", 0]] as const) {
    await database.put("facts", { session, number, fact: { kind: "held", at_s: number } });
  }
  const found = await database.all("facts", ["a", 0], ["a", Number.MAX_SAFE_INTEGER]);
  assert.deepEqual(found.map(({ number }) => number), [0, 2, 10]);
});

test("what is put into memory is a copy", async () => {
  const database = withoutDisk();
  const mine = settings("a");
  await database.put("settings", mine);
  mine.values.draft = "changed";
  assert.equal((await database.get("settings", "a"))!.values.draft, "a");
});
