// What is in hand on the bench, kept once for all lenses: the puzzle with its memo and its execution, the letter that is looked at,
// and the picture of it. It is made once and outlives the screen, so that other places lead back to the same moment.

import { untrack } from "svelte";

import type { Bench } from "../../bench";
import { isCancelled, Refusal } from "../../engine/client";
import type { Checked, Letter, Part, Place, Pointed, SceneMoment, Step, TimeLine, Told, Traced } from "../../engine/types";
import { Playback } from "../../parts/playback.svelte";
import { isGiven, puzzleOf, sourceOf } from "../../puzzle";
import type { Lens } from "../../shell/route.svelte";
import { language, text } from "../../texts.svelte";
import { sentenceOf } from "../../trouble";
import { SceneView } from "./scene.svelte";

/** How long an arc is drawn, and then a bead slides, as a share of both; the pace itself is a token of the look. */
const DRAW_MS = 600;

export interface At {
  part: Part;
  partNumber: number;
  letter: Letter;
}

export class Hand {
  readonly bench: Bench;
  lens = $state<Lens>("trace");
  traced = $state.raw<Traced | null>(null);
  /** The scramble that the memo is of; the one typed may be a moment ahead. */
  shown = $state("");
  line = $state.raw<TimeLine | null>(null);
  checked = $state.raw<Checked | null>(null);
  told = $state.raw<Told | null>(null);
  /** Which of the causes is looked at. */
  cause = $state(0);
  /** What is wrong with the puzzle, and where in the scramble. */
  wrong = $state("");
  place = $state.raw<Place | null>(null);
  chosen = $state.raw<Pointed | null>(null);
  /** Whose thread a person opened. */
  open = $state<number | null>(null);

  readonly puzzle = $derived.by(() => puzzleOf(this.bench.draft));
  readonly source = $derived.by(() => sourceOf(this.bench, this.puzzle));
  readonly scene: SceneView;
  readonly playback: Playback;

  /** The puzzle that the time line is of. */
  #lineOf: string | null = null;
  #byLetter = false;
  #drawn = 1;
  #drawing = 0;

  constructor(bench: Bench, lens: Lens) {
    this.bench = bench;
    this.lens = lens;
    this.scene = new SceneView(async (look) => {
      if (this.traced === null) return null;
      return bench.engine.ask("scene", { ...look, source: this.source, moment: this.moment, open: this.open });
    });
    this.playback = new Playback({
      moves: () => this.line?.moves ?? 0,
      perSecond: () => ({ slow: 1, fast: 6 })[bench.draft.get("speed")] ?? 2.5,
      still: () => bench.settings.still,
      draw: () => void this.scene.draw(),
      reached: (move) => bench.draft.set("played", String(move)),
    });
    const [part, letter] = bench.draft.get("letter").split("-").map(Number);
    if (part !== undefined && letter !== undefined) this.chosen = { part, letter };
  }

