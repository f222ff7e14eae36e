// What the browser keeps. Every call ends well: trouble is told once through `onTrouble`, and the app goes on with what
// it has in memory.

import { type DBSchema, type IDBPDatabase, openDB, type StoreNames } from "idb";

/** The version of every record that is written; a test of the engine holds that it is the engine's. */
export const RECORD_VERSION = 1;

/** What every record has room for. */
interface Versioned {
  /** The version of the record's form; what was written before forms had versions has none. */
  version?: number;
}

/** What a person had before them in one tab. */
export interface DraftRecord extends Versioned {
  tab: string;
  savedAt: number;
  draft: Record<string, string>;
}

/** A named set: conventions as the engine wrote them, and the sheet of algorithms that goes with them. */
export interface SetContent {
  source: string;
  /** As the engine wrote it; sets that were kept before there were sheets have none. */
  sheet?: string;
}

/** `revision` grows with every change, whichever tab makes it. */
export interface SetRecord extends SetContent, Versioned {
  name: string;
  revision: number;
}

interface Schema extends DBSchema {
  drafts: { key: string; value: DraftRecord };
  sets: { key: string; value: SetRecord };
  settings: { key: string; value: { name: string; value: string } & Versioned };
}

/** What could not be kept, and why: `newer` stands for a record that a newer version of the app wrote and that stays as it is. */
export type Trouble = "denied" | "full" | "failed" | "newer";

/** Brings a record into its present form; `null` for one that a newer version wrote, which is left alone. */
export type Renew = (record: "draft" | "set" | "setting", text: string) => Promise<string | null>;

const isNewer = (record: Versioned) => (record.version ?? 0) > RECORD_VERSION;

const NAME = "hoodwink";
const VERSION = 1;

export class Store {
  /** Told when something could not be kept. */
  onTrouble: (trouble: Trouble) => void = () => undefined;
  /** Told when another tab changed a set or a setting. */
  onOtherTab: (what: "sets" | "settings") => void = () => undefined;

  /** Asked for records of another version. */
  renew: Renew = () => Promise.resolve(null);

  #database: IDBPDatabase<Schema> | null = null;
  readonly #channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(NAME);

  /** Opens the store; without one (private windows, settings of the browser) everything lives in memory only. */
  async open() {
    this.#channel?.addEventListener("message", (event: MessageEvent<"sets" | "settings">) =>
      this.onOtherTab(event.data),
    );
    try {
      this.#database = await openDB<Schema>(NAME, VERSION, {
        upgrade(database) {
          database.createObjectStore("drafts", { keyPath: "tab" });
          database.createObjectStore("sets", { keyPath: "name" });
          database.createObjectStore("settings", { keyPath: "name" });
        },
        // A newer version in another tab must not wait for this one.
        blocking: (_now, _next, event) => (event.target as IDBDatabase).close(),
        terminated: () => this.#lose("failed"),
      });
    } catch {
      this.#lose("denied");
    }
  }

  async settings(): Promise<Record<string, string>> {
    const all = await this.#try((database) => database.getAll("settings"));
    const present = await this.present("setting", all ?? []);
    return Object.fromEntries(present.map(({ name, value }) => [name, value]));
  }

  async putSetting(name: string, value: string) {
    const done = await this.#put("settings", name, { version: RECORD_VERSION, name, value });
    if (done) this.#channel?.postMessage("settings");
  }

  async drafts(): Promise<DraftRecord[]> {
    return this.present("draft", (await this.#try((database) => database.getAll("drafts"))) ?? []);
  }

  async putDraft(record: DraftRecord) {
    await this.#put("drafts", record.tab, { ...record, version: RECORD_VERSION });
  }

  /** Whether a newer version of the app kept a tab's draft. */
  async draftIsNewer(tab: string): Promise<boolean> {
    const there = await this.#try((database) => database.get("drafts", tab));
    return there !== null && there !== undefined && isNewer(there);
  }

  async deleteDraft(tab: string) {
    await this.#try((database) => database.delete("drafts", tab));
  }

  async sets(): Promise<SetRecord[]> {
    return this.present("set", (await this.#try((database) => database.getAll("sets"))) ?? []);
  }

  /**
   * Writes a set if it is still at the revision that the caller read; gives the record that is kept now, and whether
   * it is the caller's. `null` when nothing can be kept.
   */
  async putSet(
    name: string,
    readRevision: number,
    content: SetContent,
  ): Promise<{ kept: SetRecord; mine: boolean } | null> {
    const result = await this.#try(async (database) => {
      const transaction = database.transaction("sets", "readwrite");
      const there = await transaction.store.get(name);
      if (there !== undefined && isNewer(there)) {
        await transaction.done;
        this.onTrouble("newer");
        return null;
      }
      if (there !== undefined && there.revision !== readRevision) {
        await transaction.done;
        return { kept: there, mine: false };
      }
      const kept = { version: RECORD_VERSION, name, revision: readRevision + 1, ...content };
      await transaction.store.put(kept);
      await transaction.done;
      return { kept, mine: true };
    });
    if (result?.mine === true) this.#channel?.postMessage("sets");
    return result;
  }

  async deleteSet(name: string) {
    const done = await this.#try(async (database) => {
      await database.delete("sets", name);
      return true;
    });
    if (done === true) this.#channel?.postMessage("sets");
  }

  /** Records in their present form, those of a newer version left out; what is kept stays as it is until it is changed. */
  async present<R extends Versioned>(record: "draft" | "set" | "setting", found: R[]): Promise<R[]> {
    const present: R[] = [];
    for (const one of found) {
      if (one.version === RECORD_VERSION) {
        present.push(one);
        continue;
      }
      const renewed = await this.renew(record, JSON.stringify(one));
      if (renewed !== null) present.push(JSON.parse(renewed) as R);
    }
    return present;
  }

  /** Writes a record unless a newer version's stands in its place; `false` when it was not written. */
  async #put<Name extends StoreNames<Schema>>(store: Name, key: string, record: Schema[Name]["value"]): Promise<boolean> {
    const done = await this.#try(async (database) => {
      const transaction = database.transaction(store, "readwrite");
      const there = await transaction.store.get(key);
      const free = there === undefined || !isNewer(there);
      if (free) await transaction.store.put(record);
      await transaction.done;
      if (!free) this.onTrouble("newer");
      return free;
    });
    return done === true;
  }

  async #try<T>(work: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T | null> {
    if (this.#database === null) return null;
    try {
      return await work(this.#database);
    } catch (error) {
      const full = error instanceof DOMException && error.name === "QuotaExceededError";
      this.onTrouble(full ? "full" : "failed");
      return null;
    }
  }

  #lose(trouble: Trouble) {
    this.#database = null;
    this.onTrouble(trouble);
  }
}
