// Where one is: the part of the address behind `#`, so that any static host will do. A place has one or more views; those of the
// bench are the lenses on the puzzle in hand.

import type { TextName } from "../engine/types";

export const LENSES = ["trace", "play", "check", "why"] as const;
export type Lens = (typeof LENSES)[number];
export const VIEWS = [...LENSES, "lesson", "conventions", "algorithms"] as const;
export type View = (typeof VIEWS)[number];

/** The places that hold something, each with its views, the first of them where one arrives. */
export const PLACES = [
  { name: "bench", views: LENSES },
  { name: "teach", views: ["lesson"] },
  { name: "collection", views: ["conventions", "algorithms"] },
] as const satisfies readonly { name: string; views: readonly View[] }[];

export const isLens = (view: View | null): view is Lens => LENSES.some((lens) => lens === view);
export const lensName = (lens: Lens): TextName => `lens-${lens}`;
export const titleOf = (view: View): TextName => (isLens(view) ? lensName(view) : `nav-${view}`);
export const addressOf = (view: View): string => `#/${view}`;

export interface Route {
  view: View | null;
  /** What a link carries, such as a scramble: `#/trace?moment=…`. */
  carried: URLSearchParams;
}

/** Reads an address; nothing behind `#` means the first view. */
export function readRoute(hash: string): Route {
  const [path = "", query = ""] = hash.replace(/^#\/?/, "").split("?", 2);
  const view = path === "" ? VIEWS[0] : (VIEWS.find((name) => name === path) ?? null);
  return { view, carried: new URLSearchParams(query) };
}

let current = $state.raw<Route>(readRoute(location.hash));
addEventListener("hashchange", () => {
  current = readRoute(location.hash);
});

export const route = (): Route => current;

/** Takes what a link carried out of the address, once it was taken over: going on from here must not bring it back. */
export function dropCarried() {
  if (current.view === null || current.carried.size === 0) return;
  history.replaceState(history.state, "", addressOf(current.view));
  current = readRoute(location.hash);
}
