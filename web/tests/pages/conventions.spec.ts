import { readFile } from "node:fs/promises";

import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { complaints, open } from "./open.ts";

test("letters are typed on stickers, with the keyboard alone", async ({ page }) => {
  await open(page, "conventions");
  const sticker = page.getByRole("button", { name: "UFR, white: C" });
  await sticker.focus();
  await page.keyboard.press("z");
  // Typing goes on to the next sticker.
  await expect(page.getByRole("button", { name: "UFR, white: Z" })).toBeVisible();
  await expect(page.getByRole("button", { name: "UFL, white: D" })).toBeFocused();
  // A letter that another sticker has is exchanged, so that none stands twice; no other changes.
  await sticker.or(page.getByRole("button", { name: "UFR, white: Z" })).focus();
  await page.keyboard.press("a");
  await expect(page.getByText("UBL now has Z, so that no letter stands twice.")).toBeVisible();
  const row = page.getByLabel("All letters in a row").first();
  await expect(row).toHaveValue("ZBADEFGHIJKLMNOPQRSTUVWX");
  await row.fill("ABCDEFGHIJKLMNOPQRSTUVWX");
  await row.blur();
  await expect(page.getByRole("button", { name: "UFR, white: C" })).toBeVisible();
  await row.fill("ABC");
  await row.blur();
  await expect(page.locator(".said .wrong")).toBeVisible();
  await row.fill("ZBADEFGHIJKLMNOPQRSTUVWX");
  await row.blur();
  await expect(page.getByRole("button", { name: "UFR, white: A" })).toBeVisible();
  await expect(page.getByRole("combobox", { name: "Set", exact: true })).toHaveValue("My conventions");
  await expectAccessible(page);
  await page.waitForTimeout(400);
  await page.reload();
  await expect(page.getByRole("button", { name: "UFR, white: A" })).toBeVisible();
});

test("a buffer is picked by tapping, and its algorithm is turned along", async ({ page }) => {
  await open(page, "conventions");
  await page.getByText("makes it the buffer").click();
  await page.locator('section[aria-label="corners"] [data-place="UFR"]').click();
  await expect(page.locator(".buffer").first()).toHaveText("Buffer UFR");
  await expect(page.getByText(/algorithm was turned with the cube/)).toBeVisible();
});

test("two methods chosen in a moment are both taken", async ({ page }) => {
  await open(page, "conventions");
  const methods = page.getByRole("combobox", { name: "Method" });
  await expect(methods).toHaveCount(2);
  await methods.nth(1).selectOption("three-cycle");
  await methods.nth(0).selectOption("three-cycle");
  await expect(page.locator("pre")).toContainText('corner = "three-cycle"\nedge = "three-cycle"');
});

test("colours are checked for contrast and for being told apart", async ({ page }) => {
  await open(page, "conventions");
  await expect(page.getByText("Everyone can tell these six colours apart")).toBeVisible();
  await page.getByLabel("red, Shade").fill("#fb8418");
  await expect(page.getByText(/look much alike to everyone/)).toBeVisible();
});

test("what is wrong with an algorithm or a file is said, and nothing is changed", async ({ page }) => {
  const all = complaints(page);
  await open(page, "conventions");
  const algorithm = page.getByLabel("Swap algorithm").first();
  await algorithm.fill("R U K");
  await algorithm.blur();
  await expect(page.locator(".said .wrong")).toContainText("column 5");
  await page.getByLabel("Open a file").setInputFiles({
    name: "bad.toml",
    mimeType: "application/toml",
    buffer: Buffer.from('[bufer]\ncorner = "UBL"\n'),
  });
  await expect(page.locator(".said .wrong")).toContainText("Line 1");
  await expect(page.getByRole("combobox", { name: "Set", exact: true })).toHaveValue("");
  expect(all).toEqual([]);
});

test("sets are kept by name, saved as files and opened again", async ({ page }) => {
  await open(page, "conventions");
  await page.getByLabel("Name of the set").fill("club");
  await page.getByRole("button", { name: "Save under this name" }).click();
  await page.getByRole("combobox", { name: "Up", exact: true }).selectOption("yellow");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save as a file" }).click(),
  ]);
  expect(download.suggestedFilename()).toBe("club.toml");
  const file = await readFile(await download.path(), "utf8");
  expect(file).toContain('up = "yellow"');
  await page.getByLabel("Open a file").setInputFiles({
    name: "again.toml",
    mimeType: "application/toml",
    buffer: Buffer.from(file),
  });
  await expect(page.getByRole("combobox", { name: "Set", exact: true })).toHaveValue("again");
  await page.getByRole("combobox", { name: "Set", exact: true }).selectOption("The usual ones");
  await expect(page.getByRole("combobox", { name: "Up", exact: true })).toHaveValue("U");
  await page.getByRole("combobox", { name: "Set", exact: true }).selectOption("again");
  await expect(page.getByRole("combobox", { name: "Up", exact: true })).toHaveValue("D");
  await page.getByRole("button", { name: "Delete this set" }).click();
  await expect(page.getByRole("combobox", { name: "Set", exact: true })).toHaveValue("");
});

test("two tabs that change one set both keep their change", async ({ context }) => {
  const [one, two] = [await context.newPage(), await context.newPage()];
  await open(one, "conventions");
  await one.getByLabel("Name of the set").fill("club");
  await one.getByRole("button", { name: "Save under this name" }).click();
  await one.waitForTimeout(400);
  await open(two, "conventions");
  await two.getByRole("combobox", { name: "Set", exact: true }).selectOption("club");
  await one.getByRole("combobox", { name: "Up", exact: true }).selectOption("yellow");
  await one.waitForTimeout(400);
  await two.getByRole("combobox", { name: "Up", exact: true }).selectOption("red");
  await expect(two.getByText("This set was changed in another tab.")).toBeVisible();
  await expect(two.getByRole("combobox", { name: "Set", exact: true })).toHaveValue("club 2");
  await one.reload();
  await expect(one.getByRole("combobox", { name: "Set", exact: true })).toHaveValue("club");
  await expect(one.getByRole("combobox", { name: "Up", exact: true })).toHaveValue("D");
});

test("a tab that was loaded again does not write over what another tab has changed since", async ({ context }) => {
  const [one, two] = [await context.newPage(), await context.newPage()];
  await open(one, "conventions");
  await one.getByLabel("Name of the set").fill("club");
  await one.getByRole("button", { name: "Save under this name" }).click();
  await one.waitForTimeout(400);
  await open(two, "conventions");
  await two.getByRole("combobox", { name: "Set", exact: true }).selectOption("club");
  await two.getByRole("combobox", { name: "Up", exact: true }).selectOption("yellow");
  await two.waitForTimeout(400);
  await one.reload();
  await expect(one.getByRole("combobox", { name: "Up", exact: true })).toHaveValue("U");
  await one.getByRole("combobox", { name: "Up", exact: true }).selectOption("red");
  await expect(one.getByText("This set was changed in another tab.")).toBeVisible();
  await expect(one.getByRole("combobox", { name: "Set", exact: true })).toHaveValue("club 2");
  await two.reload();
  await expect(two.getByRole("combobox", { name: "Set", exact: true })).toHaveValue("club");
  await expect(two.getByRole("combobox", { name: "Up", exact: true })).toHaveValue("D");
});
