/** The page's side of the service worker. */

const SCRIPT = "/sw.js";

interface ScriptPolicy {
  createScriptURL(url: string): string;
}
declare const trustedTypes: { createPolicy(name: string, rules: ScriptPolicy): ScriptPolicy } | undefined;

/** Has the service worker keep what is needed with no signal; does nothing where there is no secure context. */
export async function keepOffline(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  await navigator.serviceWorker.register(scriptUrl(), { updateViaCache: "none" });
}

/** Trusted Types let a script's address through only as made by a named policy; ours knows one address. */
function scriptUrl(): string {
  const known = typeof trustedTypes === "undefined" ? undefined : trustedTypes;
  return known ? known.createPolicy("slipway", { createScriptURL: () => SCRIPT }).createScriptURL(SCRIPT) : SCRIPT;
}
