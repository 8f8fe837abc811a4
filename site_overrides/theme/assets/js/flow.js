// What a worksheet's results do to the plan on their own, and what the first own number moved besides itself: both are
// told beside the answer, and can be undone there.
import { fill } from "./fill.js";
import { isBorrowed, setNumbers, snapshot } from "./numbers.js";

export class Flow {
  #panel;
  #worked = false; // whether the reader has changed a number of this worksheet
  #leftExample = false; // whether that was the first one, in place of the worked example
  #declined = new Set(); // results that the reader took out of the plan again

  constructor(panel) {
    this.#panel = panel;
  }

  /** The reader changed a number, where the worked example stood or not. */
  edited(onExample) {
    this.#worked = true;
    this.#leftExample ||= onExample;
    this.#panel.slot("flow").replaceChildren();
  }

  /** The reader's numbers are gone from this worksheet. */
  cleared() {
    this.#worked = this.#leftExample = false;
    this.#declined.clear();
    this.#panel.slot("flow").replaceChildren();
  }

  /** What is asked about it; nothing goes into the plan while the reader is `typing`, or looks at a link's numbers. */
  request(typing) {
    const flow = typing || isBorrowed() ? null : { new: this.#worked, declined: [...this.#declined] };
    return { flow, left_example: this.#leftExample };
  }

  /** Show what moved, and put into the plan what flows into it. */
  take({ flow, moved }) {
    this.#show("moved", moved.said, ({ ssKeep }) => {
      if (ssKeep === undefined) return;
      this.#panel.slot("status").focus();
      setNumbers(moved.entries);
    });
    const keys = Object.keys(flow.entries);
    if (keys.length === 0 || isBorrowed()) return;
    const before = snapshot(keys);
    this.#show("flow", flow.said, ({ ssUnflow }) => {
      if (ssUnflow === undefined) return;
      for (const key of keys) this.#declined.add(key);
      this.#panel.slot("status").focus();
      this.#panel.slot("flow").replaceChildren();
      setNumbers(before);
    });
    setNumbers(flow.entries);
  }

  #show(name, said, pressed) {
    const slot = this.#panel.slot(name);
    fill(slot, said);
    slot.onclick = ({ target }) => pressed(target.closest("button")?.dataset ?? {});
  }
}
