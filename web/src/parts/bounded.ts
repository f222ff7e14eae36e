// Fields have a bound: what is longer is not taken in, and that is said, before it is mirrored, kept or sent.

import { notify } from "../shell/notices.svelte";
import { beginning } from "../texts.svelte";

type Field = HTMLInputElement | HTMLTextAreaElement;

/** For `oninput`: tells the new text, or puts the old one back where the new one is too long. */
export function bounded(onText: (text: string) => void) {
  const before = new WeakMap<Field, string>();
  return (event: Event & { currentTarget: Field }) => {
    const field = event.currentTarget;
    if (field.value.length > beginning().longest) {
      field.value = before.get(field) ?? "";
      notify({ name: "field-too-long" });
      return;
    }
    before.set(field, field.value);
    onText(field.value);
  };
}
