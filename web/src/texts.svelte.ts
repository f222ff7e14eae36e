// Texts of the screens in the chosen language, as the engine gives them.

import { BOOT } from "./engine/boot";
import type { EngineClient } from "./engine/client";
import type { Language, TextName } from "./engine/types";

const state = $state<{ language: string; texts: Record<string, string>; languages: Language[] }>({
  language: "en",
  texts: {},
  languages: [],
});

/** The text of this name. */
export const text = (name: TextName): string => state.texts[name] ?? name;

export const languages = (): readonly Language[] => state.languages;
export const language = (): string => state.language;

/** Texts that exist before the engine does. */
export function bootText(name: keyof (typeof BOOT)["en"], tag: string): string {
  const near = Object.entries(BOOT).find(([code]) => tag.toLowerCase().split("-")[0] === code);
  return (near?.[1] ?? BOOT.en)[name];
}

/** Takes all texts in the language that is nearest to the tag. */
export async function speak(engine: EngineClient, tag: string) {
  engine.language = tag;
  const [about, view] = await Promise.all([engine.ask("about", {}), engine.ask("texts", {}, { topic: "texts" })]);
  engine.language = view.language;
  state.languages = about.languages;
  state.texts = view.texts;
  state.language = view.language;
  document.documentElement.lang = view.language;
}
