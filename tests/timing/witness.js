// Runs before the page's own code: notes when each sound is put on the audio clock, and what each frame shows.
(() => {
  const sounds = [];
  const frames = [];
  const noted = new WeakMap();
  let context;
  let rail;
  Object.assign(window, { soundsSeenByTests: sounds, framesSeenByTests: frames });

  const audible = (node) => node.context instanceof AudioContext && node.frequency?.value > 100;
  const { start, stop } = AudioScheduledSourceNode.prototype;
  AudioScheduledSourceNode.prototype.start = function (at = 0, ...more) {
    if (audible(this)) {
      context = this.context;
      noted.set(this, { at });
      sounds.push(noted.get(this));
    }
    return start.call(this, at, ...more);
  };
  AudioScheduledSourceNode.prototype.stop = function (...given) {
    const sound = noted.get(this);
    if (sound && !given.length && sound.at > this.context.currentTime) sounds.splice(sounds.indexOf(sound), 1);
    return stop.apply(this, given);
  };

  const railBelow = (root) => {
    for (const element of root.querySelectorAll("*")) {
      if (element.localName === "stroke-rail") return element.shadowRoot;
      const found = element.shadowRoot && railBelow(element.shadowRoot);
      if (found) return found;
    }
  };
  // What the page shows in each frame, by which clocks. The frame's own time is that of what moves by itself.
  const look = () => {
    requestAnimationFrame(look);
    if (!context) return;
    if (!rail?.host.isConnected) rail = railBelow(document);
    const carriage = rail?.querySelector(".carriage");
    if (!carriage) return;
    const frame = document.timeline.currentTime;
    const { contextTime, performanceTime } = context.getOutputTimestamp();
    const along = new DOMMatrix(getComputedStyle(carriage).transform).e / carriage.offsetWidth;
    const word = rail.querySelector(".word").textContent;
    frames.push([frame, Date.now() + frame - performance.now(), contextTime + (frame - performanceTime) / 1000, along, word]);
  };
  requestAnimationFrame(look);
})();
