/// <reference lib="webworker" />
// Keeps the files of one version together: this script names every file of its version with a hash, loads them all
// before it is installed, and answers from those alone. A page therefore never gets files of two versions.

declare const self: ServiceWorkerGlobalScope;

const VERSION: string = "THE VERSION";
const FILES = "THE FILES" as unknown as Record<string, string>;

const SCOPE = self.registration.scope;
// The scope is part of the name, since two sites below one host share their caches.
const PREFIX = `hoodwink ${SCOPE} `;
const CACHE = PREFIX + VERSION;

self.addEventListener("install", (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(CACHE);
      await Promise.all(
        Object.entries(FILES).map(async ([path, integrity]) => {
          // The browser compares the hash: a file of another version fails the whole installation.
          const response = await fetch(new Request(new URL(path, SCOPE), { integrity, cache: "no-cache" }));
          if (!response.ok) throw new Error(`${path}: ${response.status}`);
          await cache.put(new URL(path, SCOPE), response);
        }),
      );
    })(),
  );
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) {
        if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
      }
    })(),
  );
});

self.addEventListener("message", (event) => {
  // Only the person at the page decides when the next version takes over.
  if (event.data === "take over") void self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(SCOPE)) return;
  const path = url.href.slice(SCOPE.length).replace(/[?#].*$/, "") || "index.html";
  const integrity = FILES[path];
  if (integrity === undefined) return;
  event.respondWith(
    (async () => {
      const cache = await caches.open(CACHE);
      const kept = await cache.match(new URL(path, SCOPE));
      return kept ?? fetch(new Request(new URL(path, SCOPE), { integrity }));
    })(),
  );
});

export {};
