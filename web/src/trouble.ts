// What is said when the engine has no view to give.

import { EngineNotLoaded, EngineStopped, Refusal } from "./engine/client";
import { text } from "./texts.svelte";

/** The sentence to show; none for what is no matter of the engine. */
export function sentenceOf(error: unknown): string {
  if (error instanceof Refusal) return error.message;
  if (error instanceof EngineNotLoaded) return text("part-not-loaded");
  if (error instanceof EngineStopped) return text("engine-stopped");
  return "";
}