  /** What follows from what. Called once by the screen; gives nothing. */
  follow() {
    $effect(() => this.#trace());
    $effect(() => this.#play());
    $effect(() => {
      void [this.source, this.lens, this.chosen, this.open, this.checked, this.told, this.cause, this.traced, language()];
      untrack(() => void this.scene.draw());
    });
  }

  #trace() {
    const { source, bench } = this;
    const { scramble } = this.puzzle;
    void language();
    if (!isGiven(this.puzzle)) {
      this.traced = null;
      this.line = null;
      this.wrong = "";
      this.place = null;
      return;
    }
    bench.engine.ask("trace", { source }, { topic: "trace" }).then(
      (view) => {
        this.traced = view;
        this.shown = scramble;
        this.wrong = "";
        this.place = null;
        const { chosen } = this;
        if (chosen === null || this.#find(chosen) < 0) this.chosen = this.letters[0] ? pointed(this.letters[0]) : null;
      },
      (error: unknown) => {
        if (isCancelled(error)) return;
        this.wrong = sentenceOf(error);
        this.place = error instanceof Refusal ? error.place : null;
      },
    );
  }

  #play() {
    const { source, bench } = this;
    void language();
    if (this.lens !== "play" || !isGiven(this.puzzle)) return;
    bench.engine.ask("play", { source }, { topic: "play" }).then(
      (view) => {
        const key = JSON.stringify(source);
        const again = this.#lineOf === key;
        const first = this.#lineOf === null;
        this.line = view;
        this.#lineOf = key;
        if (again) return;
        // A reload comes back to the move it left; who comes from another lens goes on with the letter in hand.
        const kept = first && !this.#byLetter ? Number(bench.draft.get("played")) : 0;
        this.playback.goTo(Number.isInteger(kept) ? Math.min(Math.max(kept, 0), view.moves) : 0);
        if (this.#byLetter && this.chosen !== null) this.#goToLetter(this.chosen);
        this.#byLetter = false;
      },
      (error: unknown) => {
        if (isCancelled(error)) return;
        this.line = null;
      },
    );
  }

  /** What is seen now. */
  get moment(): SceneMoment {
    if (this.lens === "play" && this.line !== null) {
      return { kind: "carried", at: this.playback.at, progress: this.playback.progress, playing: this.playback.playing };
    }
    if (this.lens === "check") {
      const { memo = {}, cracked = [], outcome = "", right = true } = this.checked ?? {};
      // What is right is shown as it lies in the hand.
      return { kind: "checked", memo, cracked, secret: this.checked === null, outcome: right ? "" : outcome };
    }
    if (this.lens === "why" && this.told !== null) {
      const cracked = this.told.explanations[this.cause]?.cracked ?? [];
      const { memo, outcome } = this.told;
      return { kind: "checked", memo, cracked, secret: false, outcome };
    }
    return { kind: "traced", letter: this.lens === "trace" ? this.chosen : null, drawn: this.#drawn };
  }

  /** All letters of the memo in their order. */
  readonly letters = $derived.by((): At[] =>
    (this.traced?.parts ?? []).flatMap((part, partNumber) =>
      part.groups.flat().map((letter) => ({ part, partNumber, letter })),
    ),
  );

  /** Which of all letters is in hand, or -1. */
  readonly at = $derived.by(() => this.#find(this.chosen));

  #find(chosen: Pointed | null): number {
    return this.letters.findIndex(
      ({ partNumber, letter }) => partNumber === chosen?.part && letter.index === chosen.letter,
    );
  }

  /** Takes a letter in hand; its arc is drawn once. */
  choose(letter: Pointed) {
    this.chosen = letter;
    this.open = null;
    this.bench.draft.set("letter", `${letter.part}-${letter.letter}`);
    if (this.lens === "play") this.#goToLetter(letter);
    else this.#animate();
  }

  /** The letter by so many further; `false` where there is none. */
  walk(by: number): boolean {
    const from = this.lens === "play" ? this.#find(this.step?.letters[0] ?? null) : this.at;
    const to = this.letters[from + by];
    if (to === undefined) return false;
    this.choose(pointed(to));
    return true;
  }

  walkTo(end: "first" | "last") {
    const to = this.letters.at(end === "first" ? 0 : -1);
    if (to !== undefined) this.choose(pointed(to));
  }

  /** Takes the letter in hand whose sticker was touched. */
  touch(sticker: string) {
    const found = this.letters.find(({ part, letter }) => `${part.kind} ${letter.target}` === sticker);
    if (found !== undefined) this.choose(pointed(found));
  }

  #animate() {
    this.#drawing += 1;
    const mine = this.#drawing;
    if (this.bench.settings.still) {
      this.#drawn = 1;
      return;
    }
    const began = performance.now();
    this.#drawn = 0.001;
    const frame = (now: number) => {
      if (mine !== this.#drawing) return;
      this.#drawn = Math.min(1, (now - began) / DRAW_MS);
      void this.scene.draw();
      if (this.#drawn < 1) requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  }

  // Carrying out

  /** The step under way, or the number of steps when all are done. */
  readonly stepNumber = $derived.by(() => {
    const steps = this.line?.steps ?? [];
    const found = steps.findIndex(({ first, moves }) => this.playback.at < first + moves.length);
    return found < 0 ? steps.length : found;
  });
  readonly step = $derived.by((): Step | undefined => this.line?.steps[this.stepNumber]);
  /** How many moves of the step are done. */
  readonly inside = $derived.by(() => this.playback.at - (this.step?.first ?? 0));
  /** How the puzzle stands, to be read aloud. */
  readonly stands = $derived.by(() => {
    const before = this.line?.steps[this.stepNumber - 1];
    if (this.step !== undefined && this.inside > 0) return this.step.moves[this.inside - 1]?.said ?? "";
    return before?.after ?? text("play-ready");
  });
  /** Whether the letter before did not do what it should. */
  readonly astray = $derived.by(
    () => this.inside === 0 && this.line?.steps[this.stepNumber - 1]?.asExpected === false,
  );

  #goToLetter({ part, letter }: Pointed) {
    const step = this.line?.steps.find(({ letters }) =>
      letters.some((one) => one.part === part && one.letter === letter),
    );
    if (step === undefined) return;
    this.playback.pause();
    this.playback.goTo(step.first);
  }

  /** A letter of the execution on or back. */
  stepLetter(by: number) {
    const { line, stepNumber, playback } = this;
    if (line === null) return;
    playback.pause();
    if (by > 0) playback.goTo(line.steps[stepNumber + 1]?.first ?? line.moves);
    else playback.goTo(this.inside > 0 ? (this.step?.first ?? 0) : (line.steps[stepNumber - 1]?.first ?? 0));
  }

  /** From lens to lens the same letter stays in hand. */
  changeLens(to: Lens) {
    const from = this.lens;
    if (to === from) return;
    if (from === "play") {
      this.playback.pause();
      const letter = this.step?.letters[0];
      if (letter !== undefined) this.chosen = letter;
    }
    this.lens = to;
    // Who has not gone on from the first letter begins with the first move, whichever kind is carried out first.
    if (to !== "play" || this.chosen === null || this.at < 1) return;
    if (this.#lineOf === JSON.stringify(this.source)) this.#goToLetter(this.chosen);
    else this.#byLetter = true;
  }
}

const pointed = ({ partNumber, letter }: At): Pointed => ({ part: partNumber, letter: letter.index });
