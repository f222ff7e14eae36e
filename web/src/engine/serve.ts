// What a worker does that owns a module of the engine: it takes documents in and answers one request after another.

import type { DocumentKind, Failure, Progress } from "./types";

/** From the page: first `start`, then documents and requests. */
export type ToWorker =
  | { kind: "start"; module: WebAssembly.Module | null }
  | { kind: "put"; of: DocumentKind; handle: string; revision: number; content: string }
  | { kind: "request"; id: number; method: string; language: string; arguments: string };

/** To the page. */
export type FromWorker =
  | { kind: "ready"; module: WebAssembly.Module }
  | { kind: "unable"; reason: string }
  | { kind: "progress"; id: number; progress: Progress }
  | { kind: "view"; id: number; view: unknown }
  | { kind: "failure"; id: number; failure: Failure }
  | { kind: "broken"; id: number; reason: string };

/** The engine as its bindings give it. */
interface Engine {
  put(kind: string, handle: string, revision: number, content: string): void;
  call(method: string, language: string, args: string, report: (progress: string) => void): string;
}

/** A module of the engine: its bindings, and where it lies. */
export interface EngineModule {
  init: (from: { module_or_path: WebAssembly.Module }) => Promise<unknown>;
  Engine: new () => Engine;
  address: string;
}

let engine: Engine | null = null;

const tell = (message: FromWorker) => postMessage(message);

async function start({ init, Engine, address }: EngineModule, given: WebAssembly.Module | null) {
  try {
    const module = given ?? (await WebAssembly.compileStreaming(fetch(address)));
    await init({ module_or_path: module });
    engine = new Engine();
    tell({ kind: "ready", module });
  } catch (error) {
    tell({ kind: "unable", reason: String(error) });
  }
}

function answer(request: Extract<ToWorker, { kind: "request" }>) {
  const { id } = request;
  if (engine === null) {
    tell({ kind: "broken", id, reason: "not started" });
    return;
  }
  try {
    const report = (progress: string) => tell({ kind: "progress", id, progress: JSON.parse(progress) as Progress });
    const view = engine.call(request.method, request.language, request.arguments, report);
    tell({ kind: "view", id, view: JSON.parse(view) });
  } catch (error) {
    // The engine refuses with a text of its own; anything else is a trap, after which its memory is not to be trusted.
    if (typeof error === "string") tell({ kind: "failure", id, failure: JSON.parse(error) as Failure });
    else tell({ kind: "broken", id, reason: String(error) });
  }
}

/** Listens to the page. */
export function serve(module: EngineModule) {
  addEventListener("message", ({ data }: MessageEvent<ToWorker>) => {
    if (data.kind === "start") void start(module, data.module);
    // A trap here ends in an error of the worker, which the page hears as its end.
    else if (data.kind === "put") engine?.put(data.of, data.handle, data.revision, data.content);
    else answer(data);
  });
}
