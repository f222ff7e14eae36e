import { createRequire } from "node:module";

import { expect, type Page } from "@playwright/test";
import type { AxeResults } from "axe-core";

const AXE = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

/** Fails with the rule and the elements when axe-core finds a violation of WCAG 2.2 A or AA, or of its best practices. */
export async function expectAccessible(page: Page) {
  // Through the debugger, since the page's own policy runs no script that is put into it.
  const source = await import("node:fs/promises").then((fs) => fs.readFile(AXE, "utf8"));
  await page.evaluate(source);
  const results = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run: (options: object) => Promise<AxeResults> } };
    return axe.run({ resultTypes: ["violations"] });
  });
  const found = results.violations.map(({ id, impact, help, nodes }) => ({
    id,
    impact,
    help,
    where: nodes.map((node) => node.html),
  }));
  expect(found).toEqual([]);
}
