import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type Plugin } from "vite";

import { BOOT } from "./src/engine/boot.ts";
import { serviceWorker } from "./service-worker.plugin.ts";

/** Puts texts of the catalogue into the page itself, for the case that no script runs. */
function textsInPage(): Plugin {
  return {
    name: "texts-in-page",
    transformIndexHtml: (page) =>
      page.replace(/<!-- texts: ([a-z-]+) -->/g, (_, name: string) =>
        Object.entries(BOOT)
          .map(([language, texts]) => `<p lang="${language}">${(texts as Record<string, string>)[name] ?? name}</p>`)
          .join(""),
      ),
  };
}

export default defineConfig({
  // Relative addresses: the folder works on any host and below any path.
  base: "./",
  plugins: [svelte(), textsInPage(), serviceWorker()],
  build: {
    outDir: "../out/site",
    emptyOutDir: true,
    target: "es2022",
    // Inlined files would be `data:` addresses, which the page's policy does not run.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  worker: { format: "es" },
  server: { port: 5173, strictPort: true },
});
