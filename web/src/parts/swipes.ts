// A tap or a swipe anywhere on what is read: the next step, without looking for a button.

interface Ways {
  on: () => void;
  back: () => void;
}

/** Farther than this, in pixels, is a swipe; nearer than the other a tap. */
const FAR = 48;
const STILL = 8;

/** To be attached to what is read. Buttons, links and marked text keep their own meaning. */
export function swipes({ on, back }: Ways) {
  return (element: HTMLElement) => {
    let from: { x: number; y: number } | null = null;
    const own = (event: Event) =>
      event.target instanceof Element && event.target.closest("button, a, input, select, textarea, summary, label") !== null;
    const down = (event: PointerEvent) => {
      from = event.button === 0 && !own(event) ? { x: event.clientX, y: event.clientY } : null;
    };
    const up = (event: PointerEvent) => {
      if (from === null) return;
      const [right, downward] = [event.clientX - from.x, event.clientY - from.y];
      from = null;
      // Marking text with the mouse is no tap.
      if (event.pointerType === "mouse" && getSelection()?.isCollapsed === false) return;
      if (Math.abs(right) > FAR && Math.abs(right) > 2 * Math.abs(downward)) (right < 0 ? on : back)();
      else if (event.pointerType !== "mouse" && Math.hypot(right, downward) < STILL) on();
    };
    element.addEventListener("pointerdown", down);
    element.addEventListener("pointerup", up);
    return () => {
      element.removeEventListener("pointerdown", down);
      element.removeEventListener("pointerup", up);
    };
  };
}
