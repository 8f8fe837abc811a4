// One worksheet in the page: its boxes, and the parts that Python fills.
import { drawInto } from "./chart.js";
import { copyLink } from "./copy.js";
import { entries, number, setNumbers, snapshot } from "./numbers.js";
import { saveText } from "./save.js";
import { units } from "./units.js";

const CHART_DELAY = 250; // milliseconds without another change before a chart is worked out

export class Sheet {
  #element;
  #calculator;
  #fields = new Map(); // key -> {box, control, check}
  #slots = new Map(); // name -> element
  #example; // the plate as the build made it
  #reply = null; // the last one
  #unanswered = false; // whether the boxes hold what no reply has answered yet
  #typing = null; // the key of the box in which the reader is typing
  #scolded = new Set(); // keys whose error is shown
  #previous = null; // what "Put them back" puts back
  #chartTimer = 0;
  #afterwards = []; // what waits for the next reply

  constructor(element, calculator) {
    this.#element = element;
    this.#calculator = calculator;
    this.worksheet = element.dataset.worksheet;
    for (const slot of element.querySelectorAll("[data-slot]")) this.#slots.set(slot.dataset.slot, slot);
    for (const box of element.querySelectorAll(".ss-field")) {
      const control = box.querySelector("input:not([type=checkbox]), select");
      this.#fields.set(box.dataset.key, { box, control, check: box.querySelector("[data-ss-unknown]") });
    }
    this.#example = this.#slots.get("plate").textContent;
    this.#wire();
  }

  // ---- what the page tells it -------------------------------------------------------------------------------------

  /** Whether a reply to the example is the one that the build gave. */
  agrees(reply) {
    const plate = document.createElement("div");
    plate.innerHTML = reply.slots.plate;
    return plate.textContent.trim() === this.#example.trim();
  }

  /** The calculator is in another state now. */
  calculatorTurned(state, before) {
    this.#say({ asleep: "Asleep", starting: "Starting", ready: "Ready", failed: before === "ready" ? "Stopped" : "Failed" }[state]);
    this.#showAgain(state === "failed");
    if (state === "asleep" || state === "ready") this.#enable();
    if (state === "ready") {
      const asBuilt = !this.#reply && !this.#unanswered && !this.#inPlan() && units === "us";
      if (asBuilt) this.#showState("ready");
      else this.ask();
    }
    if (state === "failed") {
      this.#afterwards = [];
      if (this.#unanswered) this.#showNothing();
      else this.#element.dataset.state = "failed";
    }
  }

  #enable() {
    for (const { control, check } of this.#fields.values()) {
      control.disabled = false;
      if (check) check.disabled = false;
    }
  }

