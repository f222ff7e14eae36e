// Which tab this is. Each tab keeps its own draft, so that two tabs never write over each other's.

import { type DraftRecord, RECORD_VERSION, type Store } from "./database";

const KEY = "hoodwink-tab";
const LAST = "hoodwink-last-moment";

/** The name of this tab and the draft that it goes on with. */
export interface Tab {
  name: string;
  draft: Record<string, string>;
}

/**
 * Finds this tab's draft: its own after a reload; in a copied tab, a copy; in a new tab, that of the tab closed last.
 */
export async function openTab(store: Store): Promise<Tab> {
  const drafts = withLastMoment(await store.drafts(), await lastMoment(store));
  const before = remembered();
  // A tab whose draft a newer version wrote goes on under a new name, so that what it types is kept.
  if (before !== null && !(await store.draftIsNewer(before)) && (await claim(before))) {
    return { name: before, draft: draftOf(drafts, before) };
  }
  const name = crypto.randomUUID();
  await claim(name);
  remember(name);
  // `before` is set here when the browser copied the tab together with its memory.
  if (before !== null) return { name, draft: draftOf(drafts, before) };
  const open = await openTabs();
  const closed = drafts.filter((record) => !open.has(lockName(record.tab)));
  closed.sort((a, b) => b.savedAt - a.savedAt);
  const [last, ...older] = closed;
  for (const record of older) await store.deleteDraft(record.tab);
  return { name, draft: last?.draft ?? {} };
}

const draftOf = (drafts: DraftRecord[], tab: string) => drafts.find((record) => record.tab === tab)?.draft ?? {};

/**
 * Keeps a draft at the moment its page goes. Only the tab's own memory is written before the page is gone; what is begun
 * in the database then may never be finished.
 */
export function keepLastMoment(record: DraftRecord) {
  try {
    sessionStorage.setItem(LAST, JSON.stringify({ ...record, version: RECORD_VERSION }));
  } catch {
    // Denied or full: the database has all but the last quarter of a second.
  }
}

async function lastMoment(store: Store): Promise<DraftRecord | null> {
  try {
    const kept = sessionStorage.getItem(LAST);
    if (kept === null) return null;
    sessionStorage.removeItem(LAST);
    const [last] = await store.present("draft", [JSON.parse(kept) as DraftRecord]);
    return last ?? null;
  } catch {
    return null;
  }
}

function withLastMoment(drafts: DraftRecord[], last: DraftRecord | null): DraftRecord[] {
  if (last === null) return drafts;
  const newer = drafts.some(({ tab, savedAt }) => tab === last.tab && savedAt > last.savedAt);
  return newer ? drafts : [...drafts.filter(({ tab }) => tab !== last.tab), last];
}

const lockName = (tab: string) => `hoodwink tab ${tab}`;

/** Holds the tab's lock until the page goes; `false` when another page holds it. */
function claim(tab: string): Promise<boolean> {
  if (!("locks" in navigator)) return Promise.resolve(true);
  return new Promise((resolve) => {
    navigator.locks
      .request(lockName(tab), { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        return lock === null ? undefined : new Promise(() => undefined);
      })
      .catch(() => resolve(true));
  });
}

async function openTabs(): Promise<Set<string>> {
  if (!("locks" in navigator)) return new Set();
  const { held } = await navigator.locks.query();
  return new Set((held ?? []).map((lock) => lock.name ?? ""));
}

function remembered(): string | null {
  try {
    return sessionStorage.getItem(KEY);
  } catch {
    return null;
  }
}

function remember(tab: string) {
  try {
    sessionStorage.setItem(KEY, tab);
  } catch {
    // Storage is denied; the store has said so already.
  }
}
