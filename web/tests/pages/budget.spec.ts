// What the app costs, written to `out/web-numbers.json`. Nothing here asserts a time: a busy machine is no fault.

import { mkdir, writeFile } from "node:fs/promises";

import { expect, test } from "@playwright/test";

import { open, openWith, goTo } from "./open.ts";

const numbers: Record<string, unknown> = {};

test.afterAll(async () => {
  await mkdir("../out", { recursive: true });
  await writeFile("../out/web-numbers.json", `${JSON.stringify(numbers, null, 2)}\n`);
});

test.describe.configure({ mode: "serial" });

test("everything for the first use stays below 500 KB compressed", async ({ page }) => {
  const sizes: Record<string, number> = {};
  page.on("response", (response) => {
    void response.request().sizes().then(({ responseBodySize }) => {
      sizes[new URL(response.url()).pathname] = responseBodySize;
    });
  });
  await open(page);
  await page.waitForTimeout(500);
  const total = Object.values(sizes).reduce((sum, size) => sum + size, 0);
  numbers["files"] = sizes;
  numbers["bytes for the first use"] = total;
  expect(total).toBeGreaterThan(10_000);
  expect(total).toBeLessThan(500_000);
});

test("the time from a cold load to a page that works is measured", async ({ browser, baseURL }) => {
  const times: number[] = [];
  for (let run = 0; run < 5; run += 1) {
    const page = await (await browser.newContext({ baseURL: baseURL ?? "" })).newPage();
    await page.goto("./");
    await page.getByLabel("Scramble", { exact: true }).waitFor();
    times.push(await page.evaluate(() => performance.now()));
    await page.context().close();
  }
  numbers["ms from navigation to usable, cold"] = times.sort((a, b) => a - b).map(Math.round);
});

test("a change in Trace is measured from the key to the new memo", async ({ page }) => {
  await openWith(page);
  await page.waitForTimeout(1000);
  const times = await page.evaluate(async () => {
    const field = document.querySelector<HTMLTextAreaElement>("#scramble");
    const found = document.querySelector<HTMLElement>(".found");
    if (field === null || found === null) throw new Error("the page is not there");
    const base = field.value;
    const times: number[] = [];
    for (let run = 0; run < 40; run += 1) {
      field.value = `${base} ${"URF".charAt(run % 3)}${run % 2 === 0 ? "" : "2"}`;
      const from = performance.now();
      field.dispatchEvent(new Event("input", { bubbles: true }));
      while (found.dataset["scramble"] !== field.value) await new Promise((resolve) => setTimeout(resolve, 0));
      times.push(performance.now() - from);
      await new Promise((resolve) => setTimeout(resolve, 30));
    }
    return times.sort((a, b) => a - b);
  });
  const at = (share: number) => Math.round((times[Math.floor(share * (times.length - 1))] ?? 0) * 10) / 10;
  numbers["ms for a change in Trace"] = { median: at(0.5), "9 of 10": at(0.9) };
  expect(times).toHaveLength(40);
});

test("frames while a layer turns are counted", async ({ page }) => {
  await openWith(page);
  await goTo(page, "Play");
  await page.getByLabel("Speed").selectOption("Slow");
  await page.getByRole("button", { name: "Play", exact: true }).click();
  const frames = await page.evaluate(async () => {
    const cube = document.querySelector(".cube");
    if (cube === null) throw new Error("there is no cube");
    let pictures = 0;
    const observer = new MutationObserver(() => (pictures += 1));
    observer.observe(cube, { childList: true });
    const from = performance.now();
    await new Promise((resolve) => setTimeout(resolve, 3000));
    observer.disconnect();
    return { pictures, seconds: (performance.now() - from) / 1000 };
  });
  numbers["pictures a second while turning"] = Math.round(frames.pictures / frames.seconds);
  expect(frames.pictures).toBeGreaterThan(0);
});