  /** Some numbers of the page have changed. */
  numbersChanged(keys) {
    // A number that was computed elsewhere may go out of date by any other one; so may a result that was used.
    const follows = this.#keys().some((key) => number(key).by) || this.#isUsed();
    if (!follows && !keys.some((key) => this.#fields.has(key) || this.#offers(key))) return;
    this.#slots.get("said").textContent = ""; // it was about other numbers
    this.ask();
  }

  /** Ask Python again. */
  ask() {
    clearTimeout(this.#chartTimer);
    this.#element.dataset.busy = "";
    this.#calculator.want({
      name: this.worksheet,
      rank: () => (this.#element.contains(document.activeElement) ? 0 : 1),
      request: () => this.#request(),
      take: (reply) => this.#take(reply),
      refuse: () => this.#refuse(),
    });
  }

  /** Replace this worksheet's numbers; what stood there can be put back. */
  replace(entries) {
    const keys = this.#keys();
    this.#offerBack(keys.length > 0 ? snapshot([...this.#fields.keys()]) : null);
    setNumbers({ ...Object.fromEntries([...this.#fields.keys()].map((key) => [key, undefined])), ...entries });
  }

  /** These numbers with null for every other box of this worksheet. */
  whole(entries) {
    return { ...Object.fromEntries([...this.#fields.keys()].map((key) => [key, null])), ...entries };
  }

  /**
   * Bring this worksheet into view for a link, with what is to be said about the link (null: that it is not for here).
   * Where that asks something, `answered` hears the answer: "mine", "theirs" or "look".
   */
  showLink(said, answered = null) {
    const slot = this.#slots.get("link");
    slot.onclick = answered && ((event) => this.#answer(event, answered));
    if (said === null) slot.textContent = this.#element.dataset.sayElsewhere;
    else slot.innerHTML = said;
    slot.hidden = said === "";
    this.#element.scrollIntoView();
    if (!slot.hidden) slot.focus({ preventScroll: true });
  }

  /** One of the link's questions was answered: show the part that belongs to the answer. */
  #answer(event, answered) {
    const answer = event.target.closest("[data-ss-link]")?.dataset.ssLink;
    if (!answer) return;
    const slot = this.#slots.get("link");
    for (const part of slot.querySelectorAll("[data-part]")) part.hidden = part.dataset.part !== answer;
    slot.focus({ preventScroll: true });
    answered(answer);
  }

  // ---- what the reader does ---------------------------------------------------------------------------------------

  #wire() {
    const form = this.#element.querySelector("form");
    form.addEventListener("submit", (event) => event.preventDefault());
    form.addEventListener("input", (event) => this.#edited(event.target));
    form.addEventListener("change", () => this.#left());
    form.addEventListener("focusout", () => this.#left());
    this.#slots.get("errors").addEventListener("click", (event) => this.#goToBox(event));
    this.#element.querySelector(".ss-foot").addEventListener("click", (event) => this.#pressed(event.target));
    this.#on("copy", () => this.#copy());
    this.#on("clear", () => this.#clear());
    this.#on("back", () => this.#putBack());
    this.#on("again", () => this.#calculator.start());
  }

  #on(name, does) {
    this.#button(name).addEventListener("click", does);
  }

  #button(name) {
    return this.#element.querySelector(`[data-ss-${name}]`);
  }

  #edited(target) {
    const key = target.closest(".ss-field").dataset.key;
    this.#offerBack(null);
    this.#unanswered = true;
    if (this.#calculator.state !== "ready") this.#showNothing();
    if (target.matches("[data-ss-unknown]")) {
      this.#knowOrNot(key, target.checked);
      return;
    }
    this.#typing = target.matches("select") ? null : key;
    // An emptied box that may be left alone is left alone again.
    const empty = target.value.trim() === "" && this.#fields.get(key).box.hasAttribute("data-optional");
    setNumbers({ [key]: empty ? undefined : { text: target.value, units, from: "typed" } });
  }

  #knowOrNot(key, unknown) {
    const entry = number(key);
    const { control } = this.#fields.get(key);
    if (unknown) {
      this.#typing = null;
      setNumbers({ [key]: { text: "", units, from: "typical", before: entry } });
      return;
    }
    // Known after all: what was typed before, or else the value that now stands in the box.
    setNumbers({ [key]: entry?.before ?? { text: control.value, units, from: "typed" } });
    control.focus();
    control.select?.();
  }

  /** A box was left: from now on its mistakes are shown. */
  #left() {
    const key = this.#typing;
    this.#typing = null;
    if (key === null) return;
    if (this.#unanswered || this.#reply?.state === "wrong") this.ask();
    else this.#fields.get(key).control.value = this.#reply.fields[key].value;
  }

  #goToBox(event) {
    const link = event.target.closest("a");
    const box = link && document.getElementById(link.hash.slice(1));
    if (!box) return;
    event.preventDefault();
    const folded = box.closest("details");
    if (folded) folded.open = true;
    box.focus();
  }

  // ---- results taken along ----------------------------------------------------------------------------------------

  #pressed(target) {
    const { ssUse: key, ssCsv: name } = target.closest("button")?.dataset ?? {};
    if (key) this.#want("use", { use: key }, (reply) => this.#showUsed(reply));
    if (name) this.#want("csv", { csv: name }, (reply) => reply.text && saveText(reply.name, reply.text));
  }

  /** Ask Python something else about the numbers in the boxes. */
  #want(name, request, take) {
    this.#calculator.want({
      name: `${name} of ${this.worksheet}`,
      rank: () => 0,
      request: () => ({ ...this.#request(), ...request }),
      take,
      refuse: () => {},
    });
  }

  /** A result was put into the plan, or Python says what stands in its way. */
  #showUsed({ key, taken, choices, said }) {
    const slot = this.#slots.get("used");
    const before = snapshot([key]);
    slot.innerHTML = said;
    slot.onclick = ({ target }) => {
      const { ssChoose: choice, ssUnuse: undo } = target.closest("button")?.dataset ?? {};
      if (choice === undefined && undo === undefined) return;
      setNumbers(choice === undefined ? before : { [key]: choices[choice] });
      slot.replaceChildren();
      this.#element.querySelector(`[data-ss-use="${key}"]`)?.focus();
    };
    slot.scrollIntoView({ block: "nearest" });
    if (taken) setNumbers({ [key]: taken });
    else slot.querySelector("button")?.focus();
  }

  #clear() {
    this.#slots.get("link").hidden = true;
    this.#offerBack(snapshot([...this.#fields.keys()]));
    setNumbers(Object.fromEntries([...this.#fields.keys()].map((key) => [key, undefined])));
  }

  #putBack() {
    const previous = this.#previous;
    this.#offerBack(null);
    setNumbers(previous);
  }

  /** Offer to put these numbers back in place of clearing; null: offer to clear. */
  #offerBack(previous) {
    const [clear, back] = [this.#button("clear"), this.#button("back")];
    const shown = previous ? back : clear;
    const hidden = previous ? clear : back;
    this.#previous = previous;
    shown.hidden = false;
    if (document.activeElement === hidden) shown.focus();
    hidden.hidden = true;
  }

  #copy() {
    const copy = () => {
      const said = this.#slots.get("said");
      if (this.#reply?.link) copyLink(this.#reply.link, said, this.#element.dataset);
      else said.textContent = this.#element.dataset.sayNone;
    };
    if (this.#calculator.state === "ready" && (this.#unanswered || !this.#reply)) {
      this.#afterwards.push(copy);
      this.ask();
    } else {
      copy();
    }
  }

  // ---- asking and showing -----------------------------------------------------------------------------------------

  #keys() {
    return [...this.#fields.keys()].filter((key) => number(key));
  }

  /** Whether anything that this worksheet shows depends on the reader's plan. */
  #inPlan() {
    return this.#keys().length > 0 || this.#isUsed() || [...Object.keys(entries())].some((key) => this.#offers(key));
  }

  /** Whether one of this worksheet's results is in the plan. */
  #isUsed() {
    return Object.values(entries()).some((entry) => entry.by === this.worksheet);
  }

  #offers(key) {
    return this.#element.querySelector(`[data-ss-use="${CSS.escape(key)}"]`) !== null;
  }

  #request() {
    const fields = {};
    for (const key of this.#keys()) {
      const { text, units: then, from } = number(key);
      fields[key] = { text, units: then, from };
    }
    return { worksheet: this.worksheet, fields, plan: entries(), scold: this.#typing === null ? null : [...this.#scolded] };
  }

  #take(reply) {
    this.#reply = reply;
    this.#unanswered = false;
    delete this.#element.dataset.busy;
    this.#scolded.clear();
    const wrong = reply.state === "wrong";
    holdingFocus(() => {
      this.#showState(wrong ? "wrong" : "ready", reply.slots.errors === "");
      for (const [name, html] of Object.entries(reply.slots)) fill(this.#slots.get(name), html);
      this.#slots.get("errors").hidden = reply.slots.errors === "";
      for (const [key, field] of this.#fields) this.#showField(key, field, reply.fields[key]);
    });
    for (const does of this.#afterwards.splice(0)) does();
    if (wrong || !this.#slots.has("chart")) return;
    this.#slots.get("chart").classList.add("ss-stale");
    this.#chartTimer = setTimeout(() => this.#askChart(), CHART_DELAY);
  }

  /** Python could not answer at all. */
  #refuse() {
    this.#afterwards = [];
    delete this.#element.dataset.busy;
    this.#showNothing();
    this.#say("Stopped");
  }

  /** No result stays in sight when it does not belong to what is in the boxes. */
  #showNothing() {
    this.#showState("nothing", true);
    this.#slots.get("plate").innerHTML = this.#element.querySelector("[data-plate]").innerHTML;
  }

  /** "ready", "wrong" or "nothing"; quietly while the reader may still be typing. */
  #showState(state, quiet = false) {
    const plate = this.#slots.get("plate");
    // "No result yet" takes the height of the result in whose place it stands.
    if (state === "ready") plate.style.minHeight = "";
    else if (!plate.style.minHeight) plate.style.minHeight = `${plate.offsetHeight}px`;
    this.#element.dataset.state = state;
    this.#element.toggleAttribute("data-quiet", quiet);
    if (state === "ready") this.#say("Ready");
    if (state === "wrong" && !quiet) this.#say("Wrong");
  }

  #showField(key, { box, control, check }, shown) {
    box.hidden = !shown;
    if (!shown) return;
    const error = box.querySelector(".ss-error");
    if (control.value !== shown.value && this.#typing !== key) control.value = shown.value;
    if (check) check.checked = shown.from === "typical";
    box.dataset.from = shown.from;
    if (shown.error) this.#scolded.add(key);
    if (error.textContent !== shown.error) error.textContent = shown.error;
    error.hidden = !shown.error;
    if (shown.error) control.setAttribute("aria-invalid", "true");
    else control.removeAttribute("aria-invalid");
    const unit = box.querySelector(".ss-unit");
    if (unit) unit.textContent = shown.unit;
    fill(box.querySelector(".ss-note"), shown.note);
  }

  #askChart() {
    this.#calculator.want({
      name: `chart of ${this.worksheet}`,
      rank: () => 2,
      request: () => ({ ...this.#request(), chart: true }),
      take: (reply) => this.#takeChart(reply.charts),
      refuse: () => {},
    });
  }

  async #takeChart(chart) {
    if (!chart || this.#unanswered) return;
    const figure = this.#slots.get("chart");
    try {
      await drawInto(figure, chart);
    } catch (error) {
      console.error(error); // the words and the table below it say the same
    }
    fill(this.#slots.get("chart-words"), chart.words);
    figure.classList.remove("ss-stale");
  }

  #say(name) {
    const status = this.#slots.get("status");
    const words = this.#element.dataset[`say${name}`];
    if (status.textContent !== words) status.textContent = words;
  }

  #showAgain(needed) {
    const again = this.#button("again");
    if (!needed && document.activeElement === again) this.#slots.get("status").focus();
    again.parentElement.hidden = !needed;
  }
}

/** Change the page without moving the box in which the reader is typing: notes and sentences come and go above it. */
function holdingFocus(change) {
  const box = document.activeElement?.closest(".ss-fields") && document.activeElement;
  const before = box?.getBoundingClientRect().top;
  change();
  if (box) scrollBy({ top: box.getBoundingClientRect().top - before, behavior: "instant" });
}

/** Put HTML from Python into an element, keeping what the reader has unfolded in it. */
function fill(element, html) {
  if (element.innerHTML === html) return;
  const folds = [...element.querySelectorAll("details")];
  const focused = element.contains(document.activeElement) ? document.activeElement.id : "";
  element.innerHTML = html;
  if (focused) document.getElementById(focused)?.focus({ preventScroll: true });
  element.querySelectorAll("details").forEach((details, index) => {
    details.open = folds[index]?.open ?? false;
    details.toggleAttribute("data-ss-for-print", folds[index]?.hasAttribute("data-ss-for-print") ?? false);
  });
}
