// Tables of the engine that take seconds to make are kept in the browser's cache. What is not there, or cannot be kept, is made anew: nothing
// depends on it.

const CACHE = "hoodwink tables";

/** Kept under the address of the module that made them: its hash is part of that, so another version makes its own. */
const keyOf = (module: string) => new URL(`${module}?tables`, location.href).href;

/** The tables that a module kept; null where there are none. */
export async function keptTables(module: string): Promise<Uint8Array | null> {
  try {
    const kept = await (await caches.open(CACHE)).match(keyOf(module));
    return kept === undefined ? null : new Uint8Array(await kept.arrayBuffer());
  } catch {
    // No cache here, or none that may be used.
    return null;
  }
}

/** Keeps the tables of a module, in place of those of other versions. */
export async function keepTables(module: string, tables: Uint8Array) {
  try {
    const cache = await caches.open(CACHE);
    const key = keyOf(module);
    for (const request of await cache.keys()) if (request.url !== key) await cache.delete(request);
    await cache.put(key, new Response(new Blob([new Uint8Array(tables)]), { headers: { "content-type": "application/octet-stream" } }));
  } catch {
    // The storage is full, or closed to this page.
  }
}
