// The requests to one worker: one at a time, each after the documents that it names. A worker that ends is started again.

import { written, type EngineDocument } from "./documents";
import type { FromWorker, ToWorker } from "./serve";
import type { Failure, Progress } from "./types";

/** The engine refused: `message` is the sentence to show, `place` where in the typed text. */
export class Refusal extends Error {
  readonly place: Failure["place"];

  constructor(failure: Failure) {
    super(failure.sentence);
    this.name = "Refusal";
    this.place = failure.place;
  }
}

/** The engine stopped in the middle of its work, and again when it was asked once more. */
export class EngineStopped extends Error {
  override readonly name = "EngineStopped";
}

/** A module of the engine could not be loaded. Who asks again has it tried again. */
export class EngineNotLoaded extends Error {
  override readonly name = "EngineNotLoaded";
}

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
  documents: readonly EngineDocument[];
  language: string;
  options: AskOptions;
  /** Whether it was already asked again, since a document was missing or since its worker ended. */
  toldAgain: boolean;
  askedAgain: boolean;
  resolve: (view: never) => void;
  reject: (error: unknown) => void;
}

const keyOf = ({ handle, revision }: { handle: string; revision: number }) => `${revision} ${handle}`;

const cancelled = () => new DOMException("cancelled", "AbortError");

export class WorkerQueue {
  /** Called when a request ended its worker twice and was given up. */
  onStopped: () => void = () => undefined;

  readonly #makeWorker: () => Worker;
  #worker: Worker | null = null;
  #up = false;
  #loading: Promise<void> | null = null;
  #settle: { resolve: () => void; reject: (error: Error) => void } | null = null;
  #module: WebAssembly.Module | null = null;
  /** The documents that this worker was told. */
  readonly #told = new Set<string>();
  #waiting: Request[] = [];
  #atWork: Request | null = null;
  #nextId = 1;
  #language: string | null = null;
  readonly #onUp: (() => void)[] = [];

  constructor(makeWorker: () => Worker) {
    this.#makeWorker = makeWorker;
  }

  /** Settled when a worker is there that someone else started; nothing is started for it. */
  whenUp(): Promise<void> {
    if (this.#up) return Promise.resolve();
    return new Promise((resolve) => this.#onUp.push(resolve));
  }

  /** Starts the worker where there is none. Settled when it works, or cannot. */
  load(): Promise<void> {
    if (this.#loading !== null) return this.#loading;
    const loading = new Promise<void>((resolve, reject) => {
      this.#settle = { resolve, reject };
    });
    // Whoever asks is told; nobody need wait for the loading itself.
    loading.catch(() => undefined);
    this.#loading = loading;
    this.#start();
    return loading;
  }

  /** In which language the next requests will be: its texts are fetched while the module loads. */
  speak(language: string) {
    this.#language = language;
    this.#tell({ kind: "speak", language });
  }

  ask(method: string, args: unknown, language: string, options: AskOptions): Promise<never> {
    const { signal, topic } = options;
    return new Promise((resolve, reject) => {
      if (signal?.aborted) {
        reject(cancelled());
        return;
      }
      if (topic !== undefined) this.#drop((request) => request.options.topic === topic);
      const { text, documents } = written(args);
      const request: Request = {
        id: this.#nextId++,
        method,
        arguments: text,
        documents,
        language,
        options,
        toldAgain: false,
        askedAgain: false,
        resolve,
        reject,
      };
      signal?.addEventListener("abort", () => this.#cancel(request), { once: true });
      this.#waiting.push(request);
      void this.load();
      this.#next();
    });
  }

  /** Ends the worker; waiting requests are cancelled. */
  close() {
    this.#end();
    this.#loading = null;
    this.#drop(() => true);
    this.#atWork?.reject(cancelled());
    this.#atWork = null;
  }

  #start() {
    const worker = this.#makeWorker();
    this.#worker = worker;
    worker.addEventListener("message", (event: MessageEvent<FromWorker>) => {
      // A worker that was ended may have sent something before.
      if (worker === this.#worker) this.#hear(event.data);
    });
    worker.addEventListener("error", (event) => {
      event.preventDefault();
      if (worker !== this.#worker) return;
      if (this.#up) this.#ended(event.message);
      else this.#unable("the worker cannot be loaded");
    });
    this.#tell({ kind: "start", module: this.#module });
    if (this.#language !== null) this.#tell({ kind: "speak", language: this.#language });
  }

  #end() {
    this.#worker?.terminate();
    this.#worker = null;
    this.#up = false;
    this.#told.clear();
  }

  #restart() {
    this.#end();
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
    for (const document of request.documents) {
      if (this.#told.has(keyOf(document))) continue;
      this.#told.add(keyOf(document));
      const { kind: of, handle, revision, content } = document;
      this.#tell({ kind: "put", of, handle, revision, content });
    }
    const { id, method, language } = request;
    this.#tell({ kind: "request", id, method, language, arguments: request.arguments });
  }

  #hear(message: FromWorker) {
    if (message.kind === "ready") {
      this.#module = message.module;
      this.#up = true;
      this.#settle?.resolve();
      for (const told of this.#onUp.splice(0)) told();
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
    if (message.kind === "broken") {
      this.#ended(message.reason);
      return;
    }
    this.#atWork = null;
    if (message.kind === "view") request.resolve(message.view as never);
    else this.#refused(request, message.failure);
    this.#next();
  }

  #refused(request: Request, failure: Failure) {
    if (failure.missing !== null && !request.toldAgain) {
      // It keeps the last few documents only: this one is told again, and the question asked again.
      this.#told.delete(keyOf(failure.missing));
      request.toldAgain = true;
      this.#waiting.unshift(request);
    } else {
      request.reject(new Refusal(failure));
    }
  }

  /** The worker ended. What it was asked is asked once more, unless that was what ended it twice. */
  #ended(reason: string) {
    const request = this.#atWork;
    const givenUp = request?.askedAgain === true;
    if (request !== null && !givenUp) {
      request.askedAgain = true;
      this.#waiting.unshift(request);
    }
    this.#restart();
    if (givenUp) {
      request.reject(new EngineStopped(reason));
      this.onStopped();
    }
  }

  #unable(reason: string) {
    const error = new EngineNotLoaded(reason);
    this.#end();
    this.#loading = null;
    this.#settle?.reject(error);
    this.#atWork?.reject(error);
    this.#atWork = null;
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
