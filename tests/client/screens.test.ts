/** Which addresses the kept shell answers. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { routeOf, rowAddress } from "../../static/src/components/routes.js";
import { isScreen } from "../../static/src/offline/screens.js";

test("every screen has its address, and no file or answer of the server is taken for one", () => {
  for (const path of ["/", "/plan/rate-ladder", "/mine/abc", "/row", "/write", "/technique", "/athlete", "/settings", "/log", "/p", "/p/mfrggzdfmztwq2lk", "/walls", "/wall/mfrggzdfmztwq2lk"]) assert.ok(isScreen(path), path);
  for (const path of ["/api/plans", "/static/dist/main.js", "/healthz", "/rowing", "/sw.js", "/p/mfrggzdfmztwq2lk/qr.svg", "/plans"]) assert.ok(!isScreen(path), path);
});

test("where a plan is rowed is a screen, with the plan asked for behind its path", () => {
  const address = new URL(rowAddress("mine", "a plan"), "http://127.0.0.1");
  assert.ok(isScreen(address.pathname));
  assert.deepEqual(routeOf(address), { screen: "row", source: "mine", name: "a plan" });
});
