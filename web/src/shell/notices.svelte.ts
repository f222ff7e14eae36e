// Messages that are not about one input: storage, a stopped engine, a new version.

import type { TextName } from "../engine/types";

export interface Notice {
  name: TextName;
  /** What is said instead of the text of that name: a sentence of the engine. */
  sentence?: string;
  /** Something that can be done about it. */
  action?: { name: TextName; run: () => void };
}

let notices = $state.raw<readonly Notice[]>([]);
/** Notices of trouble that stays: who closed one is not told again at every keystroke. */
const closed = new Set<TextName>();

export const allNotices = (): readonly Notice[] => notices;

/** Shows a notice; the same one is not shown twice. */
export function notify(notice: Notice) {
  if (closed.has(notice.name)) return;
  notices = [...notices.filter(({ name }) => name !== notice.name), notice];
}

export function dismiss(notice: Notice) {
  if (notice.name.startsWith("store-")) closed.add(notice.name);
  notices = notices.filter((other) => other !== notice);
}
