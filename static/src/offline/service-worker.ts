/** Keeps the shell, the fonts, the code and the built-in plans, and answers with them when there is no signal.
 *
 * A new version waits until every window of the old one is closed: nothing changes while somebody rows.
 */
import { createHandlerBoundToURL, precacheAndRoute } from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";

declare const self: { __SLIPWAY_PRECACHE: { url: string; revision: string | null }[] };

const SHELL = "/";
const SCREENS = [/^\/$/, /^\/plan\//];

precacheAndRoute(self.__SLIPWAY_PRECACHE);
registerRoute(new NavigationRoute(createHandlerBoundToURL(SHELL), { allowlist: SCREENS }));
