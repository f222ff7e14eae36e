// What is copied, and whether it was.

/** Copies a text; `false` where the clipboard refused. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
