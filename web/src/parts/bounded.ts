// Fields have a bound: what is longer is not taken in, and that is said, before it is mirrored, kept or sent.

import { notify } from "../shell/notices.svelte";
import { beginning } from "../texts.svelte";

type Field = HTMLInputElement | HTMLTextAreaElement;

/** For `oninput`: tells the new text, or puts back the one that the field had where the new one is too long. */
export function bounded(had: () => string, onText: (text: string) => void) {
  return (event: Event & { currentTarget: Field }) => {
    const field = event.currentTarget;
    if (field.value.length > beginning().longest) {
      field.value = had();
      notify({ name: "field-too-long" });
      return;
    }
    onText(field.value);
  };
}
