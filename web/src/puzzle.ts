// The puzzle that is before the person, and the documents that stand for it in requests.

import type { Bench } from "./bench";
import type { EngineDocument } from "./engine/documents";
import type { PuzzleContent, Source } from "./engine/types";

/** Layers of the cubes that views are made for, the usual one first: memos are shown of all of these, typed ones looked at of some. */
export type Layers = 2 | 3 | 4;
export const SHOWN: readonly Layers[] = [3, 2, 4];
export const LOOKED_AT: readonly Layers[] = [3, 2];

export function puzzleOf({ draft }: Bench, sizes = LOOKED_AT): PuzzleContent {
  const size = sizeOf(draft.get("size"), sizes);
  return {
    size,
    scramble: draft.get("scramble"),
    facelets: draft.get("input") === "colours" ? draft.get(`facelets-${size}`) : "",
    bestHold: hasBestHold(size) && draft.get("best-hold") === "yes",
  };
}

/** A puzzle under the conventions and with the sheet of this tab, or under others without a sheet. */
export function sourceOf(bench: Bench, puzzle: PuzzleContent, conventions?: string): Source {
  const { documents, sets } = bench;
  return {
    puzzle: documents.puzzle.of(JSON.stringify(puzzle)),
    conventions: documents.conventions.of(conventions ?? sets.source),
    sheet: conventions === undefined ? sheetOf(bench) : null,
  };
}

/** The conventions that hold in this tab. */
export const conventionsOf = ({ documents, sets }: Bench): EngineDocument => documents.conventions.of(sets.source);

/** The sheet of this tab, if there is one. */
export const sheetOf = ({ documents, sets }: Bench): EngineDocument | null =>
  sets.sheet === "" ? null : documents.sheet.of(sets.sheet);

/** The size that was chosen, or the usual one where a view is not made for that. */
export const sizeOf = (text: string, sizes = LOOKED_AT): Layers =>
  sizes.find((layers) => String(layers) === text) ?? sizes[0] ?? 3;

/** Whether the way to hold it is free: no centre is fixed. */
export const hasBestHold = (size: number): boolean => size % 2 === 0;

/** Whether there is anything to show. */
export const isGiven = (puzzle: PuzzleContent): boolean => puzzle.facelets !== "" || puzzle.scramble.trim() !== "";

/** A seed that nobody can foresee. */
export function freshSeed(): [number, number] {
  const [high = 0, low = 0] = crypto.getRandomValues(new Uint32Array(2));
  return [high, low];
}
