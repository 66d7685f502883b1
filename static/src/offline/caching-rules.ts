/** Which requests are answered from the cache, and with what. */
import { PrecacheController, PrecacheRoute } from "workbox-precaching";
import { Route, Router } from "workbox-routing";
import { isLater, laterFile } from "./later-files.js";
import { PRECACHE } from "./precache-list.js";
import { isScreen } from "./screens.js";

const SHELL = "/";
/** Keeps every file of the build, in one cache; it is filled when the worker is installed. */
export function precache(): PrecacheController {
  const controller = new PrecacheController();
  controller.addToCacheList([...PRECACHE]);
  return controller;
}

/** The rules: files of the build from the cache, screens with the cached shell, everything else from the network. */
export function rules(kept: PrecacheController): Router {
  const router = new Router();
  router.registerRoute(new PrecacheRoute(kept, { directoryIndex: "", cleanURLs: false }));
  router.registerRoute(new Route(({ url }) => isLater(url), ({ request }) => laterFile(request)));
  const shell = kept.createHandlerBoundToURL(SHELL);
  router.registerRoute(
    new Route(({ url, request, sameOrigin }) => sameOrigin && request.mode === "navigate" && isScreen(url.pathname), shell),
  );
  return router;
}

/** The addresses of the build that the cache cannot answer, whole and with an answer that is well. */
export async function missing(kept: PrecacheController): Promise<string[]> {
  const looks = PRECACHE.map(async ({ url }) => ((await isKept(kept, url)) ? [] : [url]));
  return (await Promise.all(looks)).flat();
}

async function isKept(kept: PrecacheController, url: string): Promise<boolean> {
  try {
    const answer = await kept.matchPrecache(url);
    return answer !== undefined && answer.ok && (await answer.blob()).size > 0;
  } catch {
    return false;
  }
}
