import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { complaints, open, openWith } from "./open.ts";

test("a scramble becomes a memo in pairs, and each letter opens its reason", async ({ page }) => {
  const all = complaints(page);
  await openWith(page);
  const memo = page.getByRole("region", { name: "Memo" });
  const first = memo.locator(".bead").first();
  const before = await page.locator(".cube svg").innerHTML();
  await first.click();
  await expect(first).toHaveAttribute("aria-pressed", "true");
  await expect(memo.locator(".reason")).toContainText("Look at the buffer");
  await expect.poll(() => page.locator(".cube svg").innerHTML()).not.toBe(before);
  await page.getByRole("button", { name: "Next letter" }).click();
  await expect(memo.locator(".reason")).toContainText("Letter 2");
  await memo.locator(".bead").nth(1).press("ArrowRight");
  await expect(memo.locator(".bead").nth(2)).toBeFocused();
  await expect(memo.locator(".reason")).toContainText("Letter 3");
  await expectAccessible(page);
  expect(all).toEqual([]);
});

test("the cube is turned by keys, by buttons and by dragging, and shows its hidden faces", async ({ page }) => {
  await openWith(page);
  const cube = page.getByRole("group", { name: "The puzzle" }).first();
  const picture = () => cube.locator("svg").innerHTML();
  const changes = async (act: () => Promise<void>) => {
    const before = await picture();
    await act();
    await expect.poll(picture).not.toBe(before);
  };
  await changes(() => cube.press("ArrowLeft"));
  await changes(() => page.getByRole("button", { name: "Turn upward" }).click());
  await changes(async () => {
    const box = await cube.boundingBox();
    if (box === null) throw new Error("the cube is not shown");
    await page.mouse.move(box.x + 100, box.y + 100);
    await page.mouse.down();
    await page.mouse.move(box.x + 180, box.y + 130, { steps: 4 });
    await page.mouse.up();
  });
  await changes(async () => {
    await page.getByLabel("Hidden faces").selectOption("In mirrors");
  });
  await expect(cube.locator("desc")).toContainText("U: ");
});

test("changed letters, buffers and holding are followed at once", async ({ page }) => {
  await openWith(page);
  const memo = () => page.locator(".bead").allTextContents();
  const before = await memo();
  await page.getByText("Holding and buffers").click();
  await page.getByRole("combobox", { name: "Buffer, edges" }).selectOption("DF (U)");
  await expect.poll(memo).not.toEqual(before);
  await page.getByRole("combobox", { name: "Up", exact: true }).selectOption("yellow");
  await expect(page.getByText(/becomes yellow up/)).toBeVisible();
});

test("colours are painted by mouse and keyboard, and impossible ones are explained", async ({ page }) => {
  await open(page);
  await page.getByText("Colours I see").click();
  await expect(page.getByText("Turning can lead to this.")).toBeVisible();
  await page.locator("label.choice", { hasText: "red" }).click();
  await page.locator('[data-cell="U 0 0"]').click();
  await expect(page.locator(".verdict")).toContainText("red");
  await expect(page.locator(".verdict")).not.toContainText("Turning can lead to this.");
  await expectAccessible(page);
  await page.getByRole("button", { name: "Solved again" }).click();
  await expect(page.getByText("Turning can lead to this.")).toBeVisible();
  const sticker = page.locator('[data-cell="U 0 0"]');
  await sticker.focus();
  await sticker.press("ArrowRight");
  await expect(page.locator('[data-cell="U 0 1"]')).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.locator('[data-cell="U 0 1"]')).toBeFocused();
  await expect(page.locator('[data-cell="U 0 1"]')).toHaveAttribute("aria-label", /red/);
});

test("a random scramble comes for each size", async ({ page }) => {
  test.setTimeout(120_000);
  await open(page);
  for (const size of ["2x2", "3x3", "4x4"]) {
    await page.getByText(size, { exact: true }).click();
    const before = await page.getByLabel("Scramble", { exact: true }).inputValue();
    await page.getByRole("button", { name: "Random scramble" }).click();
    await expect(page.getByLabel("Scramble", { exact: true })).not.toHaveValue(before, { timeout: 90_000 });
    await expect(page.locator(".bead").first()).toBeVisible();
  }
});

test("a scramble of the 4x4 that is waited for holds nothing up, and can be cancelled", async ({ page }) => {
  await open(page);
  await page.getByText("4x4", { exact: true }).click();
  await page.getByRole("button", { name: "Random scramble" }).click();
  await expect(page.getByText("A scramble is being searched")).toBeVisible();
  // The first module answers meanwhile.
  await page.getByLabel("Scramble", { exact: true }).fill("Rw U2");
  await expect(page.locator(".bead").first()).toBeVisible();
  await page.getByRole("button", { name: "Cancel" }).click();
  await expect(page.getByRole("button", { name: "Random scramble" })).toBeVisible();
  await expect(page.getByLabel("Scramble", { exact: true })).toHaveValue("Rw U2");
});

test("on a phone the cube stays in sight beside the reason", async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 780 });
  await openWith(page);
  const bead = page.locator(".bead").last();
  await bead.scrollIntoViewIfNeeded();
  await bead.click();
  await expect(page.locator(".cube")).toBeInViewport({ ratio: 0.9 });
});
