// What trials with people found, each tried by the steps that led to it.

import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { beads, closeSubject, complaints, goTo, look, open, openSubject, openWith, SCRAMBLE, scrambleField } from "./open.ts";

test("a text of 400,000 characters is not taken in, and that is said", async ({ page }) => {
  await open(page);
  await openSubject(page);
  const before = await scrambleField(page).inputValue();
  await scrambleField(page).fill("R".repeat(400_000));
  await expect(page.locator(".notices")).toContainText("too long for this field");
  await expect(scrambleField(page)).toHaveValue(before);
  await page.reload();
  await expect(page.locator(".subject .scramble")).toHaveText(before);
  // The longest that is taken in does not hold the page up either.
  await openSubject(page);
  await scrambleField(page).fill("R".repeat(16_000));
  await closeSubject(page);
});

test("single keys work while the velvet has the focus, and can be switched off", async ({ page }) => {
  await openWith(page);
  const thread = page.getByRole("listbox");
  await thread.focus();
  await page.keyboard.press("Space");
  await expect(page.locator(".reason")).toContainText("letter 2 of");
  await page.keyboard.press("2");
  await expect(page.getByRole("heading", { level: 1, name: "Carry out" })).toBeAttached();
  await expect(thread).toBeFocused();
  await page.keyboard.press("1");
  await page.keyboard.press("/");
  await expect(scrambleField(page)).toBeFocused();
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Settings" }).click();
  await page.getByText("Off", { exact: true }).click();
  await page.getByRole("button", { name: "Close", exact: true }).click();
  await thread.focus();
  await page.keyboard.press("Space");
  await page.keyboard.press("2");
  await expect(page.getByRole("heading", { level: 1, name: "Trace" })).toBeAttached();
  await expect(page.locator(".reason")).toContainText("letter 2 of");
  // Arrow keys are no single keys: they go on working.
  await page.keyboard.press("ArrowRight");
  await expect(page.locator(".reason")).toContainText("letter 3 of");
});

test("from the scramble to the next letter there are few tab stops, and no button takes its own focus away", async ({ page }) => {
  await openWith(page);
  await page.getByRole("button", { name: /^Change the puzzle/ }).focus();
  let stops = 0;
  const focused = () => page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");
  while ((await focused()) !== "Next letter" && stops < 40) {
    await page.keyboard.press("Tab");
    stops += 1;
  }
  expect(stops).toBeLessThan(20);
  for (let letter = 0; letter < 40 && (await focused()) === "Next letter"; letter += 1) await page.keyboard.press("Enter");
  expect(await focused()).toBe("Carry it out");
  await page.getByRole("button", { name: "Letter before" }).focus();
  await page.getByRole("listbox").press("Home");
  const before = page.getByRole("button", { name: "Letter before" });
  await before.focus();
  await page.keyboard.press("Enter");
  await expect(before).toBeFocused();
});

test("a link brings puzzle, lens and letter; what was in hand comes back with undo", async ({ page, browser, baseURL }) => {
  await openWith(page);
  await beads(page).nth(4).click();
  const name = await page.locator(".reason .moves").first().textContent();
  const drawer = await openSubject(page);
  await expect(drawer.locator(".code svg")).toBeVisible({ timeout: 30_000 });
  const link = await drawer.getByLabel("A link to this moment").inputValue();
  await expectAccessible(page);
  const other = await browser.newPage({ baseURL: baseURL ?? "" });
  const own = "R U F2 L' D";
  await openWith(other, own);
  await other.goto(link);
  await expect(other.locator(".subject .scramble")).toHaveText(SCRAMBLE);
  await expect(other.locator(".reason .moves").first()).toHaveText(name ?? "");
  await expect(other.locator(".notices")).toContainText("This puzzle came with a link.");
  // Going on from here must not bring the link back.
  expect(new URL(other.url()).hash).toBe("#/trace");
  await other.locator(".notices").getByRole("button", { name: "Undo" }).click();
  await expect(other.locator(".subject .scramble")).toHaveText(own);
  await other.close();
});

test("old links keep working, and one for a size that is not offered says so", async ({ page }) => {
  await page.goto(`./#/trace?size=2&scramble=${encodeURIComponent("R U F2")}`);
  await expect(page.locator(".subject .scramble")).toHaveText("R U F2");
  await expect(page.locator(".subject .size")).toHaveText("2x2");
  await page.goto(`./#/check?scramble=${encodeURIComponent(SCRAMBLE)}&corners=BC%20WK%20GH%20D`);
  await expect(page.getByLabel("The corners’ letters")).toHaveValue("BC WK GH D");
  await page.goto("./#/trace?size=9&scramble=R");
  await expect(page.locator(".notices")).toContainText("size 9");
  await page.goto("./#/trace?size=6&scramble=R");
  await expect(page.locator(".notices")).toContainText("This link is for a 6x6. The bench shows");
  await expect(page.locator(".subject .scramble")).toHaveText(SCRAMBLE);
});

