// Pictures of every view, wide and narrow, light and dark, in `out/shots`, to be looked at.

import { test } from "@playwright/test";

import { openWith } from "../pages/open.ts";

const VIEWS = ["trace", "play", "check", "why", "conventions", "algorithms", "lesson"];
const WIDTHS = { wide: { width: 1440, height: 900 }, narrow: { width: 360, height: 780 } };

for (const [size, viewport] of Object.entries(WIDTHS)) {
  for (const colorScheme of ["light", "dark"] as const) {
    test.describe(`${size} ${colorScheme}`, () => {
      test.use({ viewport, colorScheme, contextOptions: { reducedMotion: "reduce" }, serviceWorkers: "block" });
      for (const view of VIEWS) {
        test(view, async ({ page }) => {
          await openWith(page);
          await page.locator(".bead").nth(1).click();
          await page.goto(`./#/${view}`);
          await page.getByRole("heading", { level: 1 }).waitFor();
          await page.waitForTimeout(1500);
          await page.evaluate(() => scrollTo(0, 0));
          await page.screenshot({ path: `../out/shots/${view}-${size}-${colorScheme}.png`, fullPage: true });
        });
      }
    });
  }
}
