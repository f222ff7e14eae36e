import { readFile } from "node:fs/promises";

import { expect, test, type Page } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { complaints, goTo, open } from "./open.ts";

/** An invented sheet: right, under the wrong letters, empty, not to be read, without a case. */
const SHEET = `pair;algorithm;notes
UBR RDF;[R' D' R, U];by heart
UBR FRD;[R' D' R, U];
UFL DFR;;ask the coach
UFL RDF;R U [what;
UXL RDF;R U R';
`;

async function openSheet(page: Page, text = SHEET, name = "club.csv", take = true) {
  const opened = page.locator("details", { has: page.getByText("CSV, TSV or text") });
  if ((await opened.getAttribute("open")) === null) await opened.locator("summary").first().click();
  await page.getByRole("combobox", { name: "In the file are" }).selectOption("corners");
  await opened.locator('input[type="file"]').setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
  if (take) await page.getByRole("button", { name: "Take it in", exact: true }).click();
}

const bead = (page: Page, of: string) => page.locator(`[data-case="${of}"]`);

/** The usual corner buffer is UBL; the sheet's cases are for UFR. */
async function withBuffer(page: Page) {
  await page.getByLabel("Buffer, where the file names none").fill("UFR");
}

test("a sheet is opened, and every row of it is accounted for", async ({ page }) => {
  const all = complaints(page);
  await open(page, "algorithms");
  await expect(page.getByText("0 of 378 cases have a right algorithm")).toBeVisible();
  await page.getByText("Open a sheet").first().click();
  await withBuffer(page);
  await openSheet(page);
  await expect(page.getByText("5 cells: 1 right, 1 wrong, 1 empty, 2 not understood.")).toBeVisible();
  const report = page.getByRole("region", { name: "What is in the file" });
  await expect(report.getByRole("row").first()).toContainText("solves ");
  await expect(report.getByText("line 3, column 2").first()).toBeVisible();
  await expect(page.getByText("1 of 378 cases have a right algorithm")).toBeVisible();
  await expect(page.getByRole("combobox", { name: "Buffer", exact: true })).toHaveValue("UFR");
  await expect(bead(page, "UBR RDF")).toHaveAccessibleName("BP (UBR RDF): right");
  await expectAccessible(page);
  // It is kept with the set, and in no other.
  await page.waitForTimeout(400);
  await page.reload();
  await expect(page.getByText("1 of 378 cases have a right algorithm")).toBeVisible();
  await goTo(page, "conventions");
  await page.getByRole("combobox", { name: "Set", exact: true }).selectOption("The usual ones");
  await goTo(page, "algorithms");
  await expect(page.getByText("0 of 378 cases have a right algorithm")).toBeVisible();
  expect(all).toEqual([]);
});

test("what is no sheet is refused in a sentence", async ({ page }) => {
  await open(page, "algorithms");
  await page.getByText("Open a sheet").first().click();
  await openSheet(page, "hello\nthere\n", "letter.txt", false);
  await expect(page.getByText(/letter\.txt: This is neither a list nor a grid/)).toBeVisible();
  await expect(page.getByText("0 of 378 cases have a right algorithm")).toBeVisible();
});

test("a sheet is shown before it is taken in, asked about when most is wrong, and taken back", async ({ page }) => {
  await open(page, "algorithms");
  await page.getByText("Open a sheet").first().click();
  await withBuffer(page);
  await openSheet(page, SHEET, "club.csv", false);
  await expect(page.getByText("5 cells: 1 right")).toBeVisible();
  await expect(page.getByText("0 of 378 cases have a right algorithm")).toBeVisible();
  await page.getByRole("button", { name: "Take it in", exact: true }).click();
  await expect(page.getByText("1 of 378 cases have a right algorithm")).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByText("0 of 378 cases have a right algorithm")).toBeVisible();
  // Corners, pasted as edges.
  await page.getByRole("combobox", { name: "In the file are" }).selectOption("edges");
  await page.getByLabel("Buffer, where the file names none").fill("UF");
  const rows = ["AB", "BA", "AD", "DA"].map((pair) => `${pair};[R' D' R, U]`);
  await page.getByLabel("Or paste its text").fill(`pair;algorithm\n${rows.join("\n")}\n`);
  await page.getByRole("button", { name: "Look at the text" }).click();
  await expect(page.getByText("probably they are not for this kind")).toBeVisible();
  await expect(page.getByRole("button", { name: "Take it in all the same" })).toBeVisible();
});

