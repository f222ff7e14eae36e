// Makes the stickers of a picture buttons: by tapping, and by one tab stop with arrow keys.

export interface StickerOptions {
  /** The attribute that names a sticker. */
  by: "data-cell" | "data-place";
  /** What each is called, by name. */
  said: ReadonlyMap<string, string>;
  /** What the whole is called. */
  label: string;
  /** The sticker that has the tab stop, if it is known. */
  chosen?: string;
  onPick: (name: string) => void;
  /** A key other than arrows, Enter and space, on a sticker. */
  onKey?: (name: string, event: KeyboardEvent) => void;
}

const middle = (element: Element) => {
  const box = element.getBoundingClientRect();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

/** The nearest element in a direction on the screen: this is about looks, not about cubes. */
function next(from: Element, all: Element[], dx: number, dy: number): Element | undefined {
  const here = middle(from);
  let best: { element: Element; far: number } | undefined;
  for (const element of all) {
    const there = middle(element);
    const [x, y] = [there.x - here.x, there.y - here.y];
    const along = x * dx + y * dy;
    const across = Math.abs(x * dy) + Math.abs(y * dx);
    if (along < 2 || across > along) continue;
    const far = along + 2 * across;
    if (best === undefined || far < best.far) best = { element, far };
  }
  return best?.element;
}

/** To be attached to the element around a picture, and again whenever the picture is another one. */
export function stickerButtons(options: StickerOptions) {
  return (around: HTMLElement) => {
    const svg = around.querySelector("svg");
    svg?.setAttribute("role", "group");
    svg?.setAttribute("aria-label", options.label);
    svg?.querySelector("title")?.remove();
    const nameOf = (element: Element) => element.getAttribute(options.by) ?? "";
    const all = [...around.querySelectorAll<SVGElement>(`[${options.by}]`)].filter((element) =>
      options.said.has(nameOf(element)),
    );
    const stop = all.find((element) => nameOf(element) === options.chosen) ?? all[0];
    for (const element of all) {
      element.setAttribute("role", "button");
      element.setAttribute("aria-label", options.said.get(nameOf(element)) ?? "");
      if (nameOf(element) === options.chosen) element.setAttribute("aria-pressed", "true");
      element.tabIndex = element === stop ? 0 : -1;
    }
    const target = (event: Event) => {
      const element = event.target instanceof Element ? event.target.closest<SVGElement>(`[${options.by}]`) : null;
      return element !== null && all.includes(element) ? element : null;
    };
    const click = (event: Event) => {
      const element = target(event);
      if (element !== null) options.onPick(nameOf(element));
    };
    const key = (event: KeyboardEvent) => {
      const element = target(event);
      if (element === null || event.ctrlKey || event.metaKey || event.altKey) return;
      const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
      if (way !== undefined) {
        event.preventDefault();
        const to = next(element, all, way[0] ?? 0, way[1] ?? 0);
        if (to instanceof SVGElement) {
          element.tabIndex = -1;
          to.tabIndex = 0;
          to.focus();
        }
      } else if (event.key === "Enter" || event.key === " ") {
        event.preventDefault();
        options.onPick(nameOf(element));
      } else {
        options.onKey?.(nameOf(element), event);
      }
    };
    around.addEventListener("click", click);
    around.addEventListener("keydown", key);
    return () => {
      around.removeEventListener("click", click);
      around.removeEventListener("keydown", key);
    };
  };
}

/** After a picture was drawn anew: the focus goes back to the sticker it was on. */
export function refocus(around: HTMLElement | undefined, by: StickerOptions["by"], name: string) {
  around?.querySelector<SVGElement>(`[${by}="${CSS.escape(name)}"]`)?.focus();
}
