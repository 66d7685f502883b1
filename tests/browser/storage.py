"""What tests do to what a browser has stored, behind the app's back and where the app does not run."""

from __future__ import annotations

from typing import Any

from tests.browser.app_server import Server
from tests.browser.engines import Browser

HOLDS_SOMETHING = """(store, name = "slipway") => new Promise((done, failed) => {
  const opening = indexedDB.open(name);
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const counting = opening.result.transaction(store).objectStore(store).count();
    counting.onerror = () => failed(counting.error);
    counting.onsuccess = () => { opening.result.close(); done(counting.result > 0); };
  };
})"""

HOLDS_NOTHING = f"(store) => ({HOLDS_SOMETHING})(store).then((holds) => !holds)"
FACTS_STORED = """(kind, count) => new Promise((done, failed) => {
  const opening = indexedDB.open("slipway");
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const reading = opening.result.transaction("facts").objectStore("facts").getAll();
    reading.onerror = () => failed(reading.error);
    reading.onsuccess = () => {
      opening.result.close();
      done(reading.result.filter(({ fact }) => fact.kind === kind).length === count);
    };
  };
})"""
"""Whether so many facts of a kind are stored, of all sessions together."""


def change_stored(browser: Browser, server: Server, store: str, change: str) -> None:
    """Change every record of a store, once there is one, by a JavaScript function; leaves the app."""
    browser.wait_for(HOLDS_SOMETHING, store)
    browser.open(server.url + "/healthz")
    browser.evaluate(
        f"""(store) => new Promise((done, failed) => {{
          const change = {change};
          const opening = indexedDB.open("slipway");
          opening.onerror = () => failed(opening.error);
          opening.onsuccess = () => {{
            const transaction = opening.result.transaction(store, "readwrite");
            transaction.objectStore(store).openCursor().onsuccess = ({{ target: {{ result: cursor }} }}) => {{
              if (!cursor) return;
              const record = cursor.value;
              change(record);
              cursor.update(record);
              cursor.continue();
            }};
            transaction.oncomplete = () => {{ opening.result.close(); done(true); }};
            transaction.onerror = () => failed(transaction.error);
          }};
        }})""",
        store,
    )


class NoDatabaseError(AssertionError):
    """The browser has no database of the app."""


def stored(browser: Browser, store: str) -> list[Any]:
    """Every record of a store, as any page of the app can read it; NoDatabaseError where there is none."""
    found = browser.evaluate(
        """(store) => new Promise((done, failed) => {
          const opening = indexedDB.open("slipway");
          let isNew = false;
          opening.onupgradeneeded = () => {
            isNew = true;
            opening.transaction.abort();
          };
          opening.onerror = () => (isNew ? done(null) : failed(opening.error));
          opening.onsuccess = () => {
            const reading = opening.result.transaction(store).objectStore(store).getAll();
            reading.onerror = () => failed(reading.error);
            reading.onsuccess = () => { opening.result.close(); done(reading.result); };
          };
        })""",
        store,
    )
    if found is None:
        raise NoDatabaseError(f"{browser.name} has no database of the app")
    return list(found)


def clear_stored(browser: Browser, stores: list[str]) -> None:
    """Empty some stores of the page's origin; to be asked where the app does not run."""
    browser.evaluate(
        """(stores) => new Promise((done, failed) => {
          const opening = indexedDB.open("slipway");
          opening.onerror = () => failed(opening.error);
          opening.onsuccess = () => {
            const transaction = opening.result.transaction(stores, "readwrite");
            stores.forEach((store) => transaction.objectStore(store).clear());
            transaction.oncomplete = () => { opening.result.close(); done(true); };
            transaction.onerror = () => failed(transaction.error);
          };
        })""",
        stores,
    )
