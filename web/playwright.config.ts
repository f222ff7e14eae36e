import { defineConfig } from "@playwright/test";

import { args, executablePath } from "./browser.ts";

export const PORT = 4180;

export default defineConfig({
  testDir: "tests/pages",
  outputDir: "../out/test-results",
  fullyParallel: true,
  workers: 2,
  forbidOnly: process.env["CI"] !== undefined,
  reporter: [["list"]],
  use: {
    baseURL: `http://127.0.0.1:${PORT}/`,
    locale: "en-GB",
    viewport: { width: 1280, height: 800 },
    launchOptions: { executablePath, args },
  },
  // The program's own server, so that its headers are part of what is tested.
  webServer: {
    command: `cargo run --quiet --package server --example serve -- ${PORT}`,
    cwd: "..",
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
    timeout: 300_000,
  },
});
