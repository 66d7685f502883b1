// Keeps the practice page; every path opens it.
const FILES = ["/", "/page.js", "/page.css"];

addEventListener("install", (event) =>
  event.waitUntil(caches.open("practice").then((cache) => cache.addAll(FILES)).then(() => skipWaiting())));
addEventListener("activate", (event) => event.waitUntil(clients.claim()));
addEventListener("fetch", (event) => {
  const wanted = event.request.mode === "navigate" ? "/" : event.request;
  event.respondWith(caches.match(wanted).then((kept) => kept ?? fetch(event.request)));
});
