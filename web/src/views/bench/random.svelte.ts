// A random scramble for the puzzle in hand, perhaps one that meets a condition. The large ones take a while; who does not want to wait
// cancels.

import type { Bench } from "../../bench";
import { isCancelled } from "../../engine/client";
import type { Progress } from "../../engine/types";
import { conventionsOf, freshSeed, puzzleOf } from "../../puzzle";
import { sentenceOf } from "../../trouble";

class Draw {
  working = $state.raw<AbortController | null>(null);
  progress = $state.raw<Progress | null>(null);
  wrong = $state("");
}

export const draw = new Draw();

export async function drawRandom(bench: Bench, condition = "") {
  draw.working?.abort();
  const controller = new AbortController();
  draw.working = controller;
  draw.wrong = "";
  try {
    const { size } = puzzleOf(bench.draft);
    const seed = freshSeed();
    const options = { signal: controller.signal, onProgress: (now: Progress) => (draw.progress = now) };
    const { moves } =
      condition === ""
        ? await bench.engine.ask("random", { size, seed }, options)
        : await bench.engine.ask("conditional", { size, conventions: conventionsOf(bench), condition, seed }, options);
    bench.history.mark();
    bench.draft.set("scramble", moves);
    bench.draft.set("input", "scramble");
    bench.draft.set("origin", condition === "" ? "random" : "lesson");
  } catch (error) {
    if (!isCancelled(error)) draw.wrong = sentenceOf(error);
  } finally {
    if (draw.working === controller) {
      draw.working = null;
      draw.progress = null;
    }
  }
}