test("copied is said only when the clipboard took it", async ({ page, context }) => {
  await openWith(page);
  const drawer = await openSubject(page);
  await page.evaluate(() => {
    Object.defineProperty(navigator, "clipboard", { value: { writeText: () => Promise.reject(new Error("refused")) }, configurable: true });
  });
  await drawer.getByRole("button", { name: "Copy the link" }).click();
  await expect(drawer.getByText("The clipboard refused.")).toBeVisible();
  await expect(drawer.getByText("Copied.")).toHaveCount(0);
  await closeSubject(page);
  await page.reload();
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await openSubject(page);
  await drawer.getByRole("button", { name: "Copy the link" }).click();
  await expect(drawer.getByText("Copied.")).toBeVisible();
});

test("Back closes what lies over the bench, and never loses work", async ({ page }) => {
  await openWith(page);
  await look(page, "Check");
  await page.getByLabel("The corners’ letters").fill("BC");
  await openSubject(page);
  await scrambleField(page).fill("R U");
  await page.goBack();
  await expect(page.getByRole("dialog")).toBeHidden();
  await expect(page.getByRole("heading", { level: 1, name: "Check" })).toBeAttached();
  await expect(page.locator(".subject .scramble")).toHaveText("R U");
  await page.goBack();
  await expect(page.getByRole("heading", { level: 1, name: "Trace" })).toBeAttached();
  await page.goForward();
  await expect(page.getByLabel("The corners’ letters")).toHaveValue("BC");
});

test("a word of the trade is told when it is touched", async ({ page }) => {
  await openWith(page);
  const word = page.locator(".reason .word", { hasText: "buffer" });
  await expect(word).toBeVisible({ timeout: 30_000 });
  await word.click();
  const card = page.getByRole("dialog", { name: "Buffer" });
  await expect(card).toContainText("The sticker where you begin");
  await expect(card.locator("svg").last()).toBeVisible();
  await expectAccessible(page);
  await page.keyboard.press("Escape");
  await expect(word).toBeFocused();
});

test("the cube is there in words and as a table", async ({ page }) => {
  await openWith(page, "R", "2x2");
  const drawer = await openSubject(page);
  await drawer.getByText("The cube in words").click();
  await expect(drawer.getByRole("table")).toHaveCount(6);
  await expect(drawer.getByRole("table").first()).toContainText("white");
});

test("200 % text and a window of 320 by 480 lose nothing and scroll in one direction only", async ({ page }) => {
  const all = complaints(page);
  await page.setViewportSize({ width: 320, height: 480 });
  await openWith(page);
  for (const percent of [100, 200]) {
    await page.evaluate((percent) => (document.documentElement.style.fontSize = `${percent}%`), percent);
    for (const lens of ["trace", "play", "check", "why"]) {
      await goTo(page, lens);
      const beyond = await page.evaluate(() =>
        [...document.querySelectorAll("main *")].filter((one) => {
          const box = one.getBoundingClientRect();
          return one.closest("svg, .lenses, .only-read-aloud") === null && box.width > 1 && box.right > innerWidth + 0.5;
        }).map((one) => one.className),
      );
      expect(beyond, `${lens} at ${percent} %`).toEqual([]);
      await expect(page.locator(".velvet")).toBeAttached();
      expect((await page.locator(".cloth").boundingBox())?.height ?? 0).toBeGreaterThan(100);
    }
  }
  expect(all).toEqual([]);
});

for (const colorScheme of ["light", "dark"] as const) {
  test(`every lens and drawer is accessible, ${colorScheme}`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.emulateMedia({ colorScheme });
    await open(page);
    await expect(beads(page)).toHaveCount(4);
    await expectAccessible(page);
    await openSubject(page);
    await expectAccessible(page);
    await closeSubject(page);
    for (const lens of ["Trace", "Carry out", "Check", "Why"]) {
      await look(page, lens);
      await expectAccessible(page);
    }
    await look(page, "Trace");
    await page.getByRole("button", { name: "More about this memo" }).click();
    await expectAccessible(page);
  });
}
