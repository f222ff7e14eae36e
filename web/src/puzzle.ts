// The puzzle that is before the person, and the documents that stand for it in requests.

import type { Bench } from "./bench";
import type { EngineDocument } from "./engine/documents";
import type { PuzzleContent, Source } from "./engine/types";
import type { Draft } from "./store/draft.svelte";
import { beginning } from "./texts.svelte";

export function puzzleOf(draft: Draft): PuzzleContent {
  const size = sizeOf(draft.get("size"));
  return {
    size,
    scramble: draft.get("scramble"),
    facelets: draft.get("input") === "colours" ? draft.get(`facelets-${size}`) : "",
    bestHold: { yes: true, no: false }[draft.get("best-hold")] ?? null,
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

/** The size that was chosen, or the usual one where it is none that is offered. */
export const sizeOf = (text: string): number =>
  beginning().sizes.find(({ layers }) => String(layers) === text)?.layers ?? beginning().usual;

/** Whether there is anything to show. */
export const isGiven = (puzzle: PuzzleContent): boolean => puzzle.facelets !== "" || puzzle.scramble.trim() !== "";

/** The field of the draft that keeps letters of a kind. */
export const memoField = (prefix: string, kind: string): string =>
  `${prefix}-${{ corner: "corners", edge: "edges" }[kind] ?? kind}`;

/** A seed that nobody can foresee. */
export function freshSeed(): [number, number] {
  const [high = 0, low = 0] = crypto.getRandomValues(new Uint32Array(2));
  return [high, low];
}
