import { describe, expect, test } from "vitest";

import { EngineClient, EngineNotLoaded, EngineStopped, isCancelled, Refusal, startEngine } from "../../src/engine/client";
import { Shelf, written } from "../../src/engine/documents";
import type { ModuleName } from "../../src/engine/modules";
import type { FromWorker, ToWorker } from "../../src/engine/serve";

/** A worker whose answers the test gives by hand. */
class HandWorker extends EventTarget {
  static made: { module: ModuleName; worker: HandWorker }[] = [];
  /** Whether workers that are made now can be loaded. */
  static loads = true;
  heard: ToWorker[] = [];
  ended = false;

  constructor(module: ModuleName) {
    super();
    HandWorker.made.push({ module, worker: this });
  }

  postMessage(message: ToWorker) {
    this.heard.push(message);
    if (message.kind !== "start") return;
    if (HandWorker.loads) this.say({ kind: "ready", module: {} as WebAssembly.Module });
    else this.say({ kind: "unable", reason: "no network" });
  }

  terminate() {
    this.ended = true;
  }

  say(message: FromWorker) {
    this.dispatchEvent(new MessageEvent("message", { data: message }));
  }

  get requests() {
    return this.heard.filter((message) => message.kind === "request");
  }

  get told() {
    return this.heard.filter((message) => message.kind === "put");
  }
}

function byHand() {
  HandWorker.made = [];
  HandWorker.loads = true;
  const client = new EngineClient((module) => new HandWorker(module) as unknown as Worker);
  const worker = (module: ModuleName = "first") => HandWorker.made.filter((one) => one.module === module).at(-1)!.worker;
  return { client, worker };
}

const view = { version: "0", languages: [] };
const refused = { sentence: "No.", place: null, missing: null };

describe("the queue of requests", () => {
  test("one request is at work, the others wait their turn", async () => {
    const { client, worker } = byHand();
    const first = client.ask("about", {});
    const second = client.ask("about", {});
    expect(worker().requests).toHaveLength(1);
    worker().say({ kind: "view", id: 1, view });
    expect(worker().requests).toHaveLength(2);
    worker().say({ kind: "view", id: 2, view });
    expect(await first).toEqual(view);
    expect(await second).toEqual(view);
  });

  test("a newer request of a topic drops the older one that waits", async () => {
    const { client, worker } = byHand();
    void client.ask("about", {});
    const older = client.ask("about", {}, { topic: "typing" });
    const newer = client.ask("about", {}, { topic: "typing" });
    await expect(older).rejects.toSatisfy(isCancelled);
    worker().say({ kind: "view", id: 1, view });
    worker().say({ kind: "view", id: 3, view });
    expect(await newer).toEqual(view);
  });

  test("cancelling what is at work ends its worker; what waits goes on in the next one", async () => {
    const { client, worker } = byHand();
    const control = new AbortController();
    const long = client.ask("about", {}, { signal: control.signal });
    const waiting = client.ask("about", {});
    const old = worker();
    control.abort();
    await expect(long).rejects.toSatisfy(isCancelled);
    expect(old.ended).toBe(true);
    expect(worker()).not.toBe(old);
    // What the old worker still says is not heard.
    old.say({ kind: "view", id: 2, view: { version: "stale", languages: [] } });
    worker().say({ kind: "view", id: 2, view });
    expect(await waiting).toEqual(view);
  });

  test("progress reaches the one who asked", async () => {
    const { client, worker } = byHand();
    const seen: number[] = [];
    const long = client.ask("about", {}, { onProgress: ({ done }) => seen.push(done) });
    worker().say({ kind: "progress", id: 1, progress: { done: 3, of: 9 } });
    worker().say({ kind: "view", id: 1, view });
    await long;
    expect(seen).toEqual([3]);
  });

  test("each module has a worker, started when it is first asked", async () => {
    const { client, worker } = byHand();
    const long = client.ask("lesson", {} as never);
    expect(HandWorker.made.map(({ module }) => module)).toEqual(["deep"]);
    const short = client.ask("about", {});
    worker("first").say({ kind: "view", id: 1, view });
    expect(await short).toEqual(view);
    worker("deep").say({ kind: "failure", id: 1, failure: refused });
    await expect(long).rejects.toBeInstanceOf(Refusal);
  });
});

