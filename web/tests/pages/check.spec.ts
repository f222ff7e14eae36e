import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { complaints, goTo, openWith } from "./open.ts";

test("a memo is checked as it is written, and the wrong bead is named", async ({ page }) => {
  const all = complaints(page);
  await openWith(page);
  await goTo(page, "Check");
  // The worked example: edges JK VE GT SA QC HF C, corners BC WK GH D.
  await page.getByLabel("The edges' letters").fill("JKVEGTSAQCHFC");
  await page.getByLabel("The corners' letters").fill("bc wk gh d");
  await expect(page.locator(".mark")).toContainText("The memo is right");
  await expectAccessible(page);
  await page.getByLabel("The corners' letters").fill("BC WK HG D");
  await expect(page.locator(".mark")).toContainText("✗");
  await expect(page.locator(".verdict")).toContainText("Letters 5 and 6 of the corners, H and G, have changed places");
  await expect(page.getByRole("heading", { name: "What it leads to" })).toBeVisible();
  await page.getByLabel("The corners' letters").fill("BC 1");
  await expect(page.locator(".verdict")).toContainText("column 4");
  expect(all).toEqual([]);
});

test("why asks for what was seen, refuses what cannot be, and explains the rest", async ({ page }) => {
  test.setTimeout(90_000);
  await openWith(page, "R U R' U'");
  await goTo(page, "Why");
  const explain = page.getByRole("button", { name: "Explain" });
  await page.locator("label.choice", { hasText: "red" }).click();
  await page.locator('[data-cell="U 0 0"]').click();
  await expect(explain).toBeDisabled();
  await expect(page.locator(".verdict")).toContainText("red");
  await page.getByRole("button", { name: "Solved again" }).click();
  await explain.click();
  await expect(page.getByText("nothing is to be explained")).toBeVisible({ timeout: 60_000 });
  const words = page.getByLabel("Or in words");
  await words.fill("UF flipped");
  await explain.click();
  await expect(page.getByText("UF cannot be the only unsolved edge")).toBeVisible({ timeout: 60_000 });
  await words.fill("UF floppy");
  await explain.click();
  await expect(page.getByText("Column 4")).toBeVisible({ timeout: 60_000 });
  await expectAccessible(page);
});
