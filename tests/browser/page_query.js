// Runs inside the page under test: finds visible elements by role, name, words or selector, through open shadow
// roots, and reads text as it is composed on screen. The same file serves all three engines.
(() => {
  const ROLES = {
    button: "button, summary, input[type=button], input[type=submit], input[type=reset]",
    link: "a[href]",
    heading: "h1, h2, h3, h4, h5, h6",
    textbox: "textarea, input:not([type]), input[type=text], input[type=email], input[type=url], input[type=tel]",
    searchbox: "input[type=search]",
    spinbutton: "input[type=number]",
    checkbox: "input[type=checkbox]",
    radio: "input[type=radio]",
    slider: "input[type=range]",
    combobox: "select",
    dialog: "dialog",
    img: "img",
    list: "ul, ol",
    listitem: "li",
    main: "main",
    navigation: "nav",
    region: "section[aria-label], section[aria-labelledby]",
    status: "output",
    progressbar: "progress",
  };
  const joined = (text) => text.replace(/\s+/g, " ").trim();

  function* elementsBelow(root) {
    for (const element of root.children) {
      yield element;
      if (element.shadowRoot) yield* elementsBelow(element.shadowRoot);
      yield* elementsBelow(element);
    }
  }

  // The parent on screen: a slotted element's is the slot that shows it.
  const up = (element) => element.assignedSlot ?? element.parentElement ?? element.getRootNode().host;

  const isSeen = (element) =>
    element.getClientRects().length > 0 && element.checkVisibility({ visibilityProperty: true });

  // Hidden from screen readers anywhere up the composed tree: such an element has no role for a person.
  function isAnnounced(element) {
    for (let at = element; at; at = up(at)) {
      if (at.getAttribute("aria-hidden") === "true" || at.inert) return false;
    }
    return true;
  }

  const childrenOf = (node) => {
    if (node.shadowRoot) return node.shadowRoot.childNodes;
    if (node.localName === "slot" && node.assignedNodes().length) return node.assignedNodes();
    return node.childNodes;
  };

  function composedText(node) {
    if (node.nodeType === Node.TEXT_NODE) return node.data.replace(/\s+/g, " ");
    if (node.nodeType !== Node.ELEMENT_NODE && node.nodeType !== Node.DOCUMENT_FRAGMENT_NODE) return "";
    if (["SCRIPT", "STYLE", "TEMPLATE"].includes(node.nodeName)) return "";
    if (node.nodeName === "BR") return "\n";
    const style = node.nodeType === Node.ELEMENT_NODE ? getComputedStyle(node) : null;
    if (style?.display === "none") return "";
    const inside = [...childrenOf(node)].map(composedText).join("");
    const runsOn = !style || /^(inline|contents|ruby)/.test(style.display);
    return runsOn ? inside : `\n${inside}\n`;
  }

  const visibleText = (node) =>
    composedText(node).split("\n").map(joined).filter((line) => line !== "").join("\n");

  function nameOf(element) {
    const from = element.getAttribute("aria-labelledby");
    if (from) {
      const root = element.getRootNode();
      return joined(from.split(/\s+/).map((id) => root.getElementById(id)).filter(Boolean).map(composedText).join(" "));
    }
    const labels = [...(element.labels ?? [])].map(composedText).join(" ");
    const own = element.matches("input, textarea, select, img") ? "" : composedText(element);
    const spoken = [element.getAttribute("aria-label"), labels, element.getAttribute("alt"), own,
      element.matches("input[type=button], input[type=submit], input[type=reset]") ? element.value : "",
      element.getAttribute("title"), element.getAttribute("placeholder")];
    return joined(spoken.find((text) => text && joined(text)) ?? "");
  }

  const hasRole = (element, role) => element.hasAttribute("role")
    ? element.getAttribute("role").split(/\s+/).includes(role)
    : ROLES[role] !== undefined && element.matches(ROLES[role]);

  const agrees = (text, wanted) =>
    typeof wanted === "string" ? text === joined(wanted) : new RegExp(wanted.pattern).test(text);

  function fits(element, wanted) {
    return (wanted.css === undefined || element.matches(wanted.css))
      && (wanted.role === undefined || hasRole(element, wanted.role))
      && isSeen(element)
      && (wanted.role === undefined || isAnnounced(element))
      && (wanted.name === undefined || agrees(nameOf(element), wanted.name))
      && (wanted.words === undefined || agrees(joined(visibleText(element)), wanted.words));
  }

  // The outer element of a pair that both say the words is dropped.
  function innermost(elements) {
    const outer = new Set();
    for (const element of elements) {
      for (let at = up(element); at; at = up(at)) outer.add(at);
    }
    return elements.filter((element) => !outer.has(element));
  }
  function find(wanted) {
    const all = [...elementsBelow(document)].filter((element) => fits(element, wanted));
    const meant = wanted.words !== undefined && wanted.role === undefined && wanted.css === undefined
      ? innermost(all) : all;
    return wanted.index === undefined ? meant : meant.slice(wanted.index, wanted.index + 1);
  }

  return { find, nameOf, visibleText, pageText: () => visibleText(document.body) };
})()
