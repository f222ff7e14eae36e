// What every view works with.

import type { EngineClient } from "./engine/client";
import type { AlgorithmMethods } from "./engine/types";
import type { Draft } from "./store/draft.svelte";
import type { ConventionSets } from "./store/sets.svelte";
import type { Settings } from "./store/settings.svelte";
import type { Store } from "./store/database";

export interface Bench {
  engine: EngineClient;
  /** The half of the engine for sheets of algorithms; it is loaded when it is first asked for. */
  algorithms: () => EngineClient<AlgorithmMethods>;
  store: Store;
  settings: Settings;
  draft: Draft;
  sets: ConventionSets;
}
