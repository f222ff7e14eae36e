import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { beads, complaints, look, openWith } from "./open.ts";

test("a memo is checked as it is written, and the wrong bead is named", async ({ page }) => {
  const all = complaints(page);
  await openWith(page);
  await look(page, "Check");
  // Whose memo is to be checked is not shown the answer.
  await expect(beads(page)).toHaveCount(0);
  // The worked example: edges JK VE GT SA QC HF C, corners BC WK GH D.
  await page.getByLabel("The edges’ letters").fill("JKVEGTSAQCHFC");
  await page.getByLabel("The corners’ letters").fill("bc wk gh d");
  await expect(page.locator(".mark")).toContainText("The memo is right");
  await expect(beads(page)).toHaveCount(20);
  await expectAccessible(page);
  await page.getByLabel("The corners’ letters").fill("BC WK HG D");
  await expect(page.locator(".mark")).toContainText("✗");
  await expect(page.locator(".verdict")).toContainText("Letters 5 and 6 of the corners, H and G, have changed places");
  await expect(page.locator(".verdict")).toContainText("What it leads to");
  await expect(page.locator(".scene .cracked")).toHaveCount(2);
  await page.getByLabel("The corners’ letters").fill("BC 1");
  await expect(page.locator(".verdict")).toContainText("column 4");
  expect(all).toEqual([]);
});

test("why asks for what was seen, refuses what cannot be, and explains the rest", async ({ page }) => {
  test.setTimeout(120_000);
  await openWith(page, "R U R' U'");
  await look(page, "Why");
  const explain = page.getByRole("button", { name: "Explain" });
  await page.getByText("Paint it").click();
  await page.locator("label.choice", { hasText: "red" }).click();
  await page.locator('[data-cell="U 0 0"]').click();
  await expect(explain).toHaveAttribute("aria-disabled", "true");
  await expect(page.locator(".verdict")).toContainText("red");
  await page.getByText("Say it in words").click();
  const words = page.getByLabel("Say it in words").last();
  await words.fill("UF flipped");
  await explain.click();
  await expect(page.getByText("UF cannot be the only unsolved edge")).toBeVisible({ timeout: 60_000 });
  await page.getByRole("button", { name: "Change what I told" }).click();
  await words.fill("UF floppy");
  await explain.click();
  await expect(page.getByText("Column 4")).toBeVisible({ timeout: 60_000 });
  await expectAccessible(page);
});

test("causes come with their share, crack the beads they are about, and questions can be left open", async ({ page }) => {
  test.setTimeout(120_000);
  await openWith(page);
  await look(page, "Why");
  await page.getByLabel("Say it in words").last().fill("FR>FD>RD");
  await page.getByRole("button", { name: "Explain" }).click();
  await expect(page.locator(".cause").first()).toContainText("%", { timeout: 60_000 });
  await expect(page.locator(".scene .cracked").first()).toBeVisible();
  await expect(page.locator(".sum")).toContainText("Unsolved");
  const question = page.locator("#question");
  const before = await question.textContent();
  await page.getByRole("button", { name: "Can’t say" }).click();
  await expect(question).not.toHaveText(before ?? "");
  await expectAccessible(page);
});

for (const size of ["2x2", "4x4"]) {
  test(`check and why take a ${size}`, async ({ page }) => {
    test.setTimeout(120_000);
    await openWith(page, size === "2x2" ? "R U F" : "R U Fw", size);
    await look(page, "Check");
    await page.getByLabel("The corners’ letters").fill("AB");
    await expect(page.locator(".mark, .verdict .wrong").first()).toBeVisible();
    await look(page, "Why");
    await page.getByText("Paint it").click();
    await expect(page.locator("[data-cell]")).toHaveCount(size === "2x2" ? 24 : 96);
  });
}
