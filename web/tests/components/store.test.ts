import { openDB } from "idb";
import { expect, test } from "vitest";

import { readRoute } from "../../src/shell/route.svelte";
import { Store, type Trouble } from "../../src/store/database";

test("a set that another tab changed is not overwritten", async () => {
  const [one, two] = [new Store(), new Store()];
  await one.open();
  await two.open();
  await one.deleteSet("mine");
  const first = await one.putSet("mine", 0, { source: "a", sheet: "s" });
  const kept = { version: 1, name: "mine", revision: 1, source: "a", sheet: "s" };
  expect(first).toEqual({ kept, mine: true });
  const late = await two.putSet("mine", 0, { source: "b" });
  expect(late).toEqual({ kept, mine: false });
  expect(await two.putSet("mine", 1, { source: "c" })).toMatchObject({ kept: { revision: 2 }, mine: true });
});

test("a record of another version is renewed when it is read, and kept as it is until it is changed", async () => {
  const store = new Store();
  await store.open();
  await store.putSet("present", 0, { source: "p" });
  const old = { name: "old", revision: 4, source: "o" };
  const newer = { version: 2, name: "newer", revision: 1, text: "n" };
  const database = await openDB("hoodwink");
  await database.put("sets", old);
  await database.put("sets", newer);
  const asked: [string, unknown][] = [];
  store.renew = (record, text) => {
    asked.push([record, JSON.parse(text)]);
    // As the engine does: what a newer version wrote it refuses.
    return Promise.resolve(text.includes('"version":2') ? null : JSON.stringify({ version: 1, ...JSON.parse(text), sheet: "" }));
  };
  const read = (await store.sets()).filter(({ name }) => ["newer", "old", "present"].includes(name));
  expect(read).toEqual([
    { ...old, version: 1, sheet: "" },
    { version: 1, name: "present", revision: 1, source: "p" },
  ]);
  expect(asked).toEqual([["set", newer], ["set", old]]);
  expect(await database.get("sets", "old")).toEqual(old);
  expect(await database.get("sets", "newer")).toEqual(newer);
  await store.putSet("old", 4, { source: "o2" });
  expect(await database.get("sets", "old")).toEqual({ version: 1, name: "old", revision: 5, source: "o2" });
  for (const name of ["present", "old", "newer"]) await store.deleteSet(name);
  database.close();
});

test("what a newer version kept is never written over, and that is told", async () => {
  const store = new Store();
  const troubles: Trouble[] = [];
  store.onTrouble = (trouble) => troubles.push(trouble);
  await store.open();
  const database = await openDB("hoodwink");
  const draft = { version: 2, tab: "newer", savedAt: 5, draft: { scramble: "R" }, more: 1 };
  const setting = { version: 2, name: "newer", value: "v", more: 1 };
  const set = { version: 2, name: "newer", revision: 3, text: "n" };
  await database.put("drafts", draft);
  await database.put("settings", setting);
  await database.put("sets", set);
  await store.putDraft({ tab: "newer", savedAt: 6, draft: {} });
  await store.putSetting("newer", "w");
  expect(await store.putSet("newer", 3, { source: "c" })).toBeNull();
  expect(await database.get("drafts", "newer")).toEqual(draft);
  expect(await database.get("settings", "newer")).toEqual(setting);
  expect(await database.get("sets", "newer")).toEqual(set);
  expect(troubles).toEqual(["newer", "newer", "newer"]);
  // A record of its own is written beside them.
  await store.putDraft({ tab: "present", savedAt: 7, draft: {} });
  expect(await database.get("drafts", "present")).toMatchObject({ version: 1, savedAt: 7 });
  expect(troubles).toHaveLength(3);
  await database.delete("settings", "newer");
  for (const tab of ["newer", "present"]) await store.deleteDraft(tab);
  await store.deleteSet("newer");
  database.close();
});

test("the other tab is told of a change", async () => {
  const [one, two] = [new Store(), new Store()];
  await one.open();
  await two.open();
  const told = new Promise<string>((resolve) => {
    two.onOtherTab = resolve;
  });
  await one.putSetting("theme", "dark");
  expect(await told).toBe("settings");
  expect(await two.settings()).toMatchObject({ theme: "dark" });
});

test("without a database everything is answered and trouble is told", async () => {
  const troubles: Trouble[] = [];
  const kept = Object.getOwnPropertyDescriptor(globalThis, "indexedDB");
  Object.defineProperty(globalThis, "indexedDB", {
    configurable: true,
    get() {
      throw new DOMException("denied", "SecurityError");
    },
  });
  try {
    const store = new Store();
    store.onTrouble = (trouble) => troubles.push(trouble);
    await store.open();
    await store.putDraft({ tab: "t", savedAt: 0, draft: {} });
    expect(await store.drafts()).toEqual([]);
    expect(await store.putSet("x", 0, { source: "" })).toBeNull();
  } finally {
    if (kept !== undefined) Object.defineProperty(globalThis, "indexedDB", kept);
  }
  expect(troubles).toEqual(["denied"]);
});

test("addresses are read as links carry them", () => {
  expect(readRoute("").view).toBe("trace");
  expect(readRoute("#/play").view).toBe("play");
  expect(readRoute("#/elsewhere").view).toBeNull();
  const { view, carried } = readRoute("#/lesson?scramble=R%20U%27");
  expect(view).toBe("lesson");
  expect(carried.get("scramble")).toBe("R U'");
});
