// Pictures of every screen, wide and narrow, light and dark, in `out/shots`, to be looked at.

import { test, type Page } from "@playwright/test";

import { open, openSubject, SCRAMBLE } from "../pages/open.ts";

const WIDTHS = { wide: { width: 1280, height: 800 }, narrow: { width: 390, height: 844 } };

const linked = (lens: string, more = "") => `./#/${lens}?size=3&scramble=${encodeURIComponent(SCRAMBLE)}${more}`;

async function bench(page: Page, lens: string, more = "") {
  await page.goto(linked(lens, more));
  await page.locator(".scene .body").first().waitFor();
  await page.getByRole("button", { name: "Close this notice" }).click();
}

const SCREENS: Record<string, (page: Page) => Promise<void>> = {
  "first-visit": (page) => open(page),
  trace: async (page) => {
    await bench(page, "trace");
    await page.locator(".spot").nth(1).click();
  },
  "carry-out": async (page) => {
    await bench(page, "play");
    await page.getByRole("button", { name: "Letter on" }).click();
    for (let move = 0; move < 2; move += 1) await page.getByRole("button", { name: /^Move on/ }).click();
  },
  check: async (page) => {
    await bench(page, "check", "&corners=BC%20WK%20HG%20D&edges=JKVEGTSAQCHFC");
    await page.locator(".mark").waitFor();
  },
  "check-empty": (page) => bench(page, "check"),
  "why-tell": (page) => bench(page, "why"),
  why: async (page) => {
    await bench(page, "why");
    await page.getByLabel("Say it in words").last().fill("FR, DF, DR");
    await page.getByRole("button", { name: "Explain" }).click();
    await page.locator(".cause").first().waitFor({ timeout: 90_000 });
  },
  subject: async (page) => {
    await bench(page, "trace");
    await openSubject(page);
    await page.waitForTimeout(500);
  },
  "subject-painted": async (page) => {
    await open(page);
    await openSubject(page);
    await page.getByText("Colours I see").click();
    await page.locator("[data-cell]").first().waitFor();
  },
  more: async (page) => {
    await bench(page, "trace");
    await page.getByRole("button", { name: "More about this memo" }).click();
    await page.locator(".steps li").first().waitFor();
  },
  "four-layers": async (page) => {
    await page.goto(`./#/trace?size=4&scramble=${encodeURIComponent("R U Fw2 D' Rw U2 L Fw' Uw R2 B Uw2 L' F Rw2")}`);
    await page.locator(".spot").first().waitFor();
    await page.getByRole("button", { name: "Close this notice" }).click();
  },
  settings: async (page) => {
    await open(page);
    await page.getByRole("button", { name: "Settings" }).click();
  },
  conventions: (page) => open(page, "conventions"),
  algorithms: (page) => open(page, "algorithms"),
  lesson: async (page) => {
    await open(page);
    await page.goto("./#/lesson");
    await page.locator(".sheet").waitFor({ timeout: 60_000 });
  },
};

for (const [size, viewport] of Object.entries(WIDTHS)) {
  for (const colorScheme of ["light", "dark"] as const) {
    test.describe(`${size} ${colorScheme}`, () => {
      test.use({ viewport, colorScheme, contextOptions: { reducedMotion: "reduce" }, serviceWorkers: "block" });
      for (const [name, show] of Object.entries(SCREENS)) {
        test(name, async ({ page }) => {
          test.setTimeout(120_000);
          await show(page);
          await page.waitForTimeout(900);
          await page.screenshot({ path: `../out/shots/${name}-${size}-${colorScheme}.png` });
        });
      }
    });
  }
}
