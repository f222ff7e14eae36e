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

/** Types each scramble and reads what the page then shows. */
async function inBrowser(page: Page, all: string[]): Promise<Found[]> {
  await open(page);
  return page.evaluate(async (scrambles) => {
    const field = document.querySelector<HTMLTextAreaElement>("#scramble");
    const found = document.querySelector<HTMLElement>(".found");
    if (field === null || found === null) throw new Error("the page is not there");
    const results = [];
    for (const scramble of scrambles) {
      field.value = scramble;
      field.dispatchEvent(new Event("input", { bubbles: true }));
      while (found.dataset["scramble"] !== scramble) await new Promise((resolve) => setTimeout(resolve, 5));
      results.push({
        memo: [...found.querySelectorAll(".thread")].map((thread) =>
          [...thread.querySelectorAll(".bead")].map((bead) => bead.textContent?.trim()).join(""),
        ),
        moves: found.querySelector(".moves")?.textContent ?? "",
      });
    }
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
