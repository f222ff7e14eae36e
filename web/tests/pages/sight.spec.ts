// What must be in sight without scrolling, on a phone, a short phone and a desk, in both languages.

import { expect, test, type Locator, type Page } from "@playwright/test";

import { beads, open, SCRAMBLE } from "./open.ts";

const SCREENS = [
  { width: 390, height: 844 },
  { width: 390, height: 664 },
  { width: 1280, height: 800 },
];

/** Wholly within the window, and not covered. */
async function inSight(page: Page, ...all: Locator[]) {
  for (const one of all) await expect(one).toBeInViewport({ ratio: 0.99 });
  const scrolled = await page.evaluate(() => {
    const main = document.querySelector("main");
    return main === null || main.scrollHeight > main.clientHeight + 1 || document.documentElement.scrollHeight > innerHeight + 1;
  });
  expect(scrolled, "the page scrolls").toBe(false);
}

/** A link to a moment as it was before links had versions. */
const linked = (lens: string) => `./#/${lens}?size=3&scramble=${encodeURIComponent(SCRAMBLE)}`;

for (const [locale, next, play, explain, words] of [
  ["en-GB", "Next letter", "Play", "Explain", "Say it in words"],
  ["de-DE", "Nächster Buchstabe", "Abspielen", "Erklären", "In Worten sagen"],
] as const) {
  for (const viewport of SCREENS) {
    test.describe(`${locale} ${viewport.width}x${viewport.height}`, () => {
      test.use({ viewport, locale, contextOptions: { reducedMotion: "reduce" } });

      test("first visit: two sentences, cube, whole thread, reason, next", async ({ page }) => {
        await open(page);
        await expect(beads(page)).toHaveCount(4);
        await inSight(
          page,
          page.locator(".intro h2"),
          page.locator(".intro p"),
          page.locator(".scene .body").first(),
          beads(page).first(),
          beads(page).last(),
          page.locator(".reason > p").first(),
          page.getByRole("button", { name: next }),
        );
        // The words lie over neither the cube nor a bead.
        const words = await page.locator(".intro").boundingBox();
        const cube = await page.evaluate(() => {
          const faces = [...document.querySelectorAll(".scene .body")].map((face) => face.getBoundingClientRect());
          const [x, y] = [Math.min(...faces.map((face) => face.left)), Math.min(...faces.map((face) => face.top))];
          const [right, bottom] = [Math.max(...faces.map((face) => face.right)), Math.max(...faces.map((face) => face.bottom))];
          return { x, y, width: right - x, height: bottom - y };
        });
        const bead = await beads(page).first().boundingBox();
        if (words === null || bead === null) throw new Error("something is not there");
        const apart = (a: typeof words, b: typeof words) =>
          a.y + a.height <= b.y + 1 || b.y + b.height <= a.y + 1 || a.x + a.width <= b.x + 1 || b.x + b.width <= a.x + 1;
        // The shape of the cube lies within its box, whose corners are empty.
        expect(apart(words, cube)).toBe(true);
        expect(apart(words, bead)).toBe(true);
        // On the shortest screen little is left for it: 57 pixels in German.
        expect(cube.height).toBeGreaterThan(viewport.height < 700 ? 55 : 100);
      });

      test("trace: cube, threads, reason, next", async ({ page }) => {
        await page.goto(linked("trace"));
        await expect(beads(page).first()).toBeVisible();
        await expect(page.locator(".reason")).toHaveAttribute("data-scramble", SCRAMBLE);
        await inSight(
          page,
          page.locator(".scene .body").first(),
          ...(await beads(page).all()),
          page.locator(".reason > p").first(),
          page.getByRole("button", { name: next }),
        );
        // On a short screen the other thread is one word, which opens it.
        const heads = page.locator(".velvet .head");
        if ((await heads.count()) > 0) {
          await inSight(page, heads.first());
          await heads.first().click();
        } else expect(await beads(page).count()).toBe(20);
      });

      test("carry out: cube with the next turn, threads, moves, play", async ({ page }) => {
        await page.goto(linked("play"));
        await expect(page.locator(".move").first()).toBeVisible();
        await inSight(
          page,
          page.locator(".scene .body").first(),
          page.locator(".scene .turnl").first(),
          beads(page).first(),
          page.locator(".move").first(),
          page.locator(".move").last(),
          page.getByRole("button", { name: play, exact: true }),
        );
      });

      test("why: what is unsolved, cracked beads, three causes, a question", async ({ page }) => {
        test.setTimeout(120_000);
        await page.goto(linked("why"));
        // The puzzle of the link is in hand.
        await expect(page.locator(".subject .size")).toHaveText("3x3");
        await page.getByLabel(words).last().fill("FR, DF, DR");
        await page.getByRole("button", { name: explain }).click();
        await expect(page.locator(".cause").first()).toBeVisible({ timeout: 90_000 });
        await inSight(
          page,
          page.locator(".scene .un").first(),
          page.locator(".scene .cracked").first(),
          page.locator(".cause").nth(0),
          page.locator(".cause").nth(1),
          page.locator("#question"),
          page.locator(".answers > *").first(),
        );
      });
    });
  }
}
