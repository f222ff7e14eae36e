// The page's side of the engine. It has three modules, each in a worker of its own: a long search in one holds the others not up.
// Who asks need not know which module answers, nor whether it is there yet.

import { MODULE_OF, type ModuleName } from "./modules";
import { WorkerQueue, type AskOptions } from "./queue";
import type { Methods } from "./types";

export { EngineNotLoaded, EngineStopped, Refusal, type AskOptions } from "./queue";

/** Whether an error only says that nobody wants the answer any more. */
export const isCancelled = (error: unknown): boolean => error instanceof DOMException && error.name === "AbortError";

export class EngineClient {
  #language = "en";
  readonly #queues: Record<ModuleName, WorkerQueue>;

  constructor(makeWorker: (module: ModuleName) => Worker) {
    this.#queues = {
      first: new WorkerQueue(() => makeWorker("first")),
      rest: new WorkerQueue(() => makeWorker("rest")),
      deep: new WorkerQueue(() => makeWorker("deep")),
    };
  }

  /** Language of the sentences in views; the engine takes the nearest it has. */
  get language() {
    return this.#language;
  }

  set language(language: string) {
    if (language === this.#language) return;
    this.#language = language;
    for (const queue of Object.values(this.#queues)) queue.speak(language);
  }

  /** Called when a request ended its worker twice and was given up. */
  set onStopped(told: () => void) {
    for (const queue of Object.values(this.#queues)) queue.onStopped = told;
  }

  /** Loads a module where that was not done. Settled when it works, or cannot; then the next one who asks has it tried again. */
  load(module: ModuleName): Promise<void> {
    return this.#queues[module].load();
  }

  /** Settled once a module was loaded by whoever wanted it first. */
  whenLoaded(module: ModuleName): Promise<void> {
    return this.#queues[module].whenUp();
  }

  /**
   * Asks the engine and gives its view. Rejects with `Refusal`, `EngineStopped`, `EngineNotLoaded` or an `AbortError`.
   * Documents in the arguments are told to the engine where it does not have them.
   */
  ask<M extends keyof Methods>(
    method: M,
    args: Methods[M]["arguments"],
    options: AskOptions = {},
  ): Promise<Methods[M]["view"]> {
    return this.#queues[MODULE_OF[method]].ask(method, args, this.language, options);
  }

  /** Ends the workers; waiting requests are cancelled. */
  close() {
    for (const queue of Object.values(this.#queues)) queue.close();
  }
}

/** The engine in its workers; the first module is loaded at once. */
export function startEngine(): EngineClient {
  // Each is written out, so that the bundler sees it.
  const workers: Record<ModuleName, () => Worker> = {
    first: () => new Worker(new URL("./first-worker.ts", import.meta.url), { type: "module", name: "first" }),
    rest: () => new Worker(new URL("./rest-worker.ts", import.meta.url), { type: "module", name: "rest" }),
    deep: () => new Worker(new URL("./deep-worker.ts", import.meta.url), { type: "module", name: "deep" }),
  };
  const engine = new EngineClient((module) => workers[module]());
  void engine.load("first");
  return engine;
}
