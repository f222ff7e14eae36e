// The picture on the velvet: from where it is looked at, and one request after another for how it looks now.

import { isCancelled } from "../../engine/client";
import type { DrawnScene, WantedScene } from "../../engine/types";

/** A key turns the cube by this part of what a drag over its whole width does. */
const KEY_STEP = 0.2;

/** What is asked of the engine, as far as the view of it knows. */
export type Look = Pick<WantedScene, "frame" | "keep" | "eye" | "right" | "down">;

export class SceneView {
  drawn = $state.raw<DrawnScene | null>(null);
  /** Pixels of the velvet that the picture was drawn for. */
  frame = $state.raw({ width: 0, height: 0 });

  #wanted = { width: 0, height: 0 };
  #keep = 0;
  #eye: WantedScene["eye"] = null;
  #right = 0;
  #down = 0;
  #busy = false;
  #again = false;
  readonly #ask: (look: Look) => Promise<DrawnScene | null>;

  /** `ask` gives the picture, or nothing when there is none now. */
  constructor(ask: (look: Look) => Promise<DrawnScene | null>) {
    this.#ask = ask;
  }

  /** The velvet has this many pixels now, of which some are kept for words above. */
  resize(width: number, height: number, keep: number) {
    if (width === this.#wanted.width && height === this.#wanted.height && keep === this.#keep) return;
    this.#wanted = { width, height };
    this.#keep = keep;
    void this.draw();
  }

  /** By parts of the width of the cube. */
  drag(right: number, down: number) {
    this.#right += right;
    this.#down += down;
    void this.draw();
  }

  step(right: number, down: number) {
    this.drag(right * KEY_STEP, down * KEY_STEP);
  }

  /** Looked at from where the engine thinks best. */
  reset() {
    this.#eye = null;
    void this.draw();
  }

  /** Draws anew; while a picture is on its way, only the last wish counts. */
  async draw() {
    this.#again = true;
    if (this.#busy || this.#wanted.width < 1 || this.#wanted.height < 1) return;
    this.#busy = true;
    while (this.#again) {
      this.#again = false;
      const look: Look = { frame: this.#wanted, keep: this.#keep, eye: this.#eye, right: this.#right, down: this.#down };
      this.#right = 0;
      this.#down = 0;
      try {
        const drawn = await this.#ask(look);
        if (drawn !== null) {
          this.drawn = drawn;
          this.frame = look.frame;
          if (look.eye !== null || look.right !== 0 || look.down !== 0) this.#eye = drawn.eye;
        }
      } catch (error) {
        // What is wrong with the puzzle is said beside it; the last picture stays.
        if (!isCancelled(error)) break;
      }
    }
    this.#busy = false;
  }
}
