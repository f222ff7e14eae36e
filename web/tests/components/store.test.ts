import { expect, test } from "vitest";

import { readRoute } from "../../src/shell/route.svelte";
import { Store, type Trouble } from "../../src/store/database";

test("a set that another tab changed is not overwritten", async () => {
  const [one, two] = [new Store(), new Store()];
  await one.open();
  await two.open();
  await one.deleteSet("mine");
  const first = await one.putSet("mine", 0, { source: "a", sheet: "s" });
  expect(first).toEqual({ kept: { name: "mine", revision: 1, source: "a", sheet: "s" }, mine: true });
  const late = await two.putSet("mine", 0, { source: "b" });
  expect(late).toEqual({ kept: { name: "mine", revision: 1, source: "a", sheet: "s" }, mine: false });
  expect(await two.putSet("mine", 1, { source: "c" })).toMatchObject({ kept: { revision: 2 }, mine: true });
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
