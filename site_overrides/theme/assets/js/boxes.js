// The boxes of a worksheet: what the reader does in them goes into the plan, and they show what Python says of each.
import { fill } from "./fill.js";
import { number, setNumbers } from "./numbers.js";
import { entryOf, showField } from "./panel.js";

export class Boxes {
  alone; // the keys that no other worksheet asks
  typing = null; // the key of the box in which the reader is typing
  scolded = new Set(); // keys whose error is shown
  #fields = new Map(); // key -> element, in the order of the form
  #fold;
  #onEdit;
  #onLeave;

  /** `onEdit()` hears of each change before it is made, `onLeave()` when a box was left in which something was typed. */
  constructor(form, { onEdit, onLeave }) {
    for (const key of form.dataset.order.split(" ")) this.#fields.set(key, form.querySelector(`[data-key="${key}"]`));
    this.alone = form.dataset.alone.split(" ");
    this.#fold = form.querySelector(".ss-optional");
    this.#onEdit = onEdit;
    this.#onLeave = onLeave;
    form.addEventListener("submit", (event) => event.preventDefault());
    form.addEventListener("input", (event) => this.#edited(event.target));
    form.addEventListener("change", () => this.#left());
    form.addEventListener("click", ({ target }) => target.matches("[data-ss-so]") && this.#confirm(target));
    form.addEventListener("focusout", () => this.#left());
  }

  get keys() {
    return [...this.#fields.keys()];
  }

  has(key) {
    return this.#fields.has(key);
  }

  enable(on = true) {
    for (const field of this.#fields.values()) {
      for (const control of field.querySelectorAll("input, select")) control.disabled = !on;
    }
  }

  /** Show what a reply says of each box. With `unfold` something in the fold is wrong. */
  show({ fields, units, unfold }) {
    this.scolded.clear();
    for (const [key, field] of this.#fields) {
      const shown = fields[key];
      showField(field, shown, units, this.typing === key);
      if (!shown) continue;
      if (shown.error) this.scolded.add(key);
      if ("blank" in field.dataset && !number(key)) {
        this.#empty(field);
        continue;
      }
      fill(field.querySelector(".ss-note"), shown.note);
    }
    this.#place(fields);
    if (unfold) this.#fold.open = true;
  }

  /** Another choice asks for other boxes: each stands open or in the fold, in the order of the form. */
  #place(shown) {
    let inFold = false;
    const group = this.#fold.querySelector(".ss-group");
    for (const [key, field] of this.#fields) {
      if (!shown[key]) continue;
      inFold ||= shown[key].folded;
      const place = shown[key].folded ? group : this.#fold.parentElement;
      if (shown[key].folded ? field.parentElement === place : !group.contains(field)) continue;
      const later = [...this.#fields.values()];
      const next = later.slice(later.indexOf(field) + 1).find((other) => other.parentElement === place);
      place.insertBefore(field, next ?? (place === group ? null : this.#fold));
    }
    this.#fold.hidden = !inFold;
  }

  /** Nothing of what stands in for a number is shown in a box that begins empty. */
  #empty(field) {
    const control = field.querySelector("input:not([type=checkbox]), select");
    control.value = "";
    const check = field.querySelector("[data-ss-unknown]");
    if (check) check.checked = false;
    fill(field.querySelector(".ss-note"), "");
  }

  #edited(target) {
    const { key, entry } = entryOf(target);
    this.#onEdit();
    if (target.matches("[data-ss-unknown]")) {
      this.#knowOrNot(key, target);
      return;
    }
    this.typing = target.matches("select") ? null : key;
    // An emptied box that may be left alone is left alone again.
    const empty = target.value.trim() === "" && this.#fields.get(key).hasAttribute("data-optional");
    setNumbers({ ...this.#restsOn(key), [key]: empty ? undefined : entry });
  }

  /** A choice that stands there already is the reader's own: to choose it once more, browsers take for no change. */
  #confirm(button) {
    const select = button.closest("[data-key]").querySelector("select");
    this.#edited(select);
    select.focus();
  }

  /** The choices in sight on which it hangs that a box is asked, where the plan does not hold them yet. */
  #restsOn(key) {
    const kept = {};
    for (const choice of this.#fields.get(key).dataset.rests?.split(" ") ?? []) {
      const field = this.#fields.get(choice);
      const select = field.querySelector("select");
      if (!field.hidden && select.value && !number(choice)) kept[choice] = entryOf(select).entry;
    }
    return kept;
  }

  /** Show the reader's own numbers as they were typed, and nothing in the other boxes, until Python has read them. */
  showTyped() {
    for (const [key, field] of this.#fields) {
      const control = field.querySelector("input:not([type=checkbox]), select");
      const own = number(key);
      const meant = own?.unit && own.unit !== field.dataset.unit ? ` ${own.unit}` : "";
      if (own?.text && own.units === field.dataset.units) control.value = own.text + meant;
      else if (control.matches("select")) control.selectedIndex = -1;
      else control.value = "";
    }
  }

  /** "I do not know" was ticked or not; the box carries what that is in the plan. */
  #knowOrNot(key, check) {
    const before = number(key);
    if (check.checked) {
      this.typing = null;
      setNumbers({ ...this.#restsOn(key), [key]: { ...JSON.parse(check.dataset.ssUnknown), before } });
      return;
    }
    // Known after all: what was typed before, or else the value that now stands in the box.
    const control = this.#fields.get(key).querySelector("input:not([type=checkbox]), select");
    setNumbers({ [key]: before?.before ?? entryOf(control).entry });
    control.focus();
    control.select?.();
  }

  /** A box was left: from now on its mistakes are shown. */
  #left() {
    if (this.typing === null) return;
    this.typing = null;
    this.#onLeave();
  }
}
