// Plays a sequence of moves: which are done, how much of the next one is, and what the controls do to that.

/** What is played. */
export interface Played {
  /** How many moves there are. */
  moves: () => number;
  /** Moves a second. */
  perSecond: () => number;
  /** Whether moves jump instead of turning. */
  still: () => boolean;
  /** Told whenever there is something else to see. */
  draw: () => void;
  /** Told when a move is reached. */
  reached?: (move: number) => void;
}

export class Playback {
  /** Moves done. */
  at = $state(0);
  playing = $state(false);
  /** How much of the next move is done, 0 to 1. */
  progress = 0;

  #run = 0;
  readonly #played: Played;

  constructor(played: Played) {
    this.#played = played;
  }

  goTo(move: number) {
    this.at = move;
    this.progress = 0;
    this.#played.reached?.(move);
    this.#played.draw();
  }

  /** A move under way is finished. */
  pause() {
    this.playing = false;
    if (this.progress > 0) this.goTo(this.at + 1);
  }

  /** Plays until a move is reached. */
  playTo(last: number) {
    this.playing = true;
    this.#run += 1;
    const mine = this.#run;
    let from = performance.now();
    const frame = (now: number) => {
      if (!this.playing || mine !== this.#run) return;
      const done = ((now - from) / 1000) * this.#played.perSecond();
      if (done >= 1) {
        from = now;
        this.goTo(this.at + 1);
        if (this.at >= last) {
          this.playing = false;
          return;
        }
      } else if (!this.#played.still()) {
        this.progress = Math.max(done, 0.001);
        this.#played.draw();
      }
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  }

  toggle() {
    if (this.playing) this.pause();
    else {
      if (this.at >= this.#played.moves()) this.goTo(0);
      this.playTo(this.#played.moves());
    }
  }

  /** One move on, which is seen, or one back, which is not. */
  step(by: number) {
    if (this.playing) this.pause();
    if (by > 0 && this.at < this.#played.moves()) this.playTo(this.at + 1);
    else if (by < 0 && this.at > 0) this.goTo(this.at - 1);
  }

  stop() {
    this.playing = false;
  }
}
