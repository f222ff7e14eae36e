import { createHash } from "node:crypto";
import { readFile, readdir, writeFile } from "node:fs/promises";
import { join, relative } from "node:path";
import { transformWithOxc, type Plugin, type ResolvedConfig } from "vite";

const SOURCE = "src/update/service-worker.ts";

/** After the build: lists every file of the site with its hash and writes the service worker that keeps exactly those. */
export function serviceWorker(): Plugin {
  let config: ResolvedConfig;
  return {
    name: "service-worker",
    apply: "build",
    configResolved(resolved) {
      config = resolved;
    },
    async closeBundle() {
      if (process.env.VITEST !== undefined) return;
      const site = join(config.root, config.build.outDir);
      const files: Record<string, string> = {};
      for (const entry of await readdir(site, { recursive: true, withFileTypes: true })) {
        if (!entry.isFile()) continue;
        const path = join(entry.parentPath, entry.name);
        const hash = createHash("sha256").update(await readFile(path)).digest("base64");
        files[relative(site, path).replaceAll("\\", "/")] = `sha256-${hash}`;
      }
      const listed = Object.fromEntries(Object.entries(files).sort(([a], [b]) => (a < b ? -1 : 1)));
      const version = createHash("sha256").update(JSON.stringify(listed)).digest("hex").slice(0, 16);
      const source = await readFile(join(config.root, SOURCE), "utf8");
      const { code } = await transformWithOxc(source, SOURCE, { lang: "ts", target: "es2022" });
      const filled = code
        .replace('"THE VERSION"', () => JSON.stringify(version))
        .replace('"THE FILES"', () => JSON.stringify(listed))
        // The file is run as a classic script, which has no exports.
        .replace(/^export\s*\{\s*\};?\s*$/m, "");
      await writeFile(join(site, "service-worker.js"), filled);
    },
  };
}
