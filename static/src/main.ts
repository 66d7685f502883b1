/** Starts it all: the app on the page, the service worker behind it. */
import { goTo } from "./components/routes.js";
import "./components/slipway-app.js";
import "./components/storage-silence.js";
import { isSound, openSession } from "./data/sessions.js";
import { renewTechnique } from "./data/technique.js";
import { register, savedProof } from "./offline/worker-bridge.js";
import { sessionRunsSomewhere } from "./state/session-lock.js";

const app = document.createElement("slipway-app");
document.querySelector("#app")?.append(document.createElement("storage-silence"), app);
void leadOn().catch(() => undefined);
// The technique library is no part of the first load: it is fetched when the app is kept, or cannot be.
void register()
  .then(savedProof)
  .then(renewTechnique)
  .catch(() => undefined);

/** What led a room when the power went leads it again, though the app was opened at its first screen. */
async function leadOn(): Promise<void> {
  if (location.pathname !== "/") return;
  const open = await openSession();
  const led_by = open && isSound(open) && open.record.led_by;
  if (!led_by || (await sessionRunsSomewhere()) || location.pathname !== "/") return;
  goTo(app, `/${led_by}`);
}