test("rows that belong to no case are taken out one by one", async ({ page }) => {
  await open(page, "algorithms");
  await page.getByText("Open a sheet").first().click();
  await withBuffer(page);
  await openSheet(page);
  await page.getByRole("button", { name: "Close the report" }).click();
  await page.getByText("Rows to look at").click();
  const unread = page.locator(".troubles li", { hasText: "UXL RDF" });
  await unread.getByRole("button", { name: /^Take out/ }).click();
  await expect(page.getByText("Taken out of the sheet.")).toBeVisible();
  await expect(unread).toHaveCount(0);
  await expect(page.locator(".troubles li")).toHaveCount(2);
});

test("a sheet in the letters of another system is read, its primes too", async ({ page }) => {
  await open(page, "algorithms");
  await page.getByText("Open a sheet").first().click();
  await withBuffer(page);
  const opened = page.locator("details", { has: page.getByText("CSV, TSV or text") });
  // Windows-1252: a typographic apostrophe is the byte 0x92, an umlaut 0xfc.
  const bytes = Buffer.from("pair;algorithm;notes\nUBR RDF;[R\x92 D\x92 R, U];f\xfcr morgen\n", "latin1");
  await opened.locator('input[type="file"]').setInputFiles({ name: "old.csv", mimeType: "text/csv", buffer: bytes });
  await expect(page.getByText("1 cell: 1 right, 0 wrong, 0 empty, 0 not understood.")).toBeVisible();
});

test("cases are filtered, chosen with keys, and shown with what solves them", async ({ page }) => {
  await open(page, "algorithms");
  await page.getByText("Open a sheet").first().click();
  await withBuffer(page);
  await openSheet(page);
  await expect(bead(page, "UBR RDF")).toBeVisible();
  await page.getByRole("textbox", { name: "Find" }).fill("PB");
  await expect(page.getByText("1 case matches.")).toBeVisible();
  const cards = page.locator(".cards button");
  await expect(cards).toHaveCount(1);
  await expect(cards.locator("svg")).toBeVisible();
  await cards.click();
  await expect(page.getByRole("heading", { name: "PB (RDF UBR)" })).toBeFocused();
  const inverse = page.locator(".ways li", { hasText: "inverse" }).first();
  await expect(inverse).toContainText("[U, R' D' R]");
  await inverse.getByRole("button", { name: "Take into the sheet" }).click();
  await expect(page.getByText("Taken into the sheet.")).toBeVisible();
  await expect(page.getByText("2 of 378 cases have a right algorithm")).toBeVisible();
  await expect(page.locator(".ways li", { hasText: "[U, R' D' R]" }).first()).toContainText("In the sheet");
  await page.getByRole("textbox", { name: "Find" }).fill("");
  await bead(page, "RDF UBR").focus();
  await page.keyboard.press("ArrowUp");
  await expect(page.locator("[data-case]:focus")).toHaveAttribute("data-case", /UBR$/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: /UBR\)$/ })).toBeVisible();
  await expectAccessible(page);
});

test("an algorithm is watched move by move", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await open(page, "algorithms");
  await page.locator("[data-case]").first().click();
  const turns = page.locator(".turns li");
  await expect(turns.first()).toHaveAttribute("aria-current", "step");
  const cube = page.locator(".case .cube svg");
  const before = await cube.innerHTML();
  await page.getByRole("button", { name: "Move on" }).click();
  await expect(turns.first()).toHaveClass(/done/);
  await expect.poll(() => cube.innerHTML()).not.toBe(before);
  await page.getByRole("button", { name: "Play", exact: true }).click();
  await expect(page.locator(".turns li:not(.done)")).toHaveCount(0, { timeout: 15_000 });
});

