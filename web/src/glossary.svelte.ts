// Words of the trade, told when they are touched. They are in the module that is fetched later; until then they are plain words.

import type { EngineClient } from "./engine/client";
import type { WordSaid } from "./engine/types";

const state = $state<{ words: readonly WordSaid[]; asked: WordSaid | null }>({ words: [], asked: null });

export const askedWord = (): WordSaid | null => state.asked;

export function askWord(word: WordSaid | null) {
  state.asked = word;
}

/** Takes the words of the present language. */
export async function learnWords(engine: EngineClient) {
  state.words = await engine.ask("glossary", {}, { topic: "glossary" });
}

/** A sentence in pieces: each word of the trade, where it is met first, is a piece of its own. */
export function pieces(sentence: string): { text: string; word: WordSaid | null }[] {
  const met: { from: number; to: number; word: WordSaid }[] = [];
  for (const word of state.words) {
    const found = word.forms
      .map((form) => ({ form, from: place(sentence, form) }))
      .filter(({ from }) => from >= 0)
      .sort((a, b) => a.from - b.from || b.form.length - a.form.length)[0];
    if (found !== undefined) met.push({ from: found.from, to: found.from + found.form.length, word });
  }
  // Of two that overlap the longer one is meant: "new cycle" and not "cycle".
  met.sort((a, b) => a.from - b.from || b.to - a.to);
  const all: { text: string; word: WordSaid | null }[] = [];
  let at = 0;
  for (const { from, to, word } of met) {
    if (from < at) continue;
    if (from > at) all.push({ text: sentence.slice(at, from), word: null });
    all.push({ text: sentence.slice(from, to), word });
    at = to;
  }
  if (at < sentence.length) all.push({ text: sentence.slice(at), word: null });
  return all;
}

const isLetter = (sign: string | undefined): boolean => sign !== undefined && /[\p{L}\p{N}-]/u.test(sign);

/** Where a form stands as a whole word, or -1. */
function place(sentence: string, form: string): number {
  const within = sentence.toLowerCase();
  const wanted = form.toLowerCase();
  for (let from = within.indexOf(wanted); from >= 0; from = within.indexOf(wanted, from + 1)) {
    if (!isLetter(sentence[from - 1]) && !isLetter(sentence[from + form.length])) return from;
  }
  return -1;
}
