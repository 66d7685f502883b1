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
  // After the page's own callback: what it has drawn, by which clocks.
  const look = () => {
    if (!context) return;
    if (!rail?.host.isConnected) rail = railBelow(document);
    const along = rail?.querySelector(".carriage")?.style.transform.match(/[\d.]+(?=%)/);
    if (!along) return;
    const { contextTime, performanceTime } = context.getOutputTimestamp();
    const now = performance.now();
    frames.push([now, Date.now(), contextTime + (now - performanceTime) / 1000, along / 100, rail.querySelector(".word").textContent]);
  };
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (draw) => ask((time) => {
    draw(time);
    look();
  });
})();
