// Which view is shown: the part of the address behind `#`, so that any static host will do.

import type { TextName } from "../engine/types";

export const VIEWS = ["trace", "play", "check", "why", "conventions", "algorithms", "lesson"] as const;
export type View = (typeof VIEWS)[number];

export const titleOf = (view: View): TextName => `nav-${view}`;
export const purposeOf = (view: View): TextName => `${view}-purpose`;
export const addressOf = (view: View): string => `#/${view}`;

export interface Route {
  view: View | null;
  /** What a link carries, such as a scramble: `#/lesson?scramble=…`. */
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
