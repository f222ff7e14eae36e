// Dialogs that the browser's Back closes: opening one is a step of the way, going back undoes it.

/** Opens a dialog as a step of the way. */
export function openOverlay(dialog: HTMLDialogElement) {
  if (dialog.open) return;
  dialog.showModal();
  history.pushState({ ...(history.state as object | null), overlay: true }, "");
  const back = () => dialog.close();
  addEventListener("popstate", back, { once: true });
  dialog.addEventListener(
    "close",
    () => {
      removeEventListener("popstate", back);
      // Closed by its own button: the step is taken back, so that Back does not come to it again.
      if ((history.state as { overlay?: boolean } | null)?.overlay === true) history.back();
    },
    { once: true },
  );
}

/** Closes a dialog when something beside it is touched. */
export function closedBeside(dialog: HTMLDialogElement) {
  const down = (event: PointerEvent) => {
    if (event.target !== dialog) return;
    const box = dialog.getBoundingClientRect();
    const inside =
      event.clientX >= box.left && event.clientX <= box.right && event.clientY >= box.top && event.clientY <= box.bottom;
    if (!inside) dialog.close();
  };
  dialog.addEventListener("pointerdown", down);
  return () => dialog.removeEventListener("pointerdown", down);
}
