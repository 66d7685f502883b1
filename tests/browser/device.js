// A device under a test's command: its clocks, its sleep, whether it is looked at, its storage's moods. Runs before
// the page's own code. Time stands still but for `pass`, so that nothing rests on how quick the machine is; frames
// and the ticker's worker are driven by it. The driver carries the wall clock from page to page in a cookie.
(() => {
  if (!location.protocol.startsWith("http")) return;
  const STEP_MS = 200;
  const WAKING_MS = 600; // a machine that goes to sleep and wakes spends so long about it, awake
  const FRAME_MS = 30;
  const SHORT_TIMER_MS = 1000;
  const AT_ONCE_MS = 100; // what a page shows so soon, people see at once
  const known = /device_wall=(\d+)/.exec(document.cookie);
  const Wall = Date;
  const clocks = { wall: known ? Number(known[1]) : Wall.now(), mono: 1000 };

  performance.now = () => clocks.mono;
  window.Date = class extends Wall {
    constructor(...given) { if (given.length) super(...given); else super(clocks.wall); }
    static now() { return clocks.wall; }
  };
  delete window.AudioContext; // no sound keeps up with such a clock

  // Short timers are due by the commanded clock, or by the true one where that is sooner: nobody commands the writing of
  // plans. Long ones go by true time alone: among them is the one by which WebKit's driver gives up.
  const timers = new Map();
  const [setTrueTimeout, clearTrueTimeout] = [window.setTimeout.bind(window), window.clearTimeout.bind(window)];
  window.setTimeout = (callback, ms = 0, ...given) => {
    if (ms > SHORT_TIMER_MS) return setTrueTimeout(callback, ms, ...given);
    const ring = () => void (timers.delete(number) && callback(...given));
    const number = setTrueTimeout(ring, ms);
    timers.set(number, { due: clocks.mono + ms, ring });
    return number;
  };
  window.clearTimeout = (number) => {
    timers.delete(number);
    clearTrueTimeout(number);
  };
  function ring(ahead_ms = 0) {
    [...timers.values()].filter(({ due }) => due <= clocks.mono + ahead_ms).forEach(({ ring }) => ring());
  }

  let hidden = false;
  Object.defineProperty(document, "hidden", { get: () => hidden });
  Object.defineProperty(document, "visibilityState", { get: () => (hidden ? "hidden" : "visible") });

  const frames = new Map();
  let frame = 0;
  window.requestAnimationFrame = (callback) => {
    frames.set(++frame, callback);
    if (frames.size === 1) setTrueTimeout(paint, FRAME_MS);
    return frame;
  };
  window.cancelAnimationFrame = (number) => void frames.delete(number);
  function paint() {
    if (hidden) return;
    const due = [...frames.values()];
    frames.clear();
    due.forEach((callback) => callback(clocks.mono));
  }

  const tickers = new Set();
  const RealWorker = window.Worker;
  window.Worker = class {
    constructor(address) {
      if (!String(address).includes("ticker-worker")) return new RealWorker(address);
      tickers.add(this);
    }
    postMessage(every) { [this.every, this.next] = [every, clocks.mono + every]; }
    terminate() { tickers.delete(this); }
  };
  function tick() {
    for (const ticker of tickers) {
      if (clocks.mono < ticker.next) continue;
      ticker.next = clocks.mono + ticker.every;
      ticker.onmessage?.({ data: "tick" });
    }
  }

  // --- Storage

  let mood = document.cookie.includes("device_storage=silent") ? "silent" : "well";
  let pending = 0;
  const connections = new Set();
  const lost = () => new DOMException("Connection to Indexed Database server lost. Refresh the page to try again", "UnknownError");
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (...given) {
    connections.add(this);
    if (mood === "gone") throw lost();
    const made = transaction.apply(this, given);
    if (mood === "silent") return unheard(made);
    pending += 1;
    for (const end of ["complete", "abort"]) made.addEventListener(end, () => (pending -= 1));
    return made;
  };
  const { open } = IDBFactory.prototype;
  IDBFactory.prototype.open = function (...given) {
    if (mood === "gone") throw lost();
    return mood === "silent" ? unheard(open.apply(this, given)) : open.apply(this, given);
  };
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (...given) {
    if (mood === "full") queueMicrotask(() => outOfRoom(this.transaction));
    return mood === "silent" ? unheard(put.apply(this, given)) : put.apply(this, given);
  };
  for (const name of ["get", "getAll", "getAllKeys", "delete"]) {
    const request = IDBObjectStore.prototype[name];
    IDBObjectStore.prototype[name] = function (...given) {
      return mood === "silent" ? unheard(request.apply(this, given)) : request.apply(this, given);
    };
  }
  // What comes of it is done all the same, and nobody is told.
  function unheard(asked) {
    asked.addEventListener = () => {};
    return asked;
  }

  function outOfRoom(transaction) {
    Object.defineProperty(transaction, "error", { value: new DOMException("no room", "QuotaExceededError"), configurable: true });
    try {
      transaction.abort();
    } catch {
      // Another of its requests has aborted it already.
    }
  }

  const turn = () => new Promise((done) => setTrueTimeout(done));

  Object.defineProperty(window, "device", { value: {
    clocks: () => ({ ...clocks }),
    // Until storage has nothing to do any more, and what has changed is on the screen.
    async settle() {
      for (let quiet = 0; quiet < 5; quiet = pending ? 0 : quiet + 1) await turn();
      ring(AT_ONCE_MS);
      paint();
      await turn();
    },
    // Lets so many milliseconds go by while the page lives: in sight with frames and ticks, hidden with ticks alone.
    async pass(ms) {
      for (let left = ms; left > 0; left -= STEP_MS) {
        const step = Math.min(STEP_MS, left);
        clocks.mono += step;
        clocks.wall += step;
        tick();
        ring();
        paint();
        await null;
        if (clocks.mono % 1000 < STEP_MS) await turn();
      }
      await device.settle();
    },
    // The page is stopped while the device runs on; then it looks again.
    async freeze(ms) {
      clocks.mono += ms;
      clocks.wall += ms;
      tick();
      ring();
      paint();
      await device.settle();
    },
    // The device sleeps: the monotonic clock stands still.
    async sleep(ms) {
      clocks.wall += ms;
      await device.freeze(WAKING_MS);
    },
    // Somebody, or the network, sets the wall clock.
    async moveClock(ms) {
      clocks.wall += ms;
      await device.pass(STEP_MS);
    },
    // Behind the app's back, without a look: for a page that comes back from behind another.
    skip(ms) {
      clocks.mono += ms;
      clocks.wall += ms;
    },
    async show(seen) {
      hidden = !seen;
      document.dispatchEvent(new Event("visibilitychange"));
      if (seen) paint();
      await device.settle();
    },
    // "well"; "full": nothing more can be put; "gone": no connection, and none can be opened;
    // "silent": nothing is answered, on the next page neither.
    storage(next) {
      mood = next;
      document.cookie = `device_storage=${next === "silent" ? next : "well"}; path=/`;
    },
    // The browser closes the connections, as it does with pages behind others; they can be opened anew.
    drop() {
      connections.forEach((connection) => connection.close());
      connections.clear();
    },
  } });
})();
