/** What is kept on the device: the server puts the lists of its build in place of the tokens when it serves /sw.js. */

/** An address; `revision` is null where a change of the file changes the address. */
export interface Kept {
  url: string;
  revision: string | null;
}

declare const self: { __SLIPWAY_PRECACHE: Kept[]; __SLIPWAY_LATER: string[] };

/** Kept before the app counts as saved. */
export const PRECACHE: readonly Kept[] = self.__SLIPWAY_PRECACHE;
/** Addresses kept afterwards; a change of the file changes the address. */
export const LATER: readonly string[] = self.__SLIPWAY_LATER;
