// Written from the Rust side (crates/wasm); a test there fails when this file is stale.

/**
 * Version and languages.
 */
export type About = {
/**
 * Version of the program, as in its manifest.
 */
version: string,
/**
 * The languages that texts and sentences come in.
 */
languages: Array<Language>, };

/**
 * Why a request has no view, said in the language of the request.
 */
export type Failure = {
/**
 * The sentence to show.
 */
sentence: string,
/**
 * Where in the text that was typed, if the trouble has a place there.
 */
place: Place | null, };

/**
 * A language to choose.
 */
export type Language = {
/**
 * Language tag after BCP 47.
 */
code: string,
/**
 * Its name, in itself.
 */
name: string, };

/**
 * Arguments of a method that takes none.
 */
export type Nothing = Record<symbol, never>;

/**
 * A stretch of the text that was typed, in UTF-16 units as a browser counts them; `to` is the first unit after it.
 */
export type Place = {
/**
 * First unit of the stretch.
 */
from: number,
/**
 * First unit after the stretch.
 */
to: number, };

/**
 * How far long work has come.
 */
export type Progress = {
/**
 * Steps done.
 */
done: number,
/**
 * Steps in all, if that is known.
 */
of: number | null, };

/**
 * What the text means.
 */
export type Sequence = {
/**
 * The moves, brackets worked out, in the usual writing.
 */
moves: string,
/**
 * How many moves those are; a turn of the whole cube counts as one.
 */
length: number, };

/**
 * Text by its name.
 */
export type Texts = {
/**
 * The language that the texts are in: the one asked for, or English.
 */
language: string,
/**
 * Every text of the catalogue.
 */
texts: { [key in string]: string }, };

/**
 * A sequence as it was typed.
 */
export type Typed = {
/**
 * Layers of the cube, 2 to 7.
 */
size: number,
/**
 * The text.
 */
text: string, };

/** Everything that can be asked of the engine. */
export interface Methods {
  /** Version of the engine and the languages it speaks. */
  about: { arguments: Nothing; view: About };
  /** Reads a sequence of moves, or says where it is none. */
  sequence: { arguments: Typed; view: Sequence };
  /** Every text of the screens in the language of the request. */
  texts: { arguments: Nothing; view: Texts };
}

/** Name of a text in the catalogue of the screens. */
export type TextName =
  | "algorithms-purpose"
  | "app-name"
  | "app-purpose"
  | "cancel"
  | "cancelled"
  | "check-purpose"
  | "conventions-purpose"
  | "dismiss"
  | "engine-failed-text"
  | "engine-failed-title"
  | "engine-starting"
  | "engine-stopped"
  | "language-name"
  | "lesson-purpose"
  | "motion-less"
  | "motion-system"
  | "nav-algorithms"
  | "nav-check"
  | "nav-conventions"
  | "nav-label"
  | "nav-lesson"
  | "nav-play"
  | "nav-trace"
  | "nav-why"
  | "needs-scripts"
  | "not-found-text"
  | "not-found-title"
  | "offline-ready"
  | "play-purpose"
  | "scramble-empty"
  | "scramble-hint"
  | "scramble-label"
  | "settings"
  | "settings-close"
  | "settings-language"
  | "settings-motion"
  | "settings-theme"
  | "skip-to-content"
  | "store-changed-elsewhere"
  | "store-denied"
  | "store-failed"
  | "store-full"
  | "theme-dark"
  | "theme-light"
  | "theme-system"
  | "trace-purpose"
  | "try-again"
  | "update-later"
  | "update-ready"
  | "update-take"
  | "why-purpose"
  | "working";
