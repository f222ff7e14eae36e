// Written from the catalogues (crates/wasm); a test there fails when this file is stale.

/** Texts for a page whose engine is not there yet, or cannot start. */
export const BOOT = {
  en: {
    "app-name": "Hoodwink",
    "engine-failed-text": "This browser could not load the part that computes. Reload the page; if that does not help, take a browser from the middle of 2024 or later.",
    "engine-failed-title": "The engine does not start",
    "engine-starting": "Starting the engine …",
    "needs-scripts": "Hoodwink computes in this page and needs JavaScript. Allow scripts for this address and reload.",
    "try-again": "Try again",
  },
  de: {
    "app-name": "Hoodwink",
    "engine-failed-text": "Dieser Browser konnte den Teil nicht laden, der rechnet. Lade die Seite neu; hilft das nicht, nimm einen Browser ab Mitte 2024.",
    "engine-failed-title": "Der Kern startet nicht",
    "engine-starting": "Der Kern startet …",
    "needs-scripts": "Hoodwink rechnet in dieser Seite und braucht JavaScript. Erlaube Skripte für diese Adresse und lade neu.",
    "try-again": "Noch einmal",
  },
} as const;
