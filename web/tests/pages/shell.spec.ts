import { expect, test, type Page } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { complaints, give, open, openSubject, scrambleField } from "./open.ts";

const VIEWS = ["trace", "play", "check", "why", "conventions", "algorithms", "lesson"];

/** What is broader than the page and would scroll it sideways. */
const sideways = (page: Page) =>
  page.evaluate(() => {
    const beyond = [...document.querySelectorAll("main *")].filter((one) => {
      const box = one.getBoundingClientRect();
      // What has a scroll bar of its own, such as a table of cases, scrolls within itself.
      for (let around: Element | null = one; around !== null && around.tagName !== "MAIN"; around = around.parentElement) {
        if (around.matches("svg, .only-read-aloud") || /auto|scroll/.test(getComputedStyle(around).overflowX)) return false;
      }
      return box.width > 1 && box.right > innerWidth + 0.5;
    });
    const whole = document.documentElement.scrollWidth > innerWidth ? ["html"] : [];
    return [...whole, ...beyond.map((one) => `${one.tagName} ${one.className}`)];
  });

for (const view of VIEWS) {
  test(`${view} opens by its address, without complaint and accessible`, async ({ page }) => {
    const all = complaints(page);
    await open(page, view);
    await expect(page.locator(`nav [aria-current=page][href="#/${view}"]`).last()).toBeVisible();
    await expectAccessible(page);
    expect(all).toEqual([]);
  });

  test(`${view} needs no sideways scrolling from 320 to 2560 px`, async ({ page }) => {
    await open(page, view);
    for (const width of [320, 360, 2560]) {
      await page.setViewportSize({ width, height: 700 });
      // The velvet is drawn anew a moment after it has another size.
      await expect.poll(() => sideways(page)).toEqual([]);
    }
  });
}

test("an address that is no view is said", async ({ page }) => {
  await open(page, "nowhere");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Nothing is at this address");
});

test("every view is reached by the keyboard alone, and its heading is announced", async ({ page }) => {
  await open(page);
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to the content" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.locator("#content")).toBeFocused();
  for (const [place, heading] of [
    ["Teach", "Lesson"],
    ["Collection", "Letters and colours"],
  ] as const) {
    await page.getByRole("link", { name: place, exact: true }).focus();
    await page.keyboard.press("Enter");
    await expect(page.getByRole("heading", { level: 1, name: heading })).toBeFocused();
  }
  await page.getByRole("link", { name: "Bench", exact: true }).focus();
  await page.keyboard.press("Enter");
  // From lens to lens the focus stays on what was touched.
  for (const name of ["Carry out", "Check", "Why"]) {
    const lens = page.getByRole("link", { name, exact: true });
    await lens.focus();
    await page.keyboard.press("Enter");
    await expect(page.getByRole("heading", { level: 1, name })).toBeAttached();
    await expect(lens).toBeFocused();
  }
});

test("the language changes everything at once and is kept", async ({ page }) => {
  await open(page);
  await page.getByRole("button", { name: "Settings" }).click();
  await page.getByText("Deutsch").click();
  await expect(page.getByRole("button", { name: "Schließen" })).toBeVisible();
  await expect(page.locator("html")).toHaveAttribute("lang", "de");
  await expectAccessible(page);
  await page.reload();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Verfolgen");
});

test("dark and light can be chosen against the device", async ({ page }) => {
  await page.emulateMedia({ colorScheme: "light" });
  await open(page);
  const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const before = await paper();
  await page.getByRole("button", { name: "Settings" }).click();
  await page.getByText("Dark", { exact: true }).click();
  expect(await paper()).not.toBe(before);
  await expectAccessible(page);
});

test("a scramble that is none is marked where it goes wrong, as it is typed", async ({ page }) => {
  await open(page);
  await openSubject(page);
  const scramble = scrambleField(page);
  await scramble.fill("");
  await scramble.pressSequentially("R U K");
  await expect(scramble).toHaveAttribute("aria-invalid", "true");
  await expect(scramble).toHaveAccessibleDescription(/column 5/);
  await expect(page.getByRole("dialog").locator("mark")).toHaveText("K");
  await expectAccessible(page);
  await scramble.press("Backspace");
  await scramble.press("F");
  await expect(scramble).not.toHaveAttribute("aria-invalid");
  await expect(page.getByRole("dialog").locator("mark")).toHaveText("");
});

test.describe("what the browser keeps", () => {
  const inHand = (page: Page) => page.locator(".subject .scramble");

  test("a draft comes back after a reload", async ({ page }) => {
    await open(page);
    await give(page, "R U R' U'");
    await page.reload();
    await expect(inHand(page)).toHaveText("R U R' U'");
  });

  test("two tabs do not write over each other", async ({ context }) => {
    const [one, two] = [await context.newPage(), await context.newPage()];
    await open(one);
    await open(two);
    await give(one, "R");
    await give(two, "U");
    await one.reload();
    await two.reload();
    await expect(inHand(one)).toHaveText("R");
    await expect(inHand(two)).toHaveText("U");
  });

  test("a new tab goes on with the draft of the tab closed last", async ({ context }) => {
    const one = await context.newPage();
    await open(one);
    await give(one, "F2 B2");
    await one.waitForTimeout(400);
    await one.close();
    const two = await context.newPage();
    await open(two);
    await expect(inHand(two)).toHaveText("F2 B2");
  });

  test("denied storage is said and nothing breaks", async ({ page }) => {
    const all = complaints(page);
    await page.addInitScript(() => {
      Object.defineProperty(globalThis, "indexedDB", {
        get() {
          throw new DOMException("denied", "SecurityError");
        },
      });
    });
    await open(page);
    await expect(page.locator(".notices")).toContainText("This browser keeps nothing for this page.");
    await page.getByRole("button", { name: "Close this notice" }).click();
    await expect(page.locator(".notices")).toBeEmpty();
    await give(page, "R U");
    expect(all).toEqual([]);
  });

  test("full storage is said and nothing breaks", async ({ page }) => {
    await page.addInitScript(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await open(page);
    await expect(page.locator(".notices")).toContainText("storage is full");
    await page.getByRole("button", { name: "Close this notice" }).click();
    // Who closed it is not told again at every letter.
    await give(page, "R U");
    await page.waitForTimeout(600);
    await expect(page.locator(".notices")).toBeEmpty();
    await expect(inHand(page)).toHaveText("R U");
  });
});

test("works without network after the first visit", async ({ page, context }) => {
  await open(page);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Trace");
  await page.getByRole("link", { name: "Teach", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Lesson");
});

test("an engine that cannot be loaded is said", async ({ page }) => {
  await page.route("**/*.wasm", (route) => route.abort());
  await page.goto("./");
  await expect(page.getByRole("alert").first()).toHaveText("The engine does not start");
});

test("no request leaves this address", async ({ page, baseURL }) => {
  const addresses: string[] = [];
  page.on("request", (request) => addresses.push(request.url()));
  await open(page);
  await page.evaluate(() => navigator.serviceWorker.ready);
  expect(addresses.filter((address) => !address.startsWith(baseURL ?? "") && !address.startsWith("data:"))).toEqual([]);
});
