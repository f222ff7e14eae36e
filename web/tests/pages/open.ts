import { expect, type Locator, type Page } from "@playwright/test";

/** An invented scramble with a new cycle, a solved edge and parity. */
export const SCRAMBLE = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";

export async function open(page: Page, view = "trace") {
  await page.goto(`./#/${view}`);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
}

/** Opens what changes the puzzle in hand. */
export async function openSubject(page: Page): Promise<Locator> {
  await page.getByRole("button", { name: /^Change the puzzle/ }).click();
  const drawer = page.getByRole("dialog", { name: "The puzzle in hand" });
  await expect(drawer).toBeVisible();
  return drawer;
}

export async function closeSubject(page: Page) {
  const drawer = page.getByRole("dialog", { name: "The puzzle in hand" });
  await drawer.getByRole("button", { name: "Done" }).last().click();
  await expect(drawer).toBeHidden();
}

export const scrambleField = (page: Page) => page.getByLabel("Scramble", { exact: true });

/** Puts a puzzle in hand: its size, then its scramble. */
export async function give(page: Page, scramble = SCRAMBLE, size = "3x3") {
  const drawer = await openSubject(page);
  await drawer.getByText(size, { exact: true }).click();
  await scrambleField(page).fill(scramble);
  await closeSubject(page);
  await expect(page.locator(".reason").first()).toHaveAttribute("data-scramble", scramble);
}

/** Opens Trace with a scramble in hand. */
export async function openWith(page: Page, scramble = SCRAMBLE, size = "3x3") {
  await open(page);
  await give(page, scramble, size);
}

/** Touches a lens. */
export async function look(page: Page, name: string) {
  await page.getByRole("navigation", { name: "Lenses" }).getByRole("link", { name, exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name })).toBeAttached();
}

/** Goes to a view by its address, as a link within the page does. */
export async function goTo(page: Page, view: string) {
  await page.evaluate((view) => (location.hash = `#/${view}`), view);
  await expect(page.getByRole("heading", { level: 1 })).toBeAttached();
}

/** Letters of the memo as they lie on the velvet. */
export const beads = (page: Page) => page.locator(".spot");

/** Collects what the page complains about: script errors and breaches of its policy. */
export function complaints(page: Page): string[] {
  const all: string[] = [];
  page.on("pageerror", (error) => all.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") all.push(message.text());
  });
  return all;
}
