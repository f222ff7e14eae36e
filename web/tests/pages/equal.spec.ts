// The browser and the command line are one engine: for 200 scrambles they find the same.

import { execFileSync } from "node:child_process";

import { expect, test, type Page } from "@playwright/test";

import { open } from "./open.ts";

interface Found {
  memo: string[];
  moves: string;
}

/** Scrambles of a generator of its own, so that they have nothing to do with either side. */
function scrambles(count: number): string[] {
  let state = 20_261_125;
  const next = (below: number) => {
    // Source: the "minimal standard" generator, S. K. Park, K. W. Miller, 1988.
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
  return Array.from({ length: count }, () => {
    const moves: string[] = [];
    let last = -1;
    while (moves.length < 20) {
      const face = next(6);
      if (face === last) continue;
      last = face;
      moves.push("ULFRBD".charAt(face) + ["", "'", "2"][next(3)]);
    }
    return moves.join(" ");
  });
}

/** Asks the engine of the page, in a worker of its own, as the page does. */
async function inBrowser(page: Page, all: string[]): Promise<Found[]> {
  await open(page);
  return page.evaluate(async (scrambles) => {
    const script = performance.getEntriesByType("resource").find(({ name }) => /first-worker[^/]*\.js$/.test(name));
    if (script === undefined) throw new Error("the page has no worker");
    const worker = new Worker(script.name, { type: "module" });
    interface Told {
      kind: string;
      view?: { parts: { groups: { letter: string }[][] }[]; solution: { moves: string } };
    }
    const next = () =>
      new Promise<Told>((resolve) => worker.addEventListener("message", ({ data }) => resolve(data as Told), { once: true }));
    const ready = next();
    worker.postMessage({ kind: "start", module: null });
    if ((await ready).kind !== "ready") throw new Error("the engine does not start");
    worker.postMessage({ kind: "put", of: "conventions", handle: "conventions", revision: 1, content: "" });
    const results = [];
    for (const [id, scramble] of scrambles.entries()) {
      const content = JSON.stringify({ size: 3, scramble, facelets: "", bestHold: false });
      worker.postMessage({ kind: "put", of: "puzzle", handle: "puzzle", revision: id, content });
      const source = {
        puzzle: { handle: "puzzle", revision: id },
        conventions: { handle: "conventions", revision: 1 },
        sheet: null,
      };
      const answer = next();
      worker.postMessage({ kind: "request", id, method: "trace", language: "en", arguments: JSON.stringify({ source }) });
      const { view } = await answer;
      if (view === undefined) throw new Error(scramble);
      const memo = view.parts.map(({ groups }) => groups.flat().map(({ letter }) => letter).join(""));
      results.push({ memo: memo.filter((letters) => letters !== ""), moves: view.solution.moves });
    }
    worker.terminate();
    return results;
  }, all);
}

test("200 scrambles give the same letters and the same solution as on the command line", async ({ page }) => {
  // The command line may have to be compiled first.
  test.setTimeout(600_000);
  const all = scrambles(200);
  const lines = execFileSync("cargo", ["run", "--quiet", "--package", "cli", "--", "trace", "--batch", "-"], {
    cwd: "..",
    input: all.join("\n"),
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  const told = lines
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as { parts: { letters: string }[]; solution: { moves: string } })
    .map(({ parts, solution }) => ({
      memo: parts.map(({ letters }) => letters).filter((letters) => letters !== ""),
      moves: solution.moves,
    }));
  expect(told).toHaveLength(200);
  expect(await inBrowser(page, all)).toEqual(told);
});
