import { expect, test } from "@playwright/test";

import { expectAccessible } from "./axe.ts";
import { beads, closeSubject, complaints, give, open, openSubject, openWith, scrambleField } from "./open.ts";

test("a scramble becomes a memo in pairs, and each letter opens its reason", async ({ page }) => {
  const all = complaints(page);
  await openWith(page);
  const reason = page.locator(".reason");
  await expect(reason).toContainText("Look at the buffer");
  const cube = () => page.locator(".scene").innerHTML();
  const before = await cube();
  await beads(page).nth(1).click();
  await expect(beads(page).nth(1)).toHaveAttribute("aria-selected", "true");
  await expect(reason).toContainText("letter 2 of");
  await expect.poll(cube).not.toBe(before);
  await page.getByRole("button", { name: "Next letter" }).click();
  await expect(reason).toContainText("letter 3 of");
  // One tab stop: arrows walk the letters, also from one kind to the next.
  const thread = page.getByRole("listbox");
  await thread.press("ArrowRight");
  await expect(reason).toContainText("letter 4 of");
  await thread.press("End");
  await expect(page.getByRole("button", { name: "Carry it out" })).toBeVisible();
  await thread.press("Home");
  await expect(reason).toContainText("letter 1 of");
  await expectAccessible(page);
  expect(all).toEqual([]);
});

test("the cube is turned by keys and by dragging, and comes back by a double tap", async ({ page }) => {
  await openWith(page);
  const thread = page.getByRole("listbox");
  const picture = () => page.locator(".scene").innerHTML();
  const changes = async (act: () => Promise<void>) => {
    const before = await picture();
    await act();
    await expect.poll(picture).not.toBe(before);
  };
  await page.waitForTimeout(800);
  const usual = await picture();
  await changes(() => thread.press("Shift+ArrowLeft"));
  const box = await thread.boundingBox();
  if (box === null) throw new Error("the velvet is not shown");
  const [x, y] = [box.x + box.width * 0.22, box.y + box.height * 0.5];
  await changes(async () => {
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 80, y + 30, { steps: 4 });
    await page.mouse.up();
  });
  await page.mouse.dblclick(box.x + 40, box.y + box.height * 0.5);
  await expect.poll(picture).toBe(usual);
});

test("touching a sticker on the cube takes its letter in hand", async ({ page }) => {
  await openWith(page);
  await page.waitForTimeout(800);
  const wanted = await page.evaluate(() => {
    for (const sticker of document.querySelectorAll(".scene [data-sticker]")) {
      const box = sticker.getBoundingClientRect();
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      const top = document.elementsFromPoint(x, y).map((one) => one.closest("[data-sticker]")).find((one) => one !== null);
      const name = sticker.getAttribute("data-sticker") ?? "";
      // An edge that is not the one in hand: letters of edges come first.
      if (top === sticker && name.startsWith("edge ") && !name.endsWith(document.querySelector(".reason .moves")?.textContent ?? "")) return { x, y, name };
    }
    return null;
  });
  if (wanted === null) throw new Error("no sticker is seen");
  const target = wanted.name.split(" ")[1] ?? "";
  const has = await page.locator(".spot", { hasText: "" }).evaluateAll((all) => all.map((one) => one.getAttribute("aria-label") ?? ""));
  test.skip(!has.some((said) => said.endsWith(target)), "this sticker has no letter");
  await page.mouse.click(wanted.x, wanted.y);
  await expect(page.locator(".reason .moves").first()).toHaveText(target);
});

