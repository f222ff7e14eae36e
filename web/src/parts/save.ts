// Files for the person to keep.

/** Offers a text as a file. */
export function save(name: string, content: string | Blob, kind: string) {
  const blob = typeof content === "string" ? new Blob([content], { type: kind }) : content;
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has begun to read it by the time this runs.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

const PNG_WIDTH = 1200;

/** Offers a picture as SVG, or as PNG made of it by the browser. */
export async function savePicture(name: string, svg: string, kind: "svg" | "png") {
  const file = new Blob([`<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`], { type: "image/svg+xml" });
  if (kind === "svg") {
    save(`${name}.svg`, file, file.type);
    return;
  }
  const address = URL.createObjectURL(file);
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = PNG_WIDTH;
    canvas.height = Math.round((PNG_WIDTH * image.naturalHeight) / image.naturalWidth);
    canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const png = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
    if (png !== null) save(`${name}.png`, png, png.type);
  } finally {
    URL.revokeObjectURL(address);
  }
}
