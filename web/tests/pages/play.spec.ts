import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { beads, complaints, look, openWith } from "./open.ts";

test("the solution is stepped by move and letter, and each letter is held against what it should do", async ({ page }) => {
  const all = complaints(page);
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openWith(page);
  await look(page, "Carry out");
  const after = page.locator(".after");
  await expect(after).toContainText("Ready for the first move.");
  for (const part of ["Set-up", "Swap", "Undo"]) await expect(page.locator(".group", { hasText: part }).first()).toBeVisible();
  await page.getByRole("button", { name: /^Move on/ }).click();
  await expect(after).toContainText("Move 1 of");
  await page.getByRole("listbox").press("ArrowUp");
  await expect(after).toContainText("Ready for the first move.");
  await page.getByRole("button", { name: "Letter on" }).click();
  await expect(after).toContainText("The puzzle is as this letter should leave it.");
  await expectAccessible(page);
  const on = page.getByRole("button", { name: "Letter on" });
  for (let number = 0; number < 40 && (await on.getAttribute("aria-disabled")) !== "true"; number += 1) await on.click();
  await expect(after).toContainText("20 of 20 pieces are solved.");
  // The last letter takes the focus from nobody.
  await expect(on).toBeFocused();
  expect(all).toEqual([]);
});

test("it plays, pauses and goes on with the keyboard, and a reload comes back to the same move", async ({ page }) => {
  await openWith(page);
  await look(page, "Carry out");
  const thread = page.getByRole("listbox");
  await thread.focus();
  await page.keyboard.press("Space");
  await expect(page.getByRole("button", { name: "Pause" })).toBeVisible();
  await expect(page.locator(".was").first()).toBeVisible();
  await page.keyboard.press("Space");
  await expect(page.getByRole("button", { name: "Play", exact: true })).toBeVisible();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowDown");
  await expect(page.locator(".after")).toContainText(/Move \d+ of/);
  await page.waitForTimeout(700);
  const said = await page.locator(".after").textContent();
  await page.reload();
  await expect(page.locator(".after")).toHaveText(said ?? "");
});

test("the letter in hand stays in hand from lens to lens, and Back goes back a lens", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openWith(page);
  await beads(page).nth(3).click();
  const name = await page.locator(".reason .moves").first().textContent();
  await look(page, "Carry out");
  await expect(page.locator(".reason .moves").first()).toHaveText(name ?? "");
  await page.goBack();
  await expect(page.getByRole("heading", { level: 1, name: "Trace" })).toBeAttached();
  await expect(page.locator(".reason .moves").first()).toHaveText(name ?? "");
});

test("the solution is told by letters, with where its swaps come from", async ({ page }) => {
  await openWith(page);
  await page.getByRole("button", { name: "More about this memo" }).click();
  const drawer = page.getByRole("dialog");
  await expect(drawer.getByText("The swap is the corner algorithm of your conventions")).toBeVisible();
  await expect(drawer.locator(".steps li").first()).toContainText("Swap");
  await page.goBack();
  await expect(drawer).toBeHidden();
});