describe("the language of requests", () => {
  test("is told each worker that is there, and one that is started later at once", async () => {
    const { client, worker } = byHand();
    const first = client.ask("about", {});
    client.language = "de";
    client.language = "de";
    const spoken = ({ heard }: HandWorker) => heard.filter((message) => message.kind === "speak");
    expect(spoken(worker("first"))).toEqual([{ kind: "speak", language: "de" }]);
    void client.load("deep");
    expect(worker("deep").heard.map(({ kind }) => kind)).toEqual(["start", "speak"]);
    worker("first").say({ kind: "view", id: 1, view });
    await first;
  });

  test("a worker that cannot load its texts tells whoever asked", async () => {
    const { client, worker } = byHand();
    const asked = client.ask("about", {});
    worker().say({ kind: "unable", reason: "the texts cannot be loaded: 404" });
    await expect(asked).rejects.toBeInstanceOf(EngineNotLoaded);
    const again = client.ask("about", {});
    worker().say({ kind: "view", id: 2, view });
    expect(await again).toEqual(view);
  });
});

describe("a worker that ends", () => {
  test("is started again and asked again, and nobody notices", async () => {
    const { client, worker } = byHand();
    let told = 0;
    client.onStopped = () => told++;
    const first = client.ask("about", {});
    const second = client.ask("about", {});
    const old = worker();
    old.say({ kind: "broken", id: 1, reason: "unreachable" });
    expect(old.ended).toBe(true);
    expect(worker().requests.map(({ id }) => id)).toEqual([1]);
    worker().say({ kind: "view", id: 1, view });
    worker().say({ kind: "view", id: 2, view });
    expect([await first, await second]).toEqual([view, view]);
    expect(told).toBe(0);
  });

  test("is heard of by its error as well", async () => {
    const { client, worker } = byHand();
    const asked = client.ask("about", {});
    worker().dispatchEvent(new ErrorEvent("error", { message: "out of memory", cancelable: true }));
    worker().say({ kind: "view", id: 1, view });
    expect(await asked).toEqual(view);
  });

  test("at the same question twice is told, and the next one is answered", async () => {
    const { client, worker } = byHand();
    let told = 0;
    client.onStopped = () => told++;
    const bad = client.ask("about", {});
    const good = client.ask("about", {});
    worker().say({ kind: "broken", id: 1, reason: "unreachable" });
    worker().say({ kind: "broken", id: 1, reason: "unreachable" });
    await expect(bad).rejects.toBeInstanceOf(EngineStopped);
    worker().say({ kind: "view", id: 2, view });
    expect(await good).toEqual(view);
    expect(told).toBe(1);
  });

  test("that cannot be loaded is told, and tried again by the next who asks", async () => {
    const { client, worker } = byHand();
    HandWorker.loads = false;
    await expect(client.load("deep")).rejects.toBeInstanceOf(EngineNotLoaded);
    await expect(client.ask("lesson", {} as never)).rejects.toBeInstanceOf(EngineNotLoaded);
    HandWorker.loads = true;
    const asked = client.ask("lesson", {} as never);
    worker("deep").say({ kind: "view", id: 2, view: { title: "x" } });
    expect(await asked).toEqual({ title: "x" });
  });
});

