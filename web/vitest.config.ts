import { svelte } from "@sveltejs/vite-plugin-svelte";
import { playwright } from "@vitest/browser-playwright";
import { defineConfig } from "vitest/config";

import { args, executablePath } from "./browser.ts";

export default defineConfig({
  plugins: [svelte()],
  build: { assetsInlineLimit: 0 },
  worker: { format: "es" },
  optimizeDeps: { include: ["idb"] },
  test: {
    include: ["tests/components/**/*.test.ts"],
    browser: {
      enabled: true,
      headless: true,
      screenshotFailures: false,
      provider: playwright({ launchOptions: { executablePath, args } }),
      instances: [{ browser: "chromium" }],
    },
  },
});
