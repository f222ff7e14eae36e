import { mkdir, readFile } from "node:fs/promises";

import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { beads, closeSubject, complaints, goTo, openSubject, openWith, SCRAMBLE } from "./open.ts";

test("a lesson explains every step in pictures and words, with exercises and answers", async ({ page }) => {
  test.setTimeout(120_000);
  const all = complaints(page);
  await openWith(page);
  const letters = await beads(page).count();
  await goTo(page, "lesson");
  await expect(page.getByRole("heading", { name: "Trace the corners" })).toBeVisible({ timeout: 30_000 });
  await expect(page.locator(".exercises li")).toHaveCount(4);
  await expect(page.locator(".answers li")).toHaveCount(4);
  // A picture to pick it up, one a letter traced, one a letter carried out, one for parity.
  const steps = await page.locator(".steps li").count();
  expect(steps - 1 - 2 * letters).toBeLessThanOrEqual(1);
  expect(steps - 1 - 2 * letters).toBeGreaterThanOrEqual(0);
  await expectAccessible(page);
  await page.getByLabel("Exercises", { exact: true }).fill("7");
  await page.getByLabel("Exercises", { exact: true }).blur();
  await expect(page.locator(".exercises li")).toHaveCount(7, { timeout: 30_000 });
  await page.getByText("The scrambles as a list").click();
  expect((await page.getByRole("textbox", { name: "The scrambles as a list" }).inputValue()).split("\n")).toHaveLength(7);
  await page.getByText("The execution").click();
  await expect.poll(() => page.locator(".steps li").count()).toBe(letters + 1);
  expect(all).toEqual([]);
});

test("a link carries scramble and conventions to someone else", async ({ page, browser, baseURL }) => {
  await openWith(page);
  await openSubject(page);
  await page.getByRole("combobox", { name: "Up", exact: true }).selectOption("yellow");
  await closeSubject(page);
  await goTo(page, "lesson");
  const link = await page.getByLabel("Link to this lesson").inputValue();
  const other = await browser.newPage({ baseURL: baseURL ?? "" });
  await other.goto(link);
  await expect(other.getByText("This lesson came with a link")).toBeVisible();
  await expect(other.locator(".sheet")).toContainText(SCRAMBLE);
  await expect(other.locator(".sheet")).toContainText("so that yellow is up");
  await other.getByRole("button", { name: "Make it mine" }).click();
  await other.getByText("Change the puzzle").click();
  await expect(other.getByLabel("Scramble", { exact: true })).toHaveValue(SCRAMBLE);
  await other.close();
});

test("pictures are saved as SVG and PNG", async ({ page }) => {
  await openWith(page);
  await goTo(page, "lesson");
  const figure = page.locator("figure").first();
  for (const [kind, begin] of [
    ["SVG", "<?xml"],
    ["PNG", "\x89PNG"],
  ] as const) {
    const [download] = await Promise.all([page.waitForEvent("download"), figure.getByText(kind).click()]);
    const bytes = await readFile(await download.path());
    expect(bytes.toString("latin1").startsWith(begin)).toBe(true);
  }
});

test("it prints to PDF on A4 and Letter, the answers on a page of their own", async ({ page }) => {
  await openWith(page);
  await goTo(page, "lesson");
  await expect(page.locator(".answers li")).toHaveCount(4, { timeout: 30_000 });
  await mkdir("../out/print", { recursive: true });
  for (const [paper, size] of [
    ["A4", /MediaBox \[0 0 59[456](\.\d+)? 84[12](\.\d+)?\]/],
    ["Letter", /MediaBox \[0 0 612 792\]/],
  ] as const) {
    await page.getByLabel("Paper").selectOption(paper);
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true, path: `../out/print/lesson-${paper}.pdf` });
    const text = pdf.toString("latin1");
    expect(text).toMatch(size);
    expect(text.match(/\/Type \/Page\b/g)?.length).toBeGreaterThanOrEqual(4);
  }
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("button", { name: "Print" })).toBeHidden();
});
