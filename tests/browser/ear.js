// What is said by itself to those who hear the screen: the words of each live region whenever they are others.
(() => {
  const LIVE = "[role=status], [role=alert], [role=log], [role=timer], [aria-live]";
  const heard = [];
  const last = new WeakMap();
  Object.defineProperty(window, "heardByTests", { value: heard });

  const regionOf = (node) => {
    for (let at = node; at; at = at.parentNode ?? at.host) if (at instanceof Element && at.matches(LIVE)) return at;
    return null;
  };
  const isSilent = (region) => {
    const live = region.getAttribute("aria-live") ?? (region.getAttribute("role") === "timer" ? "off" : "polite");
    return live === "off" || !region.checkVisibility();
  };
  const tell = (region) => {
    const words = region.textContent.replace(/\s+/g, " ").trim();
    if (!words || isSilent(region) || last.get(region) === words) return;
    last.set(region, words);
    heard.push(words);
  };
  const listen = (root) => new MutationObserver((records) => {
    const regions = records.flatMap(({ target, addedNodes }) => [regionOf(target),
      ...[...addedNodes].flatMap((node) => (node instanceof Element ? [regionOf(node), ...node.querySelectorAll(LIVE)] : []))]);
    new Set(regions.filter(Boolean)).forEach(tell);
  }).observe(root, { subtree: true, childList: true, characterData: true });

  listen(document);
  const { attachShadow } = Element.prototype;
  Element.prototype.attachShadow = function (...given) {
    const root = attachShadow.apply(this, given);
    listen(root);
    return root;
  };
})();
