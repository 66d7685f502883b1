/** Starts a one-file page: no server and no worker behind it. A session that was left open is gone on with. */
import { AloneApp } from "./components/alone-app.js";
import "./components/later.js";
import { goTo } from "./components/routes.js";
import { StorageSilence } from "./components/storage-silence.js";
import { keepBrought } from "./data/bringing.js";
import { openSession } from "./data/sessions.js";
import { alone } from "./plan/alone.js";

const DAMAGED = "This file is damaged: the plan in it cannot be read. Download it again.";

async function start(): Promise<void> {
  const page = document.querySelector("#app")!;
  if (!alone) return void (page.querySelector("p")!.textContent = DAMAGED);
  page.before(new StorageSilence());
  const app = new AloneApp();
  app.home = await keepBrought(alone);
  page.replaceChildren(app);
  if (await openSession()) goTo(app, "/row");
}

void start();
