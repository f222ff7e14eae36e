import "./app.css";

import { mount } from "svelte";

import App from "./App.svelte";
import { type EngineClient, startAlgorithms, startEngine } from "./engine/client";
import type { AlgorithmMethods } from "./engine/types";
import { notify } from "./shell/notices.svelte";
import { Store } from "./store/database";
import { Draft } from "./store/draft.svelte";
import { ConventionSets } from "./store/sets.svelte";
import { Settings } from "./store/settings.svelte";
import { openTab } from "./store/tab";
import { bootText, speak } from "./texts.svelte";
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

async function begin(place: HTMLElement) {
  plain([bootText("engine-starting", navigator.language)], true);
  const engine = startEngine();
  // The store opens while the engine loads.
  const store = new Store();
  store.onTrouble = (trouble) => notify({ name: `store-${trouble}` });
  await store.open();
  const settings = new Settings(store);
  await settings.load();
  const draft = new Draft(store, await openTab(store));
  const sets = new ConventionSets(store, draft);
  await sets.load();
  store.onOtherTab = (what) => {
    if (what === "settings") void settings.load();
    else void sets.load();
  };

  try {
    await engine.ready;
    await speak(engine, settings.tag);
  } catch (error) {
    console.error(error);
    plain([bootText("engine-failed-title", settings.tag), bootText("engine-failed-text", settings.tag)], false);
    return;
  }
  engine.onStopped = () => notify({ name: "engine-stopped" });
  let half: EngineClient<AlgorithmMethods> | null = null;
  const algorithms = () => {
    if (half === null) {
      half = startAlgorithms();
      half.onStopped = engine.onStopped;
      // Without network it could not be loaded; the next time it is asked for it is tried again.
      half.ready.catch(() => (half = null));
    }
    half.language = engine.language;
    return half;
  };
  place.replaceChildren();
  mount(App, { target: place, props: { bench: { engine, algorithms, store, settings, draft, sets } } });

  await watchForUpdates(
    (take) => notify({ name: "update-ready", action: { name: "update-take", run: take } }),
    () => draft.flush(),
  );
}

void begin(target);
