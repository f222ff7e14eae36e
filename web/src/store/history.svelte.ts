// Undo and redo of what is in hand: the puzzle and the conventions. What the person typed is kept in the draft; here stand the states
// before, as long as the tab is open.

import type { Draft } from "./draft.svelte";
import type { ConventionSets } from "./sets.svelte";

/** The fields of the draft that say what is in hand; those of colours have the size behind. */
const FIELDS = ["size", "scramble", "input", "best-hold", "origin"];
const BY_SIZE = "facelets-";
const MOST = 100;
/** Changes of one field that follow each other so quickly are one. */
const TOGETHER_MS = 1500;

interface Snapshot {
  fields: Record<string, string>;
  set: string;
  source: string;
  sheet: string;
}

export class History {
  #past = $state.raw<readonly Snapshot[]>([]);
  #future = $state.raw<readonly Snapshot[]>([]);
  readonly #draft: Draft;
  readonly #sets: ConventionSets;
  #last = { topic: "", at: 0 };

  constructor(draft: Draft, sets: ConventionSets) {
    this.#draft = draft;
    this.#sets = sets;
    // Each choice is a step of its own, however quickly it follows.
    sets.onBefore = () => this.mark();
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /** Remembers what is in hand, just before it is changed. Quick changes of one topic are one step. */
  mark(topic = "") {
    const now = performance.now();
    const together = topic !== "" && topic === this.#last.topic && now - this.#last.at < TOGETHER_MS;
    this.#last = { topic, at: now };
    if (together) return;
    this.#past = [...this.#past, this.#snapshot()].slice(-MOST);
    this.#future = [];
  }

  undo(): boolean {
    return this.#go(this.#past, (past) => {
      this.#past = past;
      this.#future = [...this.#future, this.#snapshot()];
    });
  }

  redo(): boolean {
    return this.#go(this.#future, (future) => {
      this.#future = future;
      this.#past = [...this.#past, this.#snapshot()];
    });
  }

  #go(from: readonly Snapshot[], remember: (rest: readonly Snapshot[]) => void): boolean {
    const to = from.at(-1);
    if (to === undefined) return false;
    remember(from.slice(0, -1));
    this.#last = { topic: "", at: 0 };
    const named = new Set([...Object.keys(to.fields), ...this.#draft.names(BY_SIZE)]);
    for (const name of named) this.#draft.set(name, to.fields[name] ?? "");
    this.#sets.restore(to.set, { source: to.source, sheet: to.sheet });
    return true;
  }

  #snapshot(): Snapshot {
    const names = [...FIELDS, ...this.#draft.names(BY_SIZE)];
    return {
      fields: Object.fromEntries(names.map((name) => [name, this.#draft.get(name)])),
      set: this.#sets.name,
      source: this.#sets.source,
      sheet: this.#sets.sheet,
    };
  }
}
