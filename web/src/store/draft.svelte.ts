// What is before the person in this tab: scramble, memo, typed state … by name. Kept shortly after each change.

import type { DraftRecord, Store } from "./database";
import { keepLastMoment, type Tab } from "./tab";

const DELAY_MS = 250;

export class Draft {
  readonly #fields = $state<Record<string, string>>({});
  readonly #store: Store;
  readonly #tab: string;
  #timer: ReturnType<typeof setTimeout> | null = null;

  constructor(store: Store, tab: Tab) {
    this.#store = store;
    this.#tab = tab.name;
    Object.assign(this.#fields, tab.draft);
    addEventListener("pagehide", () => keepLastMoment(this.#record()));
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") void this.flush();
    });
  }

  get(name: string): string {
    return this.#fields[name] ?? "";
  }

  /** The names of the fields that begin so. */
  names(start: string): string[] {
    return Object.keys(this.#fields).filter((name) => name.startsWith(start));
  }

  set(name: string, value: string) {
    this.#fields[name] = value;
    this.#timer ??= setTimeout(() => void this.flush(), DELAY_MS);
  }

  /** Writes what is not yet kept. */
  async flush() {
    if (this.#timer === null) return;
    clearTimeout(this.#timer);
    this.#timer = null;
    await this.#store.putDraft(this.#record());
  }

  #record(): DraftRecord {
    return { tab: this.#tab, savedAt: Date.now(), draft: $state.snapshot(this.#fields) };
  }
}
