// Keeps the screen awake while hands are busy with a puzzle.

/** Keeps the screen awake until what it gives is called; where a browser cannot, nothing happens. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let wanted = true;
  const take = () => {
    if (!wanted || !("wakeLock" in navigator) || document.visibilityState !== "visible") return;
    navigator.wakeLock.request("screen").then(
      (held) => {
        if (wanted) lock = held;
        else void held.release().catch(() => undefined);
      },
      // Refused, for instance while the battery is low: the screen does as it always does.
      () => undefined,
    );
  };
  take();
  // The browser lets go of it whenever the page is out of sight.
  document.addEventListener("visibilitychange", take);
  return () => {
    wanted = false;
    document.removeEventListener("visibilitychange", take);
    void lock?.release().catch(() => undefined);
  };
}
