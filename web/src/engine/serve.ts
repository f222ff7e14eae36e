// What a worker does that owns a module of the engine: it takes documents in and answers one request after another.

import de from "./catalogues/de.txt?url";
import en from "./catalogues/en.txt?url";
import { keepTables, keptTables } from "./tables";
import type { DocumentKind, Failure, Progress } from "./types";

/** Where the texts of each language lie. */
const CATALOGUES = { en, de };

/** From the page: first `start`, then documents and requests; `speak` says early in which language these will be. */
export type ToWorker =
  | { kind: "start"; module: WebAssembly.Module | null }
  | { kind: "speak"; language: string }
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
  teach(language: string, catalogue: string): void;
  put(kind: string, handle: string, revision: number, content: string): void;
  lacksTables(method: string, args: string): boolean;
  tables(): Uint8Array | undefined;
  restore(tables: Uint8Array): void;
  call(method: string, language: string, args: string, report: (progress: string) => void): string;
}

/** A module of the engine: its bindings, and where it lies. */
export interface EngineModule {
  init: (from: { module_or_path: WebAssembly.Module }) => Promise<unknown>;
  Engine: new () => Engine;
  address: string;
}

let engine: Engine | null = null;
let address = "";

/** The catalogues that are fetched or were, by language; a language that is not spoken is not loaded. */
const catalogues = new Map<string, Promise<string>>();
const taught = new Set<string>();

/** The language that is nearest to a tag. */
const nearest = (tag: string): keyof typeof CATALOGUES => {
  const start = tag.toLowerCase().split(/[-_]/)[0] ?? "";
  return start in CATALOGUES ? (start as keyof typeof CATALOGUES) : "en";
};

/** The catalogue of a language; one that could not be fetched is fetched again for the next who asks. */
function catalogue(language: keyof typeof CATALOGUES): Promise<string> {
  let text = catalogues.get(language);
  if (text === undefined) {
    text = fetch(CATALOGUES[language]).then((response) => {
      if (!response.ok) throw new Error(`the texts cannot be loaded: ${response.status}`);
      return response.text();
    });
    catalogues.set(language, text);
    text.catch(() => catalogues.delete(language));
  }
  return text;
}

const tell = (message: FromWorker) => postMessage(message);

async function start({ init, Engine, ...module }: EngineModule, given: WebAssembly.Module | null) {
  address = module.address;
  try {
    const compiled = given ?? (await WebAssembly.compileStreaming(fetch(address)));
    await init({ module_or_path: compiled });
    engine = new Engine();
    tell({ kind: "ready", module: compiled });
  } catch (error) {
    tell({ kind: "unable", reason: String(error) });
  }
}

async function answer(request: Extract<ToWorker, { kind: "request" }>) {
  const { id } = request;
  if (engine === null) {
    tell({ kind: "broken", id, reason: "not started" });
    return;
  }
  const language = nearest(request.language);
  if (!taught.has(language)) {
    try {
      engine.teach(language, await catalogue(language));
    } catch (error) {
      tell({ kind: "unable", reason: String(error) });
      return;
    }
    taught.add(language);
  }
  const lacking = engine.lacksTables(request.method, request.arguments);
  if (lacking) {
    const kept = await keptTables(address);
    if (kept !== null) engine.restore(kept);
  }
  const made = lacking && engine.lacksTables(request.method, request.arguments);
  try {
    const report = (progress: string) => tell({ kind: "progress", id, progress: JSON.parse(progress) as Progress });
    const view = engine.call(request.method, request.language, request.arguments, report);
    tell({ kind: "view", id, view: JSON.parse(view) });
    const tables = made ? engine.tables() : undefined;
    if (tables !== undefined) void keepTables(address, tables);
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
    // Fetched while the module still loads; whoever asks hears if that fails.
    else if (data.kind === "speak") catalogue(nearest(data.language)).catch(() => undefined);
    // A trap here ends in an error of the worker, which the page hears as its end.
    else if (data.kind === "put") engine?.put(data.of, data.handle, data.revision, data.content);
    else void answer(data);
  });
}
