import { describe, expect, test } from "vitest";

import { EngineClient, EngineStopped, isCancelled, Refusal, startEngine } from "../../src/engine/client";
import type { FromWorker, ToWorker } from "../../src/engine/serve";

/** A worker whose answers the test gives by hand. */
class HandWorker extends EventTarget {
  static made: HandWorker[] = [];
  heard: ToWorker[] = [];
  ended = false;

  constructor() {
    super();
    HandWorker.made.push(this);
  }

  postMessage(message: ToWorker) {
    this.heard.push(message);
    if (message.kind === "start") this.say({ kind: "ready", module: {} as WebAssembly.Module });
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
}

function byHand() {
  HandWorker.made = [];
  const client = new EngineClient(() => new HandWorker() as unknown as Worker);
  return { client, worker: () => HandWorker.made.at(-1)! };
}

const view = { version: "0", languages: [] };

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

  test("a trap is told, and the engine works again", async () => {
    const { client, worker } = byHand();
    let told = 0;
    client.onStopped = () => told++;
    const bad = client.ask("about", {});
    const good = client.ask("about", {});
    worker().say({ kind: "broken", id: 1, reason: "unreachable" });
    await expect(bad).rejects.toBeInstanceOf(EngineStopped);
    worker().say({ kind: "view", id: 2, view });
    expect(await good).toEqual(view);
    expect(told).toBe(1);
  });
});

describe("the real engine in its worker", () => {
  test("answers, refuses with a sentence, and comes back after it was cancelled", async () => {
    const client = startEngine();
    await client.ready;
    expect((await client.ask("about", {})).languages.map(({ code }) => code)).toEqual(["en", "de"]);
    await expect(client.ask("nothing" as "about", {})).rejects.toBeInstanceOf(Refusal);
    const control = new AbortController();
    const long = client.ask("texts", {}, { signal: control.signal });
    control.abort();
    await expect(long).rejects.toSatisfy(isCancelled);
    client.language = "de-CH";
    expect((await client.ask("texts", {})).texts["nav-why"]).toBe("Warum");
    client.close();
  });
});