describe("documents", () => {
  const typed = (shelf: Shelf, content: string) => ({ size: 3, conventions: shelf.of(content), text: "R U" });
  const answer = (worker: HandWorker) => {
    const { id } = worker.requests.at(-1)!;
    worker.say({ kind: "view", id, view: {} });
  };

  test("the same content is the same document, also for who goes back to it; only so many are remembered", () => {
    const shelf = new Shelf("conventions", "own", 2);
    const [a, b] = [shelf.of("a"), shelf.of("b")];
    expect([a.revision, b.revision]).toEqual([1, 2]);
    expect(shelf.of("a")).toBe(a);
    expect(shelf.of("c").revision).toBe(3);
    // b was not used for longest.
    expect(shelf.of("a")).toBe(a);
    expect(shelf.of("b").revision).toBe(4);
  });

  test("in a request a name stands for each, wherever it is", () => {
    const shelf = new Shelf("sheet", "sheet");
    const [a, b] = [shelf.of("a"), shelf.of("b")];
    const { text, documents } = written({ sheet: a, deep: [{ sheet: b, other: a }], none: null });
    expect(JSON.parse(text)).toEqual({
      sheet: { handle: "sheet", revision: 1 },
      deep: [{ sheet: { handle: "sheet", revision: 2 }, other: { handle: "sheet", revision: 1 } }],
      none: null,
    });
    expect(new Set(documents)).toEqual(new Set([a, b]));
  });

  test("each is told once, before the request that names it", async () => {
    const { client, worker } = byHand();
    const shelf = new Shelf("conventions", "own");
    for (const content of ["a", "a", "b", "a"]) {
      const asked = client.ask("sequence", typed(shelf, content));
      answer(worker());
      await asked;
    }
    expect(worker().told.map(({ content }) => content)).toEqual(["a", "b"]);
    expect(worker().heard.map(({ kind }) => kind)).toEqual(["start", "put", "request", "request", "put", "request", "request"]);
  });

  test("what the engine no longer has is told again, and the question asked again", async () => {
    const { client, worker } = byHand();
    const shelf = new Shelf("conventions", "own");
    const asked = client.ask("sequence", typed(shelf, "a"));
    const missing = { handle: "own", revision: 1 };
    worker().say({ kind: "failure", id: 1, failure: { sentence: "What?", place: null, missing } });
    expect(worker().told).toHaveLength(2);
    expect(worker().requests).toHaveLength(2);
    worker().say({ kind: "view", id: 1, view: {} });
    expect(await asked).toEqual({});
    // It is of no use to ask for ever.
    const never = client.ask("sequence", typed(shelf, "a"));
    for (let time = 0; time < 2; time += 1) {
      worker().say({ kind: "failure", id: 2, failure: { sentence: "What?", place: null, missing } });
    }
    await expect(never).rejects.toBeInstanceOf(Refusal);
  });

  test("a new worker is told everything anew", async () => {
    const { client, worker } = byHand();
    const shelf = new Shelf("conventions", "own");
    const asked = client.ask("sequence", typed(shelf, "a"));
    worker().say({ kind: "broken", id: 1, reason: "unreachable" });
    expect(worker().told.map(({ content }) => content)).toEqual(["a"]);
    answer(worker());
    expect(await asked).toEqual({});
  });
});

describe("the real engine in its workers", () => {
  test("answers, refuses with a sentence, and comes back after it was cancelled", async () => {
    const client = startEngine();
    await client.load("first");
    expect((await client.ask("about", {})).languages.map(({ code }) => code)).toEqual(["en", "de"]);
    await expect(client.ask("random", { size: 9, seed: [0, 0] })).rejects.toBeInstanceOf(Refusal);
    const control = new AbortController();
    const long = client.ask("texts", {}, { signal: control.signal });
    control.abort();
    await expect(long).rejects.toSatisfy(isCancelled);
    client.language = "de-CH";
    expect((await client.ask("texts", {})).texts["nav-why"]).toBe("Warum");
    client.close();
  });

  test("both modules know what they are told, and go on after more documents than are kept", async () => {
    const client = startEngine();
    const [conventions, puzzles] = [new Shelf("conventions", "own"), new Shelf("puzzle", "puzzle", 100)];
    const puzzle = (scramble: string) =>
      puzzles.of(JSON.stringify({ size: 3, scramble, facelets: "", bestHold: false }));
    const source = (scramble: string) => ({ puzzle: puzzle(scramble), conventions: conventions.of(""), sheet: null });
    const memo = async (scramble: string) => (await client.ask("trace", { source: source(scramble) })).parts[0]?.memo;
    const first = await memo("R U F");
    for (let number = 0; number < 20; number += 1) await memo("R U F ".repeat(number + 2));
    expect(await memo("R U F")).toBe(first);
    const memos = { corner: "", edge: "" };
    const checked = await client.ask("check", { source: source("R U F"), memo: memos, parity: null, moves: "F' U' R'" });
    expect(checked.sentences.length).toBeGreaterThan(0);
    client.close();
  });
});
