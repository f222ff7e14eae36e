import { expect, type Page } from "@playwright/test";

/** An invented scramble with a new cycle, a solved edge and parity. */
export const SCRAMBLE = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";

export async function open(page: Page, view = "trace") {
  await page.goto(`./#/${view}`);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
}

/** Opens Trace with a scramble typed in. */
export async function openWith(page: Page, scramble = SCRAMBLE) {
  await open(page);
  await page.getByLabel("Scramble", { exact: true }).fill(scramble);
  await expect(page.locator(".bead").first()).toBeVisible();
}

export async function goTo(page: Page, name: string) {
  await page.getByRole("navigation").getByRole("link", { name, exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name })).toBeVisible();
}

/** Collects what the page complains about: script errors and breaches of its policy. */
export function complaints(page: Page): string[] {
  const all: string[] = [];
  page.on("pageerror", (error) => all.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") all.push(message.text());
  });
  return all;
}
