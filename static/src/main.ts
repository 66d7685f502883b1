/** Starts it all: the app on the page, the service worker behind it. */
import "./components/slipway-app.js";
import { register } from "./offline/worker-bridge.js";

document.querySelector("#app")?.append(document.createElement("slipway-app"));
void register();
