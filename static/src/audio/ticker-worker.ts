/** Wakes the page up again and again; browsers slow a worker's timer down less than a page's. */
const EVERY_MS = 100;

setInterval(() => postMessage("tick"), EVERY_MS);
