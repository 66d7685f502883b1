// A component with an open shadow root that keeps a count for each path in IndexedDB; a service worker keeps the page.
const opened = new Promise((resolve, reject) => {
  const request = indexedDB.open("practice", 1);
  request.onupgradeneeded = () => request.result.createObjectStore("counts");
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

async function counted(step) {
  const transaction = (await opened).transaction("counts", "readwrite", { durability: "strict" });
  const counts = transaction.objectStore("counts");
  return new Promise((resolve) => {
    let count = 0;
    counts.get(location.pathname).onsuccess = (event) => {
      count = (event.target.result ?? 0) + step;
      counts.put(count, location.pathname);
    };
    transaction.oncomplete = () => resolve(count);
  });
}

const made = (name, properties = {}, ...inside) => {
  const element = Object.assign(document.createElement(name), properties);
  element.append(...inside);
  return element;
};

customElements.define("tally-box", class extends HTMLElement {
  connectedCallback() {
    const count = made("output", { id: "count" });
    const note = made("input", { id: "note" });
    const echo = made("p", { id: "echo" });
    const show = async (step) => { count.textContent = String(await counted(step)); };
    const root = this.attachShadow({ mode: "open" });
    root.append(
      made("p", {}, count, " ", made("slot")),
      made("button", { onclick: () => show(1) }, "Take a stroke"),
      made("label", { htmlFor: "note" }, "Note"),
      note,
      echo,
    );
    note.oninput = () => { echo.textContent = `You wrote ${note.value}`; };
    root.addEventListener("keydown", (event) => {
      if (event.key === "Escape") echo.textContent = "Escaped";
    });
    show(0);
  }
});

function goWrong() {
  document.body.setAttribute("style", "color: red");
  Promise.reject(new Error("missed the start"));
  throw new Error("caught a crab");
}
document.querySelector("main").append(made("button", { onclick: goWrong }, "Go wrong"));

const worker = trustedTypes.createPolicy("worker", { createScriptURL: (url) => url });
await navigator.serviceWorker.register(worker.createScriptURL("/service-worker.js"));
await navigator.serviceWorker.ready;
document.documentElement.dataset.kept = "yes";
