// The browser that the tests drive: one that is installed, never one that a test tool downloads.

/** Path of the browser; the task that runs the tests sets it. */
export const executablePath = process.env["CHROMIUM"] ?? "/usr/bin/chromium";

/** A quiet start: no sandbox (tests may run as root), no look-ups of its own on the network. */
export const args = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
