import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { complaints, goTo, openWith } from "./open.ts";

test("the solution is stepped by move and letter, and each letter is held against what it should do", async ({ page }) => {
  const all = complaints(page);
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openWith(page);
  await goTo(page, "Play");
  await expect(page.getByText("Ready for the first move.")).toBeVisible();
  for (const part of ["Set-up", "Swap", "Undo"]) await expect(page.locator(".part", { hasText: part }).first()).toBeVisible();
  await page.getByRole("button", { name: "Move on" }).click();
  await expect(page.locator(".after")).toContainText("Move 1 of");
  await page.getByRole("button", { name: "Move back" }).click();
  await page.getByRole("button", { name: "Letter on" }).click();
  await expect(page.locator(".after")).toContainText("The puzzle is as this letter should leave it.");
  await expectAccessible(page);
  const letters = page.locator(".one");
  const count = await letters.count();
  for (let number = 1; number < count; number += 1) await page.getByRole("button", { name: "Letter on" }).click();
  await expect(page.locator(".after")).toContainText("20 of 20 pieces are solved.");
  expect(all).toEqual([]);
});

test("it plays, pauses and goes back with the keyboard, and a reload comes back to the same move", async ({ page }) => {
  await openWith(page);
  await goTo(page, "Play");
  await page.getByLabel("Speed").selectOption("Fast");
  const play = page.getByRole("button", { name: "Play", exact: true });
  await play.focus();
  await page.keyboard.press("Space");
  await expect(page.getByRole("button", { name: "Pause" })).toBeVisible();
  await expect(page.locator(".move.done").first()).toBeVisible();
  await page.keyboard.press("Space");
  await expect(play).toBeVisible();
  await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("ArrowRight");
  await expect(page.locator(".after")).toContainText(/Move \d+ of/);
  const said = await page.locator(".after").textContent();
  await page.waitForTimeout(400);
  await page.reload();
  await expect(page.locator(".after")).toHaveText(said ?? "");
});

test("without a scramble it says where to give one", async ({ page }) => {
  await page.goto("./#/play");
  await expect(page.getByText("There is nothing to play.")).toBeVisible();
});
