// Written from the Rust side (crates/wasm); a test there fails when this file is stale.

import type { Methods } from "./types";

/** The two modules of the engine: what the first screen needs, and the rest. */
export type ModuleName = "first" | "rest";

/** Which module answers a method. */
export const MODULE_OF: Record<keyof Methods, ModuleName> = {
  about: "first",
  address: "rest",
  amend: "rest",
  begin: "first",
  case: "rest",
  cases: "rest",
  check: "rest",
  code: "rest",
  conditional: "rest",
  conventions: "rest",
  export: "rest",
  find: "rest",
  glossary: "rest",
  import: "rest",
  lesson: "rest",
  lessons: "first",
  link: "rest",
  linked: "rest",
  moment: "first",
  opened: "rest",
  paint: "first",
  picture: "first",
  pictures: "rest",
  play: "first",
  random: "rest",
  renew: "first",
  said: "rest",
  scene: "first",
  sequence: "first",
  texts: "first",
  thread: "first",
  trace: "first",
  turned: "rest",
  why: "rest",
};
