// Settings of the screens, the same in every tab.

import type { Store } from "./database";

export type Theme = "system" | "light" | "dark";
export type Motion = "system" | "less";
export type Keys = "on" | "off";

export class Settings {
  /** A language tag; empty: as the browser says. */
  language = $state("");
  theme = $state<Theme>("system");
  motion = $state<Motion>("system");
  /** Whether single keys do something while the velvet has the focus. */
  keys = $state<Keys>("on");

  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
  }

  async load() {
    const kept = await this.#store.settings();
    this.language = kept["language"] ?? "";
    this.theme = oneOf(kept["theme"], ["system", "light", "dark"]);
    this.motion = oneOf(kept["motion"], ["system", "less"]);
    this.keys = oneOf(kept["keys"], ["on", "off"]);
    this.#show();
  }

  async set(name: "language" | "theme" | "motion" | "keys", value: string) {
    if (name === "language") this.language = value;
    else if (name === "theme") this.theme = oneOf(value, ["system", "light", "dark"]);
    else if (name === "motion") this.motion = oneOf(value, ["system", "less"]);
    else this.keys = oneOf(value, ["on", "off"]);
    this.#show();
    await this.#store.putSetting(name, value);
  }

  /** The language to ask the engine for. */
  get tag(): string {
    return this.language || navigator.language || "en";
  }

  /** Whether pictures jump instead of moving, by the person's choice here or on the device. */
  get still(): boolean {
    return this.motion === "less" || matchMedia("(prefers-reduced-motion: reduce)").matches;
  }

  #show() {
    const root = document.documentElement;
    root.dataset["theme"] = this.theme;
    root.dataset["motion"] = this.motion;
  }
}

function oneOf<const T extends string>(value: string | undefined, choices: readonly [T, ...T[]]): T {
  return choices.find((choice) => choice === value) ?? choices[0];
}