test("an algorithm of one's own is checked before it is taken in", async ({ page }) => {
  await open(page, "algorithms");
  await page.getByText("Open a sheet").first().click();
  await withBuffer(page);
  await openSheet(page);
  await bead(page, "UBR RDF").click();
  const own = page.getByRole("textbox", { name: "An algorithm of your own" });
  await own.fill("[U, R' D' R]");
  await page.getByRole("button", { name: "Check and take in" }).click();
  await expect(page.getByText("Not taken in: it solves the inverse, PB (RDF UBR).")).toBeVisible();
  await own.fill("R U K");
  await page.getByRole("button", { name: "Check and take in" }).click();
  await expect(page.getByText(/column 5: “K”/)).toBeVisible();
  await own.fill("[L L': [R' D' R, U]]");
  await page.getByRole("button", { name: "Check and take in" }).click();
  await expect(page.getByText("Taken into the sheet.")).toBeVisible();
  await expect(own).toHaveValue("");
});

test("a search runs in the worker, is proven, and can be cancelled", async ({ page }) => {
  await open(page, "algorithms");
  await page.getByText("Open a sheet").first().click();
  await withBuffer(page);
  await openSheet(page);
  await bead(page, "UBR RDF").click();
  await page.getByRole("textbox", { name: "Turns" }).fill("R U D");
  await page.getByRole("button", { name: "Search", exact: true }).click();
  await expect(page.getByText("BP (UBR RDF): 8 turns, proven shortest")).toBeVisible({ timeout: 30_000 });
  await page.getByRole("textbox", { name: "Turns" }).fill("R K");
  await page.getByRole("button", { name: "Search", exact: true }).click();
  await expect(page.getByText(/“K” is no block of turns/)).toBeVisible();
  // A long one: other views work on meanwhile, and it ends when nobody wants it any more.
  await page.getByRole("textbox", { name: "Turns" }).fill("U D R L F B");
  await page.getByRole("combobox", { name: "Up to this many turns" }).selectOption("12");
  await page.getByRole("button", { name: "Search", exact: true }).click();
  await page.getByRole("button", { name: "Cancel" }).click();
  await expect(page.getByRole("button", { name: "Cancel" })).toHaveCount(0);
  await page.getByRole("textbox", { name: "Find" }).fill("BP");
  await expect(page.getByText("1 case matches.")).toBeVisible();
});

test("gaps are filled and the sheet is saved; three-cycles are then carried out with it", async ({ page }) => {
  await open(page, "algorithms");
  await page.getByText("Change and save").click();
  await page.getByRole("button", { name: "Fill the gaps" }).click();
  await expect(page.getByText("Filled in 378 cases: 378 search.")).toBeVisible({ timeout: 30_000 });
  await expect(page.getByText("378 of 378 cases have a right algorithm")).toBeVisible();
  for (const [name, file] of [
    ["Save as CSV", "hoodwink-sheet.csv"],
    ["Save as Markdown", "hoodwink-corner-LUB.md"],
    ["Save as a page to print", "hoodwink-corner-LUB.html"],
  ] as const) {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name, exact: true }).click(),
    ]);
    expect(download.suggestedFilename()).toBe(file);
    expect((await readFile(await download.path(), "utf8")).length).toBeGreaterThan(5000);
  }
  await goTo(page, "conventions");
  await page.getByRole("combobox", { name: "Method" }).first().selectOption("Two letters at once, by three-cycles");
  await expect(page.getByText("No contradictions.")).toBeVisible();
  await goTo(page, "algorithms");
  page.once("dialog", (dialog) => void dialog.accept());
  await page.getByText("Change and save").click();
  await page.getByRole("button", { name: "Take all out" }).click();
  await expect(page.getByText("0 of 378 cases have a right algorithm")).toBeVisible();
});
