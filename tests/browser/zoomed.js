// What is wrong with the screen as it is in a desk's window at 400 %, 320 by 256 CSS pixels (WCAG 2.2, 1.4.10): text that
// is cut or goes out of sight sideways, what is held in view and hides the rest, buttons that lie on words.
(() => {
  const HELD_AT_MOST = 0.45;
  const SHIFT = 4; // a wall's picture is moved by 3 pixels, to spare the screen
  const SHORT_ENTRY = 8;
  const below = (root) => [...(root.shadowRoot ? below(root.shadowRoot) : []), ...[...root.children].flatMap((each) => [each, ...below(each)])];
  const above = (each) => (each ? [each, ...above(each.assignedSlot ?? each.parentElement ?? each.getRootNode().host)] : []);
  const top = below(document).find((each) => each.localName === "dialog" && each.open) ?? document;
  const seen = below(top).filter((each) => each.checkVisibility({ opacityProperty: true, visibilityProperty: true }))
    .map((each) => ({ each, style: getComputedStyle(each), box: each.getBoundingClientRect() }))
    .filter(({ each, box }) => box.width > 1 && box.height > 1 && !each.closest(".heard-only"));
  const says = ({ each }) => [...each.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.data.trim());
  const named = ({ each }) => `${each.localName}.${each.getAttribute("class") ?? ""} "${each.textContent.trim().slice(0, 30)}"`;
  const told = (fault, isSo) => seen.filter(isSo).map((one) => `${named(one)} ${fault}`);

  const tooNarrow = ({ each }, by) => each.scrollWidth > each.clientWidth + by;
  const scrolls = (one) => /auto|scroll/.test(one.style.overflowX) && tooNarrow(one, 1);
  const clips = ({ overflowX, textOverflow }) => /hidden|clip/.test(overflowX) && textOverflow !== "ellipsis";
  const isCut = (one) => {
    if (one.each.localName === "input") return one.each.value.length <= SHORT_ENTRY && tooNarrow(one, 1);
    if (!says(one)) return false;
    if ((one.each.localName === "button" || clips(one.style)) && tooNarrow(one, SHIFT)) return true;
    const clipping = above(one.each).slice(1).find((each) => clips(getComputedStyle(each)));
    return clipping !== undefined && one.box.right > clipping.getBoundingClientRect().right + SHIFT;
  };
  const leaves = (one) => says(one) && (one.box.left < -1 || one.box.right > innerWidth + SHIFT);
  const isHeld = ({ style }) => /fixed|sticky/.test(style.position);
  const hides = (one) => isHeld(one) && one.box.height > innerHeight * HELD_AT_MOST;

  const held = new Set(seen.filter(isHeld).flatMap(({ each }) => [each, ...below(each)]));
  const visible = ({ each, box }) => above(each).slice(1).filter((other) => getComputedStyle(other).overflowY !== "visible")
    .map((other) => other.getBoundingClientRect()).reduce((a, b) => ({ left: Math.max(a.left, b.left), right: Math.min(a.right, b.right),
      top: Math.max(a.top, b.top), bottom: Math.min(a.bottom, b.bottom) }), box);
  const keys = seen.filter(({ each }) => each.localName === "button" && !held.has(each));
  const words = seen.filter((one) => says(one) && !one.each.closest("button") && !held.has(one.each));
  const shared = (a, b, from, to) => Math.min(a[to], b[to]) - Math.max(a[from], b[from]);
  const lieOver = (a, b) => shared(a, b, "left", "right") > 2 && shared(a, b, "top", "bottom") > 2;
  const covered = keys.flatMap((key) => words.filter((word) => lieOver(key.box, visible(word))).map((word) => `${named(key)} lies on ${named(word)}`));
  return [...told("scrolls sideways", scrolls), ...told("is cut", isCut), ...told("leaves the window", leaves), ...told("hides the rest", hides), ...covered];
})()
