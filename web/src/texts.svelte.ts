// Texts of the screens in the chosen language, as the engine gives them.

import { BOOT } from "./engine/boot";
import type { EngineClient } from "./engine/client";
import type { Beginning, Language, TextName } from "./engine/types";

const state = $state<{
  language: string;
  texts: Record<string, string>;
  languages: Language[];
  beginning: Beginning | null;
}>({
  language: "en",
  texts: {},
  languages: [],
  beginning: null,
});

/** The text of this name. */
export const text = (name: TextName): string => state.texts[name] ?? name;

export const languages = (): readonly Language[] => state.languages;
export const language = (): string => state.language;

/** What the bench begins with: sizes, bounds, the puzzle of a first visit. */
export function beginning(): Beginning {
  if (state.beginning === null) throw new Error("the engine was not asked yet");
  return state.beginning;
}

/** Texts that exist before the engine does. */
export function bootText(name: keyof (typeof BOOT)["en"], tag: string): string {
  const near = Object.entries(BOOT).find(([code]) => tag.toLowerCase().split("-")[0] === code);
  return (near?.[1] ?? BOOT.en)[name];
}

/** Takes all texts in the language that is nearest to the tag. */
export async function speak(engine: EngineClient, tag: string) {
  engine.language = tag;
  const [about, view, begin] = await Promise.all([
    engine.ask("about", {}),
    engine.ask("texts", {}, { topic: "texts" }),
    engine.ask("begin", {}, { topic: "begin" }),
  ]);
  engine.language = view.language;
  state.beginning = begin;
  state.languages = about.languages;
  state.texts = view.texts;
  state.language = view.language;
  document.documentElement.lang = view.language;
}
