// Messages that are not about one input: storage, a stopped engine, a new version.

import type { TextName } from "../engine/types";

export interface Notice {
  name: TextName;
  /** Something that can be done about it. */
  action?: { name: TextName; run: () => void };
}

let notices = $state.raw<readonly Notice[]>([]);

export const allNotices = (): readonly Notice[] => notices;

/** Shows a notice; the same one is not shown twice. */
export function notify(notice: Notice) {
  notices = [...notices.filter(({ name }) => name !== notice.name), notice];
}

export function dismiss(notice: Notice) {
  notices = notices.filter((other) => other !== notice);
}
