// The page "Your plan": the list that Python makes of the reader's numbers, and what is done to it.
import { Calculator } from "./calculator.js";
import { keep } from "./keep.js";
import { entries, rereadNumbers, setNumbers, snapshot, whenNumbersChange } from "./numbers.js";
import { saveText } from "./save.js";
import { units, whenUnitsChange } from "./units.js";

const MOST_UNDONE = 50; // changes that can be undone one after the other
const undone = keep("sessionStorage", "stoke-and-store.undo");

/** Bring the section of the plan to life. */
export function wirePlan(element) {
  new Plan(element);
}

class Plan {
  #element;
  #list;
  #calculator;
  #showing = false; // whether the list is being made anew
  #history; // what each change replaced, {key: entry or null}, the last one last

  constructor(element) {
    this.#element = element;
    this.#list = this.#slot("plan");
    this.#history = JSON.parse(undone.read() ?? "[]");
    const built = this.#list.textContent;
    this.#calculator = new Calculator({
      silence: () => 1000 * element.dataset.silence,
      // The build made the list of an empty plan with the same Python.
      check: { plan: {}, units: "us" },
      rightly: (reply) => textOf(reply.plan).trim() === built.trim(),
      onChange: (state, before) => this.#calculatorTurned(state, before),
    });
    this.#list.addEventListener("change", (event) => this.#edited(event.target));
    // A box whose list was made anew under the reader's hands counts as changed when it is left.
    this.#list.addEventListener("focusout", ({ target }) => target.matches("input") && this.#edited(target));
    this.#list.addEventListener("click", (event) => this.#pressed(event.target.closest("button")));
    this.#on("save", () => this.#save());
    this.#on("undo", () => this.#undo());
    this.#on("empty", () => this.#empty());
    this.#on("again", () => this.#calculator.start());
    element.querySelector("input[type=file]").addEventListener("change", (event) => this.#load(event.target));
    whenNumbersChange(() => this.#ask());
    whenUnitsChange(() => this.#ask());
    addEventListener("pageshow", (event) => {
      if (event.persisted) rereadNumbers();
    });
    this.#showUndo();
    this.#calculator.start();
  }

  #slot(name) {
    return this.#element.querySelector(`[data-slot=${name}]`);
  }

  #button(name) {
    return this.#element.querySelector(`[data-ss-${name}]`);
  }

  #on(name, does) {
    this.#button(name).addEventListener("click", does);
  }

  #calculatorTurned(state, before) {
    const words = { starting: "Starting", ready: "Ready", failed: before === "ready" ? "Stopped" : "Failed" }[state];
    this.#slot("status").textContent = this.#element.dataset[`say${words}`];
    this.#element.dataset.state = state;
    this.#button("again").parentElement.hidden = state !== "failed";
    if (state === "ready") this.#ask();
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
    this.#say(this.#element.dataset.sayUndone);
  }

  #keepHistory() {
    this.#history = this.#history.slice(-MOST_UNDONE);
    undone.write(JSON.stringify(this.#history));
    this.#showUndo();
  }

  #showUndo() {
    const button = this.#button("undo");
    if (document.activeElement === button && this.#history.length === 0) this.#slot("said").focus();
    button.disabled = this.#history.length === 0;
  }

  /** A box was left with another text in it, or a choice was made. */
  #edited(target) {
    if (this.#showing || target.value === target.defaultValue) return;
    if (target.matches("input")) target.defaultValue = target.value;
    const key = target.closest("[data-key]").dataset.key;
    this.#change({ [key]: target.value.trim() === "" ? undefined : { text: target.value, units, from: "typed" } });
  }

  #pressed(button) {
    if (!button) return;
    const key = button.closest("[data-key]").dataset.key;
    if (button.hasAttribute("data-ss-drop")) this.#change({ [key]: undefined });
    const { ssNow: text, ssBy: by } = button.dataset;
    if (text) this.#change({ [key]: { text, units: "us", from: "computed", by } });
  }

  #empty() {
    const keys = Object.keys(entries());
    if (keys.length > 0) this.#change(Object.fromEntries(keys.map((key) => [key, undefined])));
    this.#say(this.#element.dataset.sayCleared);
  }

  // ---- files ------------------------------------------------------------------------------------------------------

  #save() {
    this.#want("file", () => ({ plan_text: entries() }), (reply) => {
      saveText(reply.name, reply.text);
      this.#slot("said").innerHTML = reply.said;
    });
  }

  async #load(input) {
    const [file] = input.files;
    if (!file) return;
    // A file that is too large to be a plan is not read to its end; Python says so.
    const bytes = await file.slice(0, Number(this.#element.dataset.largest)).arrayBuffer();
    const text = new TextDecoder().decode(bytes);
    input.value = "";
    this.#want("file", () => ({ plan_file: text }), (reply) => {
      if (reply.loaded) {
        const gone = Object.fromEntries(Object.keys(entries()).map((key) => [key, undefined]));
        this.#change({ ...gone, ...reply.entries });
      }
      this.#slot("said").innerHTML = reply.said;
      this.#slot("said").focus();
    });
  }

  // ---- asking and showing -----------------------------------------------------------------------------------------

  #ask() {
    this.#element.dataset.busy = "";
    this.#want("plan", () => ({ plan: entries() }), (reply) => {
      delete this.#element.dataset.busy;
      this.#show(reply.plan);
    });
  }

  #want(name, request, take) {
    const refuse = () => this.#calculatorTurned("failed", "ready");
    this.#calculator.want({ name, rank: () => (name === "plan" ? 1 : 0), request, take, refuse });
  }

  /** Show another list, keeping the reader's place and what is half typed in it. */
  #show(html) {
    const active = this.#list.contains(document.activeElement) ? document.activeElement : null;
    const half = active?.matches("input") && active.value !== active.defaultValue ? active.value : null;
    const order = active && [...this.#list.querySelectorAll("[data-key]")].indexOf(active.closest("[data-key]"));
    this.#showing = true;
    this.#list.innerHTML = html;
    this.#showing = false;
    if (!active) return;
    const same = document.getElementById(active.id);
    // What had the focus is gone: the next one takes its place.
    const rows = [...this.#list.querySelectorAll("[data-key]")];
    const next = rows[Math.min(order, rows.length - 1)]?.querySelector("input, select");
    (same ?? next ?? this.#slot("status")).focus();
    if (same && half !== null) same.value = half;
  }

  #say(words) {
    this.#slot("said").textContent = words;
  }
}

function textOf(html) {
  const place = document.createElement("div");
  place.innerHTML = html;
  return place.textContent;
}
