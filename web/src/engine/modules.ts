// Written from the Rust side (crates/wasm); a test there fails when this file is stale.

import type { Methods } from "./types";

/** The modules of the engine: what the first screen needs; the rest; what looks into an attempt and draws scrambles. */
export type ModuleName = "first" | "rest" | "deep";

/** Which module answers a method. */
export const MODULE_OF: Record<keyof Methods, ModuleName> = {
  about: "first",
  address: "rest",
  amend: "rest",
  begin: "first",
  case: "rest",
  cases: "rest",
  check: "deep",
  code: "rest",
  conditional: "deep",
  conventions: "rest",
  export: "rest",
  find: "rest",
  glossary: "rest",
  import: "rest",
  lesson: "deep",
  lessons: "deep",
  link: "rest",
  linked: "rest",
  opened: "rest",
  paint: "rest",
  pictures: "rest",
  play: "first",
  random: "deep",
  renew: "rest",
  said: "rest",
  scene: "first",
  sequence: "first",
  texts: "first",
  trace: "first",
  turned: "rest",
  why: "deep",
};
