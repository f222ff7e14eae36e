import "./tokens.css";
import "./app.css";
import "./scene.css";
import "./views/bench/bench.css";

import { mount } from "svelte";

import App from "./App.svelte";
import { Refusal, startEngine } from "./engine/client";
import { Shelf } from "./engine/documents";
import { isGiven, puzzleOf } from "./puzzle";
import { notify } from "./shell/notices.svelte";
import { Store } from "./store/database";
import { Draft } from "./store/draft.svelte";
import { History } from "./store/history.svelte";
import { ConventionSets } from "./store/sets.svelte";
import { Settings } from "./store/settings.svelte";
import { openTab } from "./store/tab";
import { beginning, bootText, speak } from "./texts.svelte";
import { watchForUpdates } from "./update/update";

const target = document.getElementById("app");
if (target === null) throw new Error("the page has no place for the app");

/** Shows a page of plain text, for the times when there is no engine. */
function plain(paragraphs: string[], busy: boolean) {
  target?.replaceChildren(
    ...paragraphs.map((words) => {
      const paragraph = document.createElement("p");
      paragraph.className = "boot";
      paragraph.setAttribute("role", busy ? "status" : "alert");
      paragraph.textContent = words;
      return paragraph;
    }),
  );
}

/** Does something once the page has nothing else to do. */
function whenIdle(work: () => void) {
  // Not every browser tells when it is idle.
  if (typeof requestIdleCallback === "function") requestIdleCallback(work, { timeout: 10_000 });
  else setTimeout(work, 2000);
}

async function begin(place: HTMLElement) {
  plain([bootText("engine-starting", navigator.language)], true);
  const engine = startEngine();
  // The store opens while the engine loads.
  const store = new Store();
  store.renew = async (record, text) => {
    try {
      return (await engine.ask("renew", { record, text })).text;
    } catch (error) {
      // A newer version wrote it, or the engine is not there; either way it is left as it is.
      if (error instanceof Refusal) notify({ name: "store-newer" });
      return null;
    }
  };
  store.onTrouble = (trouble) => notify({ name: `store-${trouble}` });
  await store.open();
  const settings = new Settings(store);
  await settings.load();
  engine.language = settings.tag;
  const draft = new Draft(store, await openTab(store));
  const sets = new ConventionSets(store, draft);
  await sets.load();
  store.onOtherTab = (what) => {
    if (what === "settings") void settings.load();
    else void sets.load();
  };

  try {
    await engine.load("first");
    await speak(engine, settings.tag);
  } catch (error) {
    console.error(error);
    plain([bootText("engine-failed-title", settings.tag), bootText("engine-failed-text", settings.tag)], false);
    return;
  }
  engine.onStopped = () => notify({ name: "engine-stopped" });
  const documents = {
    conventions: new Shelf("conventions", "conventions"),
    // A sheet may be long, so fewer of its states are remembered.
    sheet: new Shelf("sheet", "sheet", 3),
    puzzle: new Shelf("puzzle", "puzzle"),
  };
  // Never empty: who has nothing in hand yet finds something easy there.
  if (!isGiven(puzzleOf(draft))) {
    const { size, scramble } = beginning().first;
    for (const [name, value] of Object.entries({ size: String(size), scramble, input: "", origin: "first" })) draft.set(name, value);
  }
  place.replaceChildren();
  mount(App, { target: place, props: { bench: { engine, documents, store, settings, draft, sets, history: new History(draft, sets) } } });
  // The other modules are fetched when there is nothing else to do, one after the other; who needs one before has it fetched at once.
  // What cannot be loaded is said to whoever asks.
  whenIdle(() => {
    const load = (module: "rest" | "deep") => engine.load(module).catch(() => undefined);
    void load("rest").then(() => whenIdle(() => void load("deep")));
  });

  await watchForUpdates(
    (take) => notify({ name: "update-ready", action: { name: "update-take", run: take } }),
    () => draft.flush(),
  );
}

void begin(target);
