// The page "Your plan": the list that Python makes of the reader's numbers, and what is done to it.
import { stored } from "./browser-storage.js";
import { entries, number, rename, setNumbers, snapshot, whenNumbersChange } from "./numbers.js";
import { entryOf, Panel, startCalculator } from "./panel.js";
import { saveText } from "./save.js";
import { builtUnits, whenUnitsChange } from "./units.js";

const MOST_UNDONE = 50; // changes that can be undone one after the other
const undone = stored("sessionStorage", "stoke-and-store.undo");

/** Bring the section of the plan to life. */
export function wirePlan(element) {
  new Plan(element);
}

class Plan {
  #panel;
  #list;
  #showing = false; // whether the list is being made anew
  #history = readHistory(); // what each change replaced, {key: entry or null}, the last one last

  constructor(element) {
    this.#panel = new Panel(element, { ask: () => this.#ask() });
    this.#list = this.#panel.slot("plan");
    this.#list.addEventListener("change", (event) => this.#edited(event.target));
    // A box whose list was made anew under the reader's hands counts as changed when it is left.
    this.#list.addEventListener("focusout", ({ target }) => target.matches("input") && this.#edited(target));
    this.#list.addEventListener("click", (event) => this.#pressed(event.target.closest("button")));
    this.#panel.on("save", () => this.#save());
    this.#panel.on("undo", () => this.#undo());
    this.#panel.on("empty", () => this.#empty());
    element.querySelector("input[type=file]").addEventListener("change", (event) => this.#load(event.target));
    whenNumbersChange(() => this.#ask());
    whenUnitsChange(() => this.#ask());
    this.#showUndo();
    const built = this.#list.textContent;
    if (Object.keys(entries()).length > 0) this.#list.innerHTML = element.querySelector("[data-waiting]").innerHTML;
    startCalculator([this.#panel], {
      // The build made the list of an empty plan with the same Python.
      check: { ask: "plan", plan: {}, units: builtUnits },
      part: (reply) => reply.list,
      known: built,
    });
  }

  // ---- changes ----------------------------------------------------------------------------------------------------

  /** Change some entries, so that it can be undone. */
  #change(changes) {
    const before = snapshot(Object.keys(changes));
    this.#history.push(Object.fromEntries(Object.entries(before).map(([key, entry]) => [key, entry ?? null])));
    this.#keepHistory();
    setNumbers(changes);
  }

  #undo() {
    const before = this.#history.pop();
    this.#keepHistory();
    if (!before) return;
    setNumbers(Object.fromEntries(Object.entries(before).map(([key, entry]) => [key, entry ?? undefined])));
    this.#say("undone");
  }

  #keepHistory() {
    this.#history = this.#history.slice(-MOST_UNDONE);
    undone.write(JSON.stringify(this.#history));
    this.#showUndo();
  }

  #showUndo() {
    const button = this.#panel.button("undo");
    if (document.activeElement === button && this.#history.length === 0) this.#panel.slot("said").focus();
    button.disabled = this.#history.length === 0;
  }

  /** A box was left with another text in it, or a choice was made. */
  #edited(target) {
    if (this.#showing || target.value === target.defaultValue) return;
    if ("ssGiver" in target.dataset) {
      this.#given(target);
      return;
    }
    if (target.matches("input")) target.defaultValue = target.value;
    const { key, entry } = entryOf(target);
    this.#change({ [key]: target.value.trim() === "" ? undefined : entry });
  }

  /** Who gave a number was chosen: the number itself stays as it was typed. */
  #given(select) {
    const { value } = select;
    const { key } = select.closest("[data-key]").dataset;
    const { giver, ...entry } = number(key);
    if (value !== (giver ?? "")) this.#change({ [key]: value ? { ...entry, giver: value } : entry });
  }

  #pressed(button) {
    if (!button) return;
    const { ssDrop: key, ssTake: changes } = button.dataset;
    if (key) this.#change({ [key]: undefined });
    if (changes) this.#change(JSON.parse(changes));
  }

  #empty() {
    const keys = Object.keys(entries());
    if (keys.length > 0) this.#change(Object.fromEntries(keys.map((key) => [key, undefined])));
    this.#say("cleared");
  }

  // ---- files ------------------------------------------------------------------------------------------------------

  #save() {
    this.#want("save", () => ({ plan: entries() }), (reply) => {
      saveText(reply.name, reply.text);
      this.#panel.slot("said").innerHTML = reply.said;
    });
  }

  async #load(input) {
    const [file] = input.files;
    if (!file) return;
    // A file that is too large to be a plan is not read to its end; Python says so.
    const bytes = await file.slice(0, Number(this.#panel.element.dataset.largest)).arrayBuffer();
    const text = new TextDecoder().decode(bytes);
    input.value = "";
    this.#want("load", () => ({ text }), (reply) => {
      if (reply.loaded) {
        const gone = Object.fromEntries(Object.keys(entries()).map((key) => [key, undefined]));
        this.#change({ ...gone, ...reply.entries });
      }
      this.#panel.slot("said").innerHTML = reply.said;
      this.#panel.slot("said").focus();
    });
  }

  // ---- asking and showing -----------------------------------------------------------------------------------------

  #ask() {
    this.#panel.wantAll({
      name: "plan",
      request: () => ({ ask: "plan", plan: entries() }),
      take: (reply) => {
        this.#panel.say("ready");
        this.#panel.light("ready");
        this.#show(reply);
        if (reply.renamed.said) this.#panel.slot("said").innerHTML = reply.renamed.said;
        rename(reply.renamed.entries);
      },
    });
  }

  /** Save or load: of two presses, the last one counts. */
  #want(ask, request, take) {
    this.#panel.want({ name: "file", request: () => ({ ask, ...request() }), take, refuse: () => this.#panel.say("stopped") });
  }

  /** Show another list, keeping the reader's place and what is half typed in it. */
  #show({ list, units }) {
    const active = this.#list.contains(document.activeElement) ? document.activeElement : null;
    const half = active?.matches("input") && active.value !== active.defaultValue ? active.value : null;
    // What is half typed beside a unit is meant in it, and is taken so before the label says another.
    if (half !== null && active.closest("[data-key]").dataset.units !== units) {
      this.#edited(active);
      return;
    }
    const order = active && [...this.#list.querySelectorAll("[data-key]")].indexOf(active.closest("[data-key]"));
    this.#showing = true;
    this.#list.innerHTML = list;
    this.#showing = false;
    if (!active) return;
    const same = document.getElementById(active.id);
    // What had the focus is gone: the next one takes its place.
    const rows = [...this.#list.querySelectorAll("[data-key]")];
    const next = rows[Math.min(order, rows.length - 1)]?.querySelector("input, select");
    (same ?? next ?? this.#panel.slot("status")).focus();
    if (same && half !== null) same.value = half;
  }

  #say(name) {
    this.#panel.slot("said").textContent = this.#panel.words(name);
  }
}

/** The changes that can be undone; none where what the browser kept is not what was written. */
function readHistory() {
  try {
    const found = JSON.parse(undone.read() ?? "[]");
    return Array.isArray(found) ? found.filter((change) => change instanceof Object) : [];
  } catch {
    return [];
  }
}