test("changed letters, buffers and holding are followed at once, and undone", async ({ page }) => {
  await openWith(page);
  const memo = () => beads(page).evaluateAll((all) => all.map((one) => one.getAttribute("aria-label")));
  const before = await memo();
  const drawer = await openSubject(page);
  await drawer.getByRole("combobox", { name: "Buffer, edges" }).selectOption("DF (U)");
  await expect.poll(memo).not.toEqual(before);
  await drawer.getByRole("combobox", { name: "Up", exact: true }).selectOption("yellow");
  await expect(drawer.getByText(/^Yellow up/)).toBeVisible();
  await drawer.getByRole("button", { name: "Undo" }).click();
  await expect(drawer.getByText(/^White up/)).toBeVisible();
  await drawer.getByRole("button", { name: "Undo" }).click();
  await expect.poll(memo).toEqual(before);
  await drawer.getByRole("button", { name: "Redo" }).click();
  await expect.poll(memo).not.toEqual(before);
});

test("colours are painted by mouse and keyboard; nothing is red before all six are complete", async ({ page }) => {
  await openWith(page);
  await openSubject(page);
  await page.getByText("Colours I see").click();
  await expect(page.getByText("Turning can lead to this.")).toBeVisible();
  await page.locator("label.choice", { hasText: "red" }).click();
  await page.locator('[data-cell="U 0 0"]').click();
  const verdict = page.locator(".verdict");
  await expect(verdict).toContainText("red");
  await expect(verdict).not.toHaveClass(/wrong/);
  // A white one for it: every colour is there nine times, and turning cannot lead to it.
  await page.locator("label.choice", { hasText: "white" }).click();
  await page.locator('[data-cell="R 0 0"]').click();
  await expect(verdict).toHaveClass(/wrong/);
  await expectAccessible(page);
  await page.getByRole("button", { name: "Reset to solved" }).click();
  await expect(page.getByText("Turning can lead to this.")).toBeVisible();
  const sticker = page.locator('[data-cell="U 0 0"]');
  await sticker.focus();
  await sticker.press("ArrowRight");
  await expect(page.locator('[data-cell="U 0 1"]')).toBeFocused();
  await page.locator("label.choice", { hasText: "red" }).click();
  await page.locator('[data-cell="U 0 1"]').focus();
  await page.keyboard.press("Enter");
  await expect(page.locator('[data-cell="U 0 1"]')).toBeFocused();
  await expect(page.locator('[data-cell="U 0 1"]')).toHaveAttribute("aria-label", /red/);
});

test("a random scramble comes for each size", async ({ page }) => {
  test.setTimeout(150_000);
  await open(page);
  for (const size of ["2x2", "3x3", "4x4"]) {
    await openSubject(page);
    await page.getByRole("dialog").getByText(size, { exact: true }).click();
    const before = await scrambleField(page).inputValue();
    await page.getByRole("dialog").getByRole("button", { name: "Random scramble" }).click();
    await expect(scrambleField(page)).not.toHaveValue(before, { timeout: 90_000 });
    await closeSubject(page);
    await expect(beads(page).first()).toBeVisible();
  }
});

test("a scramble of the 4x4 that is waited for holds nothing up, and can be cancelled", async ({ page }) => {
  await openWith(page, "Rw U2", "4x4");
  await page.getByRole("button", { name: "Random scramble" }).click();
  await expect(page.getByText("A scramble is being searched")).toBeVisible();
  // The first module answers meanwhile.
  await page.getByRole("button", { name: "Next letter" }).click();
  await expect(page.locator(".reason")).toContainText("letter 2 of");
  await page.getByRole("button", { name: "Cancel" }).click();
  await expect(page.getByRole("button", { name: "Random scramble" })).toBeVisible();
  await give(page, "Rw U", "4x4");
});

test("a 2x2 is held so that its memo is shortest, unless told otherwise, and why is said", async ({ page }) => {
  await openWith(page, "R U' F2 R U2 F", "2x2");
  const drawer = await openSubject(page);
  await expect(drawer.getByText("this one has the shortest memo")).toBeVisible();
  await drawer.getByText("As in my conventions").click();
  await expect(drawer.getByText("White up, green in front. Your conventions say to hold it this way.")).toBeVisible();
});
