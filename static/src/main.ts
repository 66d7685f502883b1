/** Starts it all: the app on the page, the service worker behind it. */
import "./components/slipway-app.js";
import { renewTechnique } from "./data/technique.js";
import { register, savedProof } from "./offline/worker-bridge.js";

document.querySelector("#app")?.append(document.createElement("slipway-app"));
// The technique library is no part of the first load: it is fetched when the app is kept, or cannot be.
void register()
  .then(savedProof)
  .then(renewTechnique)
  .catch(() => undefined);
