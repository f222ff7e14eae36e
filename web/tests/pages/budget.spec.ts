// What the app costs, written to `out/web-numbers.json`. Sizes are held to their budgets; nothing here asserts a time: a busy machine
// is no fault.

import { mkdir, readdir, writeFile } from "node:fs/promises";

import { expect, test, type Page, type Response } from "@playwright/test";

import { beads, look, open, openSubject, openWith } from "./open.ts";

const numbers: Record<string, unknown> = {};

const SITE = new URL("../../../out/site/assets", import.meta.url);

test.afterAll(async () => {
  await mkdir("../out", { recursive: true });
  await writeFile("../out/web-numbers.json", `${JSON.stringify(numbers, null, 2)}\n`);
});

test.describe.configure({ mode: "serial" });

// The service worker fetches every file of the site in the background; here only what the page itself fetches counts.
test.use({ serviceWorkers: "block" });

/** Files of the modules that are fetched later, by their addresses. */
const LATER = /\/(rest|deep)[-_]/;

/** Notes the bytes of every file that is fetched from now on; what it gives is complete when it is asked for. */
function weighed(page: Page): () => Promise<Record<string, number>> {
  const all: Promise<[string, number]>[] = [];
  const weigh = async (response: Response): Promise<[string, number]> => {
    const { responseBodySize } = await response.request().sizes();
    // The size of a worker's own script is told by its header alone.
    const told = Number(await response.headerValue("content-length"));
    return [new URL(response.url()).pathname, Math.max(responseBodySize, told)];
  };
  page.on("response", (response) => all.push(weigh(response)));
  return async () => Object.fromEntries(await Promise.all(all));
}

const sum = (sizes: Record<string, number>) => Object.values(sizes).reduce((total, size) => total + size, 0);

/** The file whose address fits, and that it was fetched at all. */
function only(sizes: Record<string, number>, address: RegExp): number {
  const found = Object.entries(sizes).filter(([path]) => address.test(path));
  expect(found, `one file like ${address} among ${Object.keys(sizes).join(" ")}`).toHaveLength(1);
  return found[0]?.[1] ?? 0;
}

test("everything for the first use stays below 390 KB compressed, without the modules that are fetched later", async ({ page }) => {
  await page.route(LATER, (route) => route.abort());
  const sizes = weighed(page);
  await open(page);
  await beads(page).first().click();
  await page.waitForLoadState("networkidle");
  const files = await sizes();
  const total = sum(files);
  numbers["files"] = files;
  numbers["bytes for the first use"] = total;
  // Every part of a page is there, so nothing was left out of the sum.
  const parts = [/\/$/, /\/index-.*\.js$/, /\/index-.*\.css$/, /\/first-worker-.*\.js$/, /\/first_bg-.*\.wasm$/, /\/en-.*\.txt$/];
  for (const address of parts) {
    expect(only(files, address)).toBeGreaterThan(200);
  }
  expect(only(files, /\.wasm$/)).toBeGreaterThan(100_000);
  expect(Object.keys(files).filter((path) => LATER.test(path))).toEqual([]);
  // Only the texts of the language that is spoken.
  expect(Object.keys(files).filter((path) => path.endsWith(".txt"))).toHaveLength(1);
  expect(total).toBeLessThan(390_000);
});

test("the other modules are fetched when the page has nothing else to do, and stay below 455 and 470 KB", async ({ page }) => {
  const sizes = weighed(page);
  const fetched = ["rest", "deep"].map((name) => page.waitForResponse((response) => response.url().includes(`/${name}_bg-`)));
  await openWith(page);
  for (const response of await Promise.all(fetched)) await response.finished();
  const files = await sizes();
  for (const [module, most] of [["rest", 455_000], ["deep", 470_000]] as const) {
    const weight = only(files, new RegExp(`/${module}_bg-`));
    numbers[`bytes of the module ${module}`] = weight + only(files, new RegExp(`/${module}-worker-`));
    expect(weight).toBeGreaterThan(100_000);
    expect(weight, module).toBeLessThan(most);
  }
});

test("the time from a cold load to a page that works is measured", async ({ browser, baseURL }) => {
  const times: number[] = [];
  for (let run = 0; run < 5; run += 1) {
    const page = await (await browser.newContext({ baseURL: baseURL ?? "" })).newPage();
    await page.goto("./");
    // The memo of the puzzle that lies there to begin with.
    await beads(page).first().waitFor();
    times.push(await page.evaluate(() => performance.now()));
    await page.context().close();
  }
  numbers["ms from navigation to usable, cold"] = times.sort((a, b) => a - b).map(Math.round);
});

test("a change in Trace is measured from the key to the new memo, and each has its own", async ({ page }) => {
  await openWith(page);
  await openSubject(page);
  await page.waitForLoadState("networkidle");
  const { times, memos } = await page.evaluate(async () => {
    const field = document.querySelector<HTMLTextAreaElement>("#scramble");
    const found = document.querySelector<HTMLElement>(".reason");
    if (field === null || found === null) throw new Error("the page is not there");
    const memo = () => found.textContent;
    const base = field.value;
    const times: number[] = [];
    const memos: string[] = [];
    for (let run = 0; run < 40; run += 1) {
      field.value = `${base} ${"URF".charAt(run % 3)}${run % 2 === 0 ? "" : "2"}`;
      const shown = new Promise<void>((resolve) => {
        const observer = new MutationObserver(() => {
          if (found.dataset["scramble"] !== field.value) return;
          observer.disconnect();
          resolve();
        });
        observer.observe(found, { attributes: true });
      });
      const from = performance.now();
      field.dispatchEvent(new Event("input", { bubbles: true }));
      await shown;
      times.push(performance.now() - from);
      memos.push(memo());
      await new Promise((resolve) => setTimeout(resolve, 30));
    }
    return { times: times.sort((a, b) => a - b), memos };
  });
  const at = (share: number) => Math.round((times[Math.floor(share * (times.length - 1))] ?? 0) * 10) / 10;
  numbers["ms for a change in Trace"] = { median: at(0.5), "9 of 10": at(0.9) };
  // Six scrambles take turns: each time one comes back its memo does, and no other has the same.
  expect(memos.slice(6)).toEqual(memos.slice(0, -6));
  expect(new Set(memos).size).toBe(6);
});

