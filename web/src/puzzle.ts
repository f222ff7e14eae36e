// The puzzle that is before the person, as requests name it.

import type { Bench } from "./bench";
import type { Source } from "./engine/types";

export function sourceOf({ draft, sets }: Bench): Source {
  const size = sizeOf(draft.get("size"));
  return {
    size,
    conventions: sets.source,
    scramble: draft.get("scramble"),
    facelets: draft.get("input") === "colours" ? draft.get(`facelets-${size}`) : "",
    bestHold: size === 2 && draft.get("best-hold") === "yes",
    sheet: size === 3 ? sets.sheet : "",
  };
}

export const sizeOf = (text: string): number => (text === "2" ? 2 : 3);

/** Whether there is anything to show. */
export const isGiven = (source: Source): boolean => source.facelets !== "" || source.scramble.trim() !== "";

/** A seed that nobody can foresee. */
export function freshSeed(): [number, number] {
  const [high = 0, low = 0] = crypto.getRandomValues(new Uint32Array(2));
  return [high, low];
}
