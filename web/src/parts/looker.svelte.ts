// How a puzzle is looked at: dragging and keys become requests, one at a time, each with all that came in between.

import { isCancelled } from "../engine/client";
import type { Drawn, Eye, HiddenFaces, Looking } from "../engine/types";

/** A key turns the cube by this part of what a drag over its whole width does. */
const KEY_STEP = 0.2;

export class Looker {
  svg = $state("");
  hidden = $state<HiddenFaces>("no");

  #eye: Eye | null = null;
  #right = 0;
  #down = 0;
  #busy = false;
  #again = false;
  readonly #ask: (looking: Looking) => Promise<Drawn | null>;

  /** `ask` gives the picture, or nothing when there is none now. */
  constructor(ask: (looking: Looking) => Promise<Drawn | null>) {
    this.#ask = ask;
  }

  /** By parts of the width of the cube. */
  drag(right: number, down: number) {
    this.#right += right;
    this.#down += down;
    void this.draw();
  }

  key(event: KeyboardEvent) {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (way === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    this.step(way[0] ?? 0, way[1] ?? 0);
  }

  step(right: number, down: number) {
    this.drag(right * KEY_STEP, down * KEY_STEP);
  }

  reset() {
    this.#eye = null;
    void this.draw();
  }

  hide(hidden: HiddenFaces) {
    this.hidden = hidden;
    this.reset();
  }

  /** Draws anew; while a picture is on its way, only the last wish counts. */
  async draw() {
    this.#again = true;
    if (this.#busy) return;
    this.#busy = true;
    while (this.#again) {
      this.#again = false;
      const looking: Looking = { eye: this.#eye, right: this.#right, down: this.#down, hidden: this.hidden };
      this.#right = 0;
      this.#down = 0;
      try {
        const drawn = await this.#ask(looking);
        if (drawn !== null) {
          this.svg = drawn.svg;
          if (looking.eye !== null || looking.right !== 0 || looking.down !== 0) this.#eye = drawn.eye;
        }
      } catch (error) {
        // What is wrong with the puzzle is said beside it; the last picture stays.
        if (!isCancelled(error)) break;
      }
    }
    this.#busy = false;
  }
}

/** Lets an element be turned by pointer and arrow keys. */
export function turnable(looker: Looker) {
  return (element: HTMLElement) => {
    let from: { x: number; y: number } | null = null;
    const down = (event: PointerEvent) => {
      from = { x: event.clientX, y: event.clientY };
      element.setPointerCapture(event.pointerId);
    };
    const move = (event: PointerEvent) => {
      if (from === null) return;
      const width = element.clientWidth / 2 || 1;
      looker.drag((event.clientX - from.x) / width, (event.clientY - from.y) / width);
      from = { x: event.clientX, y: event.clientY };
    };
    const up = () => {
      from = null;
    };
    const key = (event: KeyboardEvent) => looker.key(event);
    element.tabIndex = 0;
    element.addEventListener("pointerdown", down);
    element.addEventListener("pointermove", move);
    element.addEventListener("pointerup", up);
    element.addEventListener("pointercancel", up);
    element.addEventListener("keydown", key);
    return () => {
      element.removeEventListener("pointerdown", down);
      element.removeEventListener("pointermove", move);
      element.removeEventListener("pointerup", up);
      element.removeEventListener("pointercancel", up);
      element.removeEventListener("keydown", key);
    };
  };
}
