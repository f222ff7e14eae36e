// The engine in a browser is the engine as it is compiled for this machine: for requests of every method that are drawn at random,
// both say the same, sign by sign.

import { execFileSync } from "node:child_process";
import { readdir } from "node:fs/promises";

import { expect, test } from "@playwright/test";

/** A document that is told, or a request with what this machine's engine answers. */
type Line =
  | { kind: string; handle: string; revision: number; content: string }
  | { asked: [module: "first" | "rest" | "deep", method: string, language: string, text: string]; view: unknown; failure: unknown };

const SITE = new URL("../../../out/site/assets", import.meta.url);

test("every method answers in the browser as it does on this machine", async ({ page }) => {
  // The program that answers may have to be compiled first.
  test.setTimeout(900_000);
  const written = execFileSync("cargo", ["run", "--quiet", "--package", "wasm", "--example", "answers", "--", "12", "20261128"], {
    cwd: "..",
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  const lines = written.trim().split("\n").map((line) => JSON.parse(line) as Line);
  const scripts = (await readdir(SITE)).filter((name) => /^(first|rest|deep)-worker-.*\.js$/.test(name));
  expect(scripts).toHaveLength(3);

  await page.goto("./");
  const answers = await page.evaluate(
    async ({ lines, scripts }) => {
      const started = async (name: string) => {
        const script = scripts.find((script) => script.startsWith(`${name}-`));
        const worker = new Worker(`./assets/${script}`, { type: "module" });
        const ask = (message: unknown, isAnswer: (kind: string) => boolean) =>
          new Promise<{ kind: string; view?: unknown; failure?: unknown; reason?: string }>((resolve) => {
            worker.onmessage = ({ data }) => {
              if (isAnswer(data.kind)) resolve(data);
            };
            worker.postMessage(message);
          });
        const ready = await ask({ kind: "start", module: null }, () => true);
        if (ready.kind !== "ready") throw new Error(`${name}: ${ready.reason}`);
        return { tell: (message: unknown) => worker.postMessage(message), ask };
      };
      const workers = { first: await started("first"), rest: await started("rest"), deep: await started("deep") };
      const answers = [];
      for (const [id, line] of lines.entries()) {
        if ("content" in line) {
          const { kind: of, handle, revision, content } = line;
          for (const { tell } of Object.values(workers)) tell({ kind: "put", of, handle, revision, content });
          continue;
        }
        const [module, method, language, text] = line.asked;
        const request = { kind: "request", id, method, language, arguments: text };
        const answer = await workers[module].ask(request, (kind) => kind !== "progress");
        answers.push({ view: answer.view ?? null, failure: answer.failure ?? null, broken: answer.reason ?? null });
      }
      return answers;
    },
    { lines, scripts },
  );

  const asked = lines.filter((line) => "asked" in line);
  expect(answers).toHaveLength(asked.length);
  const methods = new Set<string>();
  for (const [at, { asked: [, method, language, text], view, failure }] of asked.entries()) {
    expect(answers[at], `${method} ${language} ${text}`).toEqual({ view, failure, broken: null });
    if (failure === null) methods.add(method);
  }
  // Every method had something to show.
  expect(methods.size).toBe(new Set(asked.map(({ asked: [, method] }) => method)).size);
  expect(methods.size).toBeGreaterThan(20);
});