test("a trace is measured as the worker answers it, with every sentence", async ({ page }) => {
  await open(page);
  numbers["ms for a trace in the worker"] = await page.evaluate(async () => {
    const script = performance.getEntriesByType("resource").find(({ name }) => name.includes("/first-worker-"));
    if (script === undefined) throw new Error("there is no worker");
    const worker = new Worker(script.name, { type: "module" });
    const answer = () => new Promise<{ kind: string }>((resolve) => {
      worker.onmessage = (event: MessageEvent<{ kind: string }>) => resolve(event.data);
    });
    let answered = answer();
    worker.postMessage({ kind: "start", module: null });
    await answered;
    worker.postMessage({ kind: "put", of: "conventions", handle: "c", revision: 1, content: "" });
    const times: number[] = [];
    for (let run = 0; run < 300; run += 1) {
      const scramble = `D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2 ${"U ".repeat(run % 3)}${"F R ".repeat(run % 7)}`;
      const content = JSON.stringify({ size: 3, scramble, facelets: "", bestHold: false });
      answered = answer();
      const from = performance.now();
      worker.postMessage({ kind: "put", of: "puzzle", handle: "p", revision: run, content });
      const source = { puzzle: { handle: "p", revision: run }, conventions: { handle: "c", revision: 1 }, sheet: null };
      worker.postMessage({ kind: "request", id: run, method: "trace", language: "en", arguments: JSON.stringify({ source }) });
      if ((await answered).kind !== "view") throw new Error("no view");
      times.push(performance.now() - from);
    }
    worker.terminate();
    // The first ones compile.
    const warm = times.slice(50).sort((a, b) => a - b);
    const at = (share: number) => Math.round((warm[Math.floor(share * (warm.length - 1))] ?? 0) * 1000) / 1000;
    return { median: at(0.5), "1 of 10": at(0.1), "9 of 10": at(0.9) };
  });
});

test("a 4x4 scramble is measured, and the tables for it are made once and then kept", async ({ page }) => {
  test.setTimeout(600_000);
  const [script] = (await readdir(SITE)).filter((name) => /^deep-worker-.*\.js$/.test(name));
  await open(page);
  const drawn = (count: number) => page.evaluate(
    async ({ script, count }) => {
      const worker = new Worker(`./assets/${script}`, { type: "module" });
      let told = 0;
      const answer = (message: unknown) => new Promise<{ kind: string; view?: { moves: string } }>((resolve) => {
        worker.onmessage = ({ data }) => {
          if (data.kind === "progress") told += 1;
          else resolve(data);
        };
        worker.postMessage(message);
      });
      await answer({ kind: "start", module: null });
      const times: number[] = [];
      const moves: string[] = [];
      for (let id = 0; id < count; id += 1) {
        const from = performance.now();
        const asked = JSON.stringify({ size: 4, seed: [0, id] });
        const { view } = await answer({ kind: "request", id, method: "random", language: "en", arguments: asked });
        times.push(Math.round(performance.now() - from));
        moves.push(view?.moves ?? "");
      }
      // What is kept is written after the answer.
      for (let tries = 0; tries < 100 && (await (await caches.open("hoodwink tables")).keys()).length === 0; tries += 1) {
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      worker.terminate();
      return { times, moves, told };
    },
    { script, count },
  );
  const made = await drawn(6);
  const kept = await drawn(2);
  numbers["ms for the first 4x4 scramble, tables and all"] = made.times[0];
  numbers["ms for a 4x4 scramble after that"] = made.times.slice(1).sort((a, b) => a - b);
  numbers["ms for the first 4x4 scramble with tables that were kept"] = kept.times[0];
  // The same scrambles, and the tables were made in the first worker alone.
  expect(kept.moves).toEqual(made.moves.slice(0, 2));
  expect(made.moves.every((moves) => moves.split(" ").length > 30)).toBe(true);
  expect(made.told).toBeGreaterThan(5);
  expect(kept.told).toBeLessThan(made.told);
});

test("frames while a layer turns are counted", async ({ page }) => {
  await openWith(page);
  await look(page, "Carry out");
  await page.getByRole("button", { name: "Play", exact: true }).click();
  const frames = await page.evaluate(async () => {
    const cube = document.querySelector(".scene");
    if (cube === null) throw new Error("there is no cube");
    let pictures = 0;
    const observer = new MutationObserver(() => (pictures += 1));
    observer.observe(cube, { childList: true, subtree: true });
    const from = performance.now();
    await new Promise((resolve) => setTimeout(resolve, 3000));
    observer.disconnect();
    return { pictures, seconds: (performance.now() - from) / 1000 };
  });
  numbers["pictures a second while turning"] = Math.round(frames.pictures / frames.seconds);
  expect(frames.pictures).toBeGreaterThan(0);
});
