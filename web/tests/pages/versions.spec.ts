// A site on a plain host, below a sub-path, that is replaced by a newer version while someone has it open.

import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { createHash } from "node:crypto";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";

import { expect, test, type Page } from "@playwright/test";

import { give } from "./open.ts";

const KINDS: Record<string, string> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

let folder: string;
let server: Server;
let address: string;

test.beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "hoodwink-site-"));
  await cp(new URL("../../../out/site", import.meta.url), folder, { recursive: true });
  server = createServer((request, response) => {
    const path = normalize(decodeURIComponent((request.url ?? "/").split("?")[0] ?? "/"));
    const name = path.startsWith("/club/cube/") ? path.slice("/club/cube/".length) || "index.html" : "";
    readFile(join(folder, name)).then(
      (bytes) => response.writeHead(200, { "content-type": KINDS[extname(name)] ?? "text/plain" }).end(bytes),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/club/cube/`;
});

test.afterEach(async () => {
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
  await rm(folder, { recursive: true });
});

/** Puts a newer version in place: another style sheet, and a service worker that names it. */
async function replaceSite() {
  const before = await readFile(join(folder, "service-worker.js"), "utf8");
  const sheet = /assets\/index-[^"]+\.css(?=":)/.exec(before)?.[0] ?? "";
  const colour = ":root{--version-of-the-test:2}";
  const style = (await readFile(join(folder, sheet), "utf8")) + colour;
  const newer = sheet.replace("index-", "index-2");
  await writeFile(join(folder, newer), style);
  await rm(join(folder, sheet));
  const page = (await readFile(join(folder, "index.html"), "utf8")).replace(sheet, newer);
  await writeFile(join(folder, "index.html"), page);
  const hash = (text: string) => `sha256-${createHash("sha256").update(text).digest("base64")}`;
  const list = JSON.parse(/\{\s*"assets[^}]+\}/.exec(before)?.[0] ?? "{}") as Record<string, string>;
  const listed = Object.fromEntries(
    Object.entries(list).map(([name, kept]) => {
      if (name === sheet) return [newer, hash(style)];
      return [name, name === "index.html" ? hash(page) : kept];
    }),
  );
  const after = before
    .replace(/\{\s*"assets[^}]+\}/, () => JSON.stringify(listed))
    .replace(/(VERSION = ")[0-9a-f]+/, "$1second");
  await writeFile(join(folder, "service-worker.js"), after);
}

const versionOf = (page: Page) =>
  page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue("--version-of-the-test"));

async function openInstalled(page: Page) {
  await page.goto(address);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Trace");
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Trace");
}

test("a new version announces itself and is taken when the person says so, in every tab, with nothing typed lost", async ({
  context,
}) => {
  const [one, two] = [await context.newPage(), await context.newPage()];
  await openInstalled(one);
  await openInstalled(two);
  await replaceSite();
  await give(two, "R U2");

  await one.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  await expect(one.locator(".notices")).toContainText("A new version is ready.");
  // Until then a reload shows the old version, whole.
  await two.reload();
  await expect(two.locator(".subject .scramble")).toHaveText("R U2");
  expect(await versionOf(two)).toBe("");

  await give(two, "R U2 F");
  await Promise.all([
    one.waitForEvent("load"),
    two.waitForEvent("load"),
    one.getByRole("button", { name: "Load it now" }).click(),
  ]);
  for (const page of [one, two]) {
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Trace");
    expect(await versionOf(page)).toBe("2");
  }
  await expect(two.locator(".subject .scramble")).toHaveText("R U2 F");
});

test("a new version of which a file is missing or changed on the way is not taken", async ({ page }) => {
  await openInstalled(page);
  await replaceSite();
  await writeFile(join(folder, "icon.svg"), "<svg xmlns='http://www.w3.org/2000/svg'/>");
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration?.update();
    const worker = registration?.installing;
    if (worker) {
      await new Promise<void>((resolve) => {
        worker.addEventListener("statechange", () => {
          if (worker.state === "redundant" || worker.state === "installed") resolve();
        });
      });
    }
  });
  await page.reload();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Trace");
  expect(await versionOf(page)).toBe("");
});
