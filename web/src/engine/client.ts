// The page's side of the engine: a queue of requests to one worker. Each half of the engine has a worker of its own.

import type { FromWorker, ToWorker } from "./serve";
import type { AlgorithmMethods, Failure, Methods, Progress } from "./types";

/** The engine refused: `message` is the sentence to show, `place` where in the typed text. */
export class Refusal extends Error {
  readonly place: Failure["place"];

  constructor(failure: Failure) {
    super(failure.sentence);
    this.name = "Refusal";
    this.place = failure.place;
  }
}

/** The engine stopped in the middle of its work. */
export class EngineStopped extends Error {
  override readonly name = "EngineStopped";
}

/** Whether an error only says that nobody wants the answer any more. */
export const isCancelled = (error: unknown): boolean => error instanceof DOMException && error.name === "AbortError";

export interface AskOptions {
  /** Cancels: a waiting request is dropped; one at work ends with its worker, and a new one is started. */
  signal?: AbortSignal;
  onProgress?: (progress: Progress) => void;
  /** A newer request of the same topic makes an older one that still waits superfluous (typing does this). */
  topic?: string;
}

interface Request {
  id: number;
  method: string;
  arguments: string;
  language: string;
  options: AskOptions;
  resolve: (view: never) => void;
  reject: (error: unknown) => void;
}

/** A table of methods with what each takes and gives. */
type Table<T> = { [Name in keyof T]: { arguments: unknown; view: unknown } };

export class EngineClient<T extends Table<T> = Methods> {
  /** Language of the sentences in views; the engine takes the nearest it has. */
  language = "en";
  /** Settled once: the first worker works, or it cannot. */
  readonly ready: Promise<void>;
  /** Called when a request ended in a trap and a new worker was started. */
  onStopped: () => void = () => undefined;

  #worker: Worker | null = null;
  #up = false;
  #module: WebAssembly.Module | null = null;
  #waiting: Request[] = [];
  #atWork: Request | null = null;
  #nextId = 1;
  #settle: { resolve: () => void; reject: (error: Error) => void } | null = null;
  readonly #makeWorker: () => Worker;

  constructor(makeWorker: () => Worker) {
    this.#makeWorker = makeWorker;
    this.ready = new Promise((resolve, reject) => {
      this.#settle = { resolve, reject };
    });
    this.#start();
  }

  /** Asks the engine and gives its view. Rejects with {@link Refusal}, {@link EngineStopped} or an `AbortError`. */
  ask<M extends keyof T & string>(
    method: M,
    args: T[M]["arguments"],
    options: AskOptions = {},
  ): Promise<T[M]["view"]> {
    const { signal, topic } = options;
    return new Promise((resolve, reject) => {
      if (signal?.aborted) {
        reject(cancelled());
        return;
      }
      if (topic !== undefined) this.#drop((request) => request.options.topic === topic);
      const request: Request = {
        id: this.#nextId++,
        method,
        arguments: JSON.stringify(args),
        language: this.language,
        options,
        resolve,
        reject,
      };
      signal?.addEventListener("abort", () => this.#cancel(request), { once: true });
      this.#waiting.push(request);
      this.#next();
    });
  }

  /** Ends the worker; waiting requests are cancelled. */
  close() {
    this.#worker?.terminate();
    this.#worker = null;
    this.#up = false;
    this.#drop(() => true);
    this.#atWork?.reject(cancelled());
    this.#atWork = null;
  }

  #start() {
    this.#up = false;
    const worker = this.#makeWorker();
    this.#worker = worker;
    worker.addEventListener("message", (event: MessageEvent<FromWorker>) => {
      // A worker that was ended may have sent something before.
      if (worker === this.#worker) this.#hear(event.data);
    });
    worker.addEventListener("error", () => {
      if (worker === this.#worker && !this.#up) this.#unable("the worker cannot be loaded");
    });
    this.#tell({ kind: "start", module: this.#module });
  }

  #restart() {
    this.#worker?.terminate();
    this.#atWork = null;
    this.#start();
  }

  #tell(message: ToWorker) {
    this.#worker?.postMessage(message);
  }

  #next() {
    if (!this.#up || this.#atWork !== null) return;
    const request = this.#waiting.shift();
    if (request === undefined) return;
    this.#atWork = request;
    const { id, method, language } = request;
    this.#tell({ kind: "request", id, method, language, arguments: request.arguments });
  }

  #hear(message: FromWorker) {
    if (message.kind === "ready") {
      this.#module = message.module;
      this.#up = true;
      this.#settle?.resolve();
      this.#next();
      return;
    }
    if (message.kind === "unable") {
      this.#unable(message.reason);
      return;
    }
    const request = this.#atWork;
    if (request === null || request.id !== message.id) return;
    if (message.kind === "progress") {
      request.options.onProgress?.(message.progress);
      return;
    }
    this.#atWork = null;
    if (message.kind === "view") {
      request.resolve(message.view as never);
    } else if (message.kind === "failure") {
      request.reject(new Refusal(message.failure));
    } else {
      request.reject(new EngineStopped(message.reason));
      this.#restart();
      this.onStopped();
    }
    this.#next();
  }

  #unable(reason: string) {
    const error = new EngineStopped(reason);
    this.#settle?.reject(error);
    for (const request of this.#waiting.splice(0)) request.reject(error);
  }

  #cancel(request: Request) {
    if (request === this.#atWork) {
      this.#restart();
      request.reject(cancelled());
    } else {
      this.#drop((waiting) => waiting === request);
    }
  }

  #drop(superfluous: (request: Request) => boolean) {
    const dropped = this.#waiting.filter(superfluous);
    this.#waiting = this.#waiting.filter((request) => !superfluous(request));
    for (const request of dropped) request.reject(cancelled());
  }
}

const cancelled = () => new DOMException("cancelled", "AbortError");

/** The engine in its own worker. */
export const startEngine = () =>
  new EngineClient(() => new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "engine" }));

/** The half for sheets of algorithms, in a worker of its own: a long search there holds nothing else up. */
export const startAlgorithms = () =>
  new EngineClient<AlgorithmMethods>(
    () => new Worker(new URL("./algorithms-worker.ts", import.meta.url), { type: "module", name: "algorithms" }),
  );
