/** The worker behind ticker.ts: a message sets how many milliseconds lie between two ticks. */
export {};

let timer: ReturnType<typeof setInterval> | undefined;

self.onmessage = (event: MessageEvent<number>) => {
  clearInterval(timer);
  timer = setInterval(() => self.postMessage("tick"), event.data);
};
