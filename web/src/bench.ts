// What every view works with.

import type { EngineClient } from "./engine/client";
import type { Shelf } from "./engine/documents";
import type { Draft } from "./store/draft.svelte";
import type { History } from "./store/history.svelte";
import type { ConventionSets } from "./store/sets.svelte";
import type { Settings } from "./store/settings.svelte";
import type { Store } from "./store/database";

export interface Bench {
  engine: EngineClient;
  /** What requests are about: the engine is told it once a change. */
  documents: { conventions: Shelf; sheet: Shelf; puzzle: Shelf };
  store: Store;
  settings: Settings;
  draft: Draft;
  sets: ConventionSets;
  /** Undo and redo of the puzzle in hand and the conventions. */
  history: History;
}
