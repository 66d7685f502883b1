/** What is kept on the device: the server puts the list of its build in place of the token when it serves /sw.js. */

/** An address; `revision` is null where a change of the file changes the address. */
export interface Kept {
  url: string;
  revision: string | null;
}

declare const self: { __SLIPWAY_PRECACHE: Kept[] };

export const PRECACHE: readonly Kept[] = self.__SLIPWAY_PRECACHE;
