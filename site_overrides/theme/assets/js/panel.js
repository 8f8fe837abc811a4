// A part of the page that Python answers: a worksheet, the plan, the record, the desk. What they have in common stands
// here: the line that says how the calculator is, the lamp on it, "Try again", and asking.
import { Calculator } from "./calculator.js";
import { keepForOffline } from "./offline.js";
import { practise } from "./practice.js";

/**
 * Start a calculator for panels, or `wait` until one of them is used. It is believed if its answer to `check` is right:
 * the HTML that `part` takes from it reads as `known`, which the build made. `weather()` is what calculator.js says, and
 * `worksheets` are those that the reader may be about to use.
 */
export function startCalculator(panels, { check, part, known, wait = false, weather = () => null, worksheets = [] }) {
  const calculator = new Calculator({
    silence: () => 1000 * panels[0].element.dataset.silence,
    check,
    rightly: (reply) => textOf(part(reply)) === known.trim(),
    onChange: (state, before) => {
      for (const panel of panels) panel.turn(state, before);
      if (state !== "ready") return;
      keepForOffline();
      practise(calculator, worksheets);
    },
    weather,
  });
  for (const panel of panels) panel.calculator = calculator;
  if (wait) sleep(panels, calculator);
  else calculator.start();
  return calculator;
}

/** The calculator starts when the reader first chooses a box. */
function sleep(panels, calculator) {
  for (const panel of panels) {
    panel.turn("asleep");
    panel.element.addEventListener("focusin", () => calculator.state === "asleep" && calculator.start());
  }
}

/** What the panels that have no answer of their own in the page are checked by: the plate of a worked example. */
export function knownPlate(element) {
  const known = element.querySelector("[data-ss-known]");
  return {
    check: { ask: "worksheet", worksheet: known.dataset.worksheet, scold: [] },
    part: (reply) => reply.slots.plate,
    known: known.content.textContent,
  };
}

function textOf(html) {
  const place = document.createElement("div");
  place.innerHTML = html;
  return place.textContent.trim();
}

export class Panel {
  calculator = null;
  #slots = new Map();
  #ask;
  #turned;

  /** `ask()` asks for what the panel shows; `turned(state, before)` hears how the calculator is, and else asks when it is ready. */
  constructor(element, { ask, turned }) {
    this.element = element;
    this.#ask = ask;
    this.#turned = turned ?? ((state) => {
      this.light(state);
      if (state === "ready") ask();
    });
    for (const slot of element.querySelectorAll("[data-slot]")) this.#slots.set(slot.dataset.slot, slot);
    this.button("again").onclick = () => this.#again(); // in place of what early.js put there
    element.dataset.live = "";
  }

  /** A place for what Python says. */
  slot(name) {
    return this.#slots.get(name);
  }

  has(name) {
    return this.#slots.has(name);
  }

  button(name) {
    return this.element.querySelector(`[data-ss-${name}]`);
  }

  on(name, does) {
    this.button(name).addEventListener("click", does);
  }

  get starting() {
    return this.calculator?.state === "starting";
  }

  get ready() {
    return this.calculator?.state === "ready";
  }

  /** Say in the status line one of the sentences that the panel carries. */
  say(name) {
    const words = this.words(name);
    const status = this.slot("status");
    if (words !== undefined && status.textContent !== words) status.textContent = words;
  }

  words(name) {
    return this.element.dataset[`say${name[0].toUpperCase()}${name.slice(1)}`];
  }

  /** The lamp on the status line. */
  light(state) {
    this.slot("status").parentElement.dataset.state = state;
  }

  /** The calculator is in another state now. */
  turn(state, before) {
    this.say(state === "failed" && before === "ready" ? "stopped" : state);
    this.#offerAgain(state === "failed");
    this.#turned(state, before);
  }

  /**
   * Ask Python `{name, request, take, refuse, rank, packages}`: `request()` is made when its turn comes, and `take(reply)`
   * follows, or `refuse()`. A question of the same name that is still waiting is not asked.
   */
  want(question) {
    this.calculator?.want({ rank: () => 0, refuse: () => {}, ...question });
  }

  /** The same for all that the panel shows: it is marked busy meanwhile, and if Python cannot answer it says so. */
  wantAll(question) {
    this.element.dataset.busy = "";
    this.want({
      rank: () => 1,
      ...question,
      take: (reply) => {
        delete this.element.dataset.busy;
        this.#offerAgain(false);
        question.take(reply);
      },
      refuse: () => {
        delete this.element.dataset.busy;
        this.say("stopped");
        this.light("failed");
        this.#offerAgain(true);
        question.refuse?.();
      },
    });
  }

  /** A calculator that broke is started again; one that refused a single request is asked again. */
  #again() {
    if (this.ready) this.#ask();
    else this.calculator.start();
  }

  #offerAgain(needed) {
    const again = this.button("again");
    if (!needed && document.activeElement === again) this.slot("status").focus();
    again.parentElement.hidden = !needed;
  }
}

// ---- its boxes ----------------------------------------------------------------------------------------------------

/** The key of the field that holds `target`, and an entry for what the reader put there in the unit of its label. */
export function entryOf(target) {
  const { key, units, unit } = target.closest("[data-key]").dataset;
  return { key, entry: unit ? { text: target.value, units, unit } : { text: target.value, units } };
}

/**
 * Show what Python says of a field, in `units`; hidden where it says nothing. While the reader is `typing` in a box its
 * text stays, and so does the unit on its label if that was another one: the number was meant in it.
 */
export function showField(field, shown, units, typing) {
  field.hidden = !shown;
  if (!shown) return;
  const control = field.querySelector("input:not([type=checkbox]), select");
  if (!typing && control.value !== shown.value) control.value = shown.value;
  if (!typing || field.dataset.units === units) {
    const unit = field.querySelector(".ss-unit");
    if (unit) unit.textContent = shown.unit;
    field.dataset.units = units;
    field.dataset.unit = shown.measure;
  }
  const error = field.querySelector(".ss-error");
  if (error.textContent !== shown.error) error.textContent = shown.error;
  error.hidden = !shown.error;
  if (shown.error) control.setAttribute("aria-invalid", "true");
  else control.removeAttribute("aria-invalid");
  const check = field.querySelector("[data-ss-unknown]");
  if (check) check.checked = shown.unknown;
  if (shown.from) field.dataset.from = shown.from;
}
