// Named sets of conventions, and the one this tab works with. Each set is the text of a conventions file and that of a sheet
// of algorithms; what they mean is the engine's business.

import { notify } from "../shell/notices.svelte";
import { text } from "../texts.svelte";
import type { SetContent, SetRecord, Store } from "./database";
import type { Draft } from "./draft.svelte";

export class ConventionSets {
  /** Called just before what holds in this tab is changed. */
  onBefore: () => void = () => undefined;

  #kept = $state.raw<readonly SetRecord[]>([]);
  readonly #store: Store;
  readonly #draft: Draft;
  /** Writes go one after another, so that each knows the revision before it. */
  #queue: Promise<void> = Promise.resolve();

  constructor(store: Store, draft: Draft) {
    this.#store = store;
    this.#draft = draft;
  }

  /**
   * The revision of the chosen set that this tab has read or written last. It stands in the draft, beside what it is the revision
   * of: a tab that is loaded again goes on with what it had, and must not pass it for something newer.
   */
  get #revision(): number {
    return Number(this.#draft.get("set-revision")) || 0;
  }

  set #revision(revision: number) {
    this.#draft.set("set-revision", String(revision));
  }

  /** Names of all sets that are kept. */
  get names(): string[] {
    return this.#kept.map(({ name }) => name).sort((a, b) => a.localeCompare(b));
  }

  /** The chosen set; empty for the usual conventions. */
  get name(): string {
    return this.#draft.get("set");
  }

  /** The conventions that hold in this tab, as a file; empty for the usual ones. */
  get source(): string {
    return this.#draft.get("conventions");
  }

  /** The sheet of algorithms that goes with them, as the engine wrote it; empty for none. */
  get sheet(): string {
    return this.#draft.get("sheet");
  }

  /** Reads what is kept; what this tab works with stays as it is. */
  async load() {
    this.#kept = await this.#store.sets();
    // Drafts of before there were revisions in them.
    if (this.#draft.get("set-revision") === "") {
      this.#revision = this.#kept.find(({ name }) => name === this.name)?.revision ?? 0;
    }
  }

  choose(name: string) {
    this.onBefore();
    this.#choose(name);
  }

  /** Brings back what held in this tab before; nobody is asked about that. */
  restore(name: string, content: { source: string; sheet: string }) {
    if (name === this.name && content.source === this.source && content.sheet === this.sheet) return;
    this.#choose(name);
    if (name === "" || (content.source === this.source && content.sheet === this.sheet)) return;
    this.#work(content);
    // A set that was deleted meanwhile begins anew.
    if (this.name === "") this.#begin(this.#free(name), content);
    else this.#keep(content);
  }

  #choose(name: string) {
    const record = this.#kept.find((set) => set.name === name);
    this.#revision = record?.revision ?? 0;
    this.#draft.set("set", record?.name ?? "");
    this.#draft.set("conventions", record?.source ?? "");
    this.#draft.set("sheet", record?.sheet ?? "");
  }

  /** Takes changed conventions; the first change of the usual ones begins a set. */
  change(source: string) {
    this.#change({ source, sheet: this.sheet });
  }

  /** Takes a changed sheet. */
  changeSheet(sheet: string) {
    this.#change({ source: this.source, sheet });
  }

  /** Keeps conventions and a sheet under a new name and goes on with that set. */
  saveAs(name: string, source: string, sheet: string) {
    const wanted = name.trim();
    if (wanted === "") return;
    this.onBefore();
    this.#work({ source, sheet });
    this.#begin(this.#free(wanted), { source, sheet });
  }

  remove() {
    const { name } = this;
    this.onBefore();
    this.#kept = this.#kept.filter((set) => set.name !== name);
    this.#choose("");
    this.#queue = this.#queue.then(() => this.#store.deleteSet(name));
  }

  #change(content: SetContent) {
    this.onBefore();
    this.#work(content);
    if (this.name === "") this.#begin(this.#free(text("set-own")), content);
    else this.#keep(content);
  }

  #work({ source, sheet }: SetContent) {
    this.#draft.set("conventions", source);
    this.#draft.set("sheet", sheet ?? "");
  }

  #begin(name: string, content: SetContent) {
    this.#revision = 0;
    this.#draft.set("set", name);
    this.#keep(content);
  }

  #keep(content: SetContent) {
    const { name } = this;
    this.#note({ name, revision: this.#revision, ...content });
    this.#queue = this.#queue.then(async () => {
      const result = await this.#store.putSet(name, this.#revision, content);
      if (result === null) return;
      if (result.mine) {
        this.#revision = result.kept.revision;
        this.#note(result.kept);
        return;
      }
      // Another tab wrote this set in between: both are kept.
      this.#note(result.kept);
      notify({ name: "store-changed-elsewhere" });
      if (this.name === name) this.#begin(this.#free(name), content);
    });
  }

  #note(record: SetRecord) {
    this.#kept = [...this.#kept.filter(({ name }) => name !== record.name), record];
  }

  /** A name that no set has yet. */
  #free(name: string): string {
    const taken = new Set(this.#kept.map((set) => set.name));
    let free = name;
    for (let number = 2; taken.has(free); number += 1) free = `${name} ${number}`;
    return free;
  }
}
