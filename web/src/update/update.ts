// The page's side of the service worker: registers it and tells when a new version is ready.

/** Registers the service worker. `onReady` is called when a newer version waits, with the function that takes it. */
export async function watchForUpdates(onReady: (take: () => void) => void, beforeReload: () => Promise<void>) {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  let workers: ServiceWorkerContainer;
  let firstVisit: boolean;
  let registration: ServiceWorkerRegistration;
  try {
    // In some frames and modes of browsers merely asking for it throws.
    workers = navigator.serviceWorker;
    firstVisit = workers.controller === null;
    registration = await workers.register(new URL("service-worker.js", document.baseURI), { updateViaCache: "none" });
  } catch {
    // Refused by the browser's settings, or no secure address: the app works, only not without network.
    return;
  }

  let reloading = false;
  workers.addEventListener("controllerchange", () => {
    if (firstVisit || reloading) return;
    // Another tab may have taken the new version; this page's files belong to the old one.
    reloading = true;
    void beforeReload().finally(() => location.reload());
  });

  const announce = () => {
    const waiting = registration.waiting;
    if (waiting !== null && workers.controller !== null) onReady(() => waiting.postMessage("take over"));
  };
  announce();
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", announce);
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") registration.update().catch(() => undefined);
  });
}
