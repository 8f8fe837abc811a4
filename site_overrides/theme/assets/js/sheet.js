// One worksheet in the page: its boxes, and the parts that Python fills.
import { Boxes } from "./boxes.js";
import { drawInto } from "./chart.js";
import { copyLink } from "./copy.js";
import { fill, holdingFocus } from "./fill.js";
import { Flow } from "./flow.js";
import { entries, number, ownEntries, rename, setNumbers, snapshot, whenNumbersChange } from "./numbers.js";
import { Panel } from "./panel.js";
import { wireQuestions } from "./questions.js";
import { saveText } from "./save.js";
import { Sweep } from "./sweep.js";
import { builtUnits, units, whenUnitsChange } from "./units.js";
import { WeatherFile } from "./weather-file.js";

const PAUSE = 250; // milliseconds without another change before a chart, or another worksheet, is worked out

export class Sheet {
  #element;
  #boxes;
  #flow;
  #reply = null; // the last one
  #unanswered = false; // whether the boxes hold what no reply has answered yet
  #previous = null; // what "Put them back" puts back
  #laterTimer = 0;
  #chartTimer = 0;
  #stockTimer = 0;
  #linesTimer = 0;
  #howTimer = 0;
  #sweep = null;
  #file = null; // of the reader's own weather
  #charted = ""; // the link of the numbers that the chart shows, and the units
  #afterwards = []; // what waits for the next reply
  #held = false; // its boxes wait until a link is read and its numbers stand in them

  constructor(element) {
    this.#element = element;
    this.worksheet = element.dataset.worksheet;
    this.panel = new Panel(element, { ask: () => this.ask(), turned: (...states) => this.#turned(...states) });
    this.built = this.panel.slot("plate").textContent; // the worked example's, by the build
    this.#flow = new Flow(this.panel);
    this.#boxes = new Boxes(element.querySelector("form"), { onEdit: () => this.#edited(), onLeave: () => this.#left() });
    this.panel.slot("errors").addEventListener("click", (event) => this.#goToBox(event));
    this.panel.slot("late").addEventListener("click", ({ target }) => this.#renew(target.closest("[data-ss-renew]")));
    element.querySelector(".ss-foot").addEventListener("click", (event) => this.#pressed(event.target));
    this.panel.slot("plate").addEventListener("click", ({ target }) => this.#bring(target.closest("[data-ss-bring]")));
    this.panel.on("copy", () => this.#copy());
    this.panel.on("clear", () => this.#clear());
    this.panel.on("back", () => this.#putBack());
    if (this.panel.has("sweep")) this.#sweep = new Sweep(this.panel, (more) => this.#request("sweep", more));
    const file = element.querySelector("[data-ss-weather]");
    if (file) this.#file = new WeatherFile(file, this.panel, { reading: () => this.#showNothing(), taken: () => this.#otherWeather() });
    whenUnitsChange(() => this.ask());
    whenNumbersChange((keys) => this.#numbersChanged(keys));
    if (this.panel.has("stock")) this.panel.slot("stock").addEventListener("change", (event) => this.#picked(event.target));
    wireQuestions(element.querySelector("form"), () => this.#edited());
    this.panel.button("open")?.addEventListener("click", () => this.#open(true));
    document.addEventListener("focusout", () => this.#laterTimer && this.ask());
    addEventListener("hashchange", () => this.#openForAddress());
    this.#openForAddress();
    this.#openForOwn();
    if (this.#isGiven()) this.#showGiven();
  }

  // ---- what the page tells it -------------------------------------------------------------------------------------

  /** The calculator is in another state now. */
  #turned(state, before) {
    // Before Python has set the boxes anew, only those that are as they were built say what a number in them means.
    if (state !== "failed" && (state !== "starting" || this.#isAsBuilt())) this.#enable();
    if (state === "ready") {
      if (this.#isAsBuilt()) {
        this.#showState("ready");
        this.#askStock();
      } else {
        this.ask();
      }
    }
    if (state === "failed") {
      this.#afterwards = [];
      if (this.#waiting || (this.#unanswered && before === "starting")) this.panel.say("failedMine");
      if (this.#unanswered) this.#showNothing();
      else if (!this.#waiting) this.panel.light("failed");
    }
  }

  #isAsBuilt() {
    return !this.#reply && !this.#unanswered && !this.#inPlan() && units === builtUnits;
  }

  #enable() {
    if (!this.#held) this.#boxes.enable();
  }

  /** Until `release`, its boxes stay as they are built: a link is to be read first. */
  hold() {
    this.#held = true;
    this.#boxes.enable(false);
  }

  /** The link is read; where it brought numbers, its boxes wait for these. */
  release() {
    this.#held = false;
    if (!("busy" in this.#element.dataset)) this.#enable();
  }

  /** Some numbers of the page have changed. */
  #numbersChanged(keys) {
    if (!this.#reply?.follows && !keys.some((key) => this.#boxes.has(key) || this.#offers(key))) return;
    this.panel.slot("said").textContent = ""; // it was about other numbers
    if (this.panel.starting && this.#isGiven() && !this.#element.contains(document.activeElement)) {
      this.#showGiven();
    }
    if (this.#typedElsewhere()) this.#askLater();
    else this.ask();
  }

  #typedElsewhere() {
    const box = document.activeElement;
    return box?.matches(".ss-sheet input[type=text]") && !this.#element.contains(box);
  }

  /** The worksheet in which the reader is typing is answered alone until there is a pause, or its box is left. */
  #askLater() {
    this.#element.dataset.busy = "";
    clearTimeout(this.#laterTimer);
    this.#laterTimer = setTimeout(() => this.ask(), PAUSE);
  }

  /** Another weather file stands behind the same numbers: nothing that was worked out with the last one stays. */
  #otherWeather() {
    this.#sweep?.keepOnlyFor("");
    this.#charted = "";
    this.ask();
  }

  /** Ask Python again. */
  ask() {
    for (const timer of [this.#laterTimer, this.#chartTimer, this.#stockTimer, this.#howTimer]) clearTimeout(timer);
    this.#laterTimer = 0;
    this.panel.wantAll({
      name: this.worksheet,
      rank: () => (this.#element.contains(document.activeElement) ? 0 : 1),
      request: () => {
        const typing = this.#boxes.typing !== null;
        return this.#request("worksheet", { scold: typing ? [...this.#boxes.scolded] : null, ...this.#flow.request(typing) });
      },
      first: (plate) => this.#takeFirst(plate),
      take: (reply) => this.#take(reply),
      refuse: () => this.#refuse(),
    });
  }

  /** Show all of a worksheet that showed its question and its answer alone. */
  #open(byHand = false) {
    const opener = this.panel.button("open");
    if (!opener || !this.#element.hasAttribute("data-closed")) return;
    this.#element.removeAttribute("data-closed");
    opener.parentElement.hidden = true;
    if (byHand) this.#element.querySelector(".ss-fields :is(input, select)").focus();
  }

  #openForAddress() {
    const at = document.getElementById(location.hash.slice(1));
    if (at && this.#element.contains(at)) this.#open();
  }

  /** A number that the reader or a link gave, and that no other worksheet asks, means that this one is in use. */
  #openForOwn() {
    const given = (entry) => entry && (!entry.from || entry.from === "link");
    if (this.#boxes.alone.some((key) => given(number(key)))) this.#open();
  }

  /** Replace this worksheet's numbers, or with `all` the whole plan's; what stood there can be put back. */
  replace(entries, all = false) {
    const keys = [...new Set([...this.#keysOf(all), ...Object.keys(entries)])];
    const before = snapshot(keys);
    this.#offerBack(Object.values(before).some((entry) => entry) ? before : null);
    if (!all) this.#flow.edited(false); // what they give flows on, as that of typed ones; a whole plan holds it already
    setNumbers({ ...Object.fromEntries(keys.map((key) => [key, undefined])), ...entries });
  }

  /** These numbers with null for every other box of this worksheet, or with `all` for every other number of the plan. */
  inPlaceOf(entries, all = false) {
    return { ...Object.fromEntries(this.#keysOf(all).map((key) => [key, null])), ...entries };
  }

  #keysOf(all) {
    return all ? Object.keys(ownEntries()) : this.#boxes.keys;
  }

  /** Bring this worksheet into view, opened. */
  bring() {
    this.#open();
    this.#element.scrollIntoView();
  }

  /**
   * Open this worksheet for a link, and with `bring` into view, with what is to be said about the link (null: that it is not for here).
   * Where that asks something, `answered` hears the answer: "mine", "theirs" or "look".
   */
  showLink(said, { bring, answered = null }) {
    const slot = this.panel.slot("link");
    slot.onclick = answered && ((event) => this.#answer(event, answered));
    if (said === null) slot.textContent = this.panel.words("elsewhere");
    else fill(slot, said);
    slot.hidden = said === "";
    if (bring) this.bring();
    else this.#open();
    if (!slot.hidden) slot.focus({ preventScroll: true });
  }

  /** One of the link's questions was answered: show the part that belongs to the answer. */
  #answer(event, answered) {
    const answer = event.target.closest("[data-ss-link]")?.dataset.ssLink;
    if (!answer) return;
    const slot = this.panel.slot("link");
    for (const part of slot.querySelectorAll("[data-part]")) part.hidden = part.dataset.part !== answer;
    slot.focus({ preventScroll: true });
    answered(answer);
  }

  // ---- what the reader does ---------------------------------------------------------------------------------------

  #edited() {
    this.#offerBack(null);
    this.#flow.edited(this.#reply ? this.#reply.state === "example" : !this.#isGiven());
    this.#unanswered = true;
    if (this.panel.starting) this.#showWaiting();
    else if (!this.panel.ready) this.#showNothing();
  }

  /** A box was left: its mistakes are told now, and what was worked out goes into the plan. */
  #left() {
    if (this.panel.ready) this.ask();
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

  /** What other worksheets would now work out differently takes the place of what the plan has from them. */
  #renew(button) {
    if (!button) return;
    this.panel.slot("status").focus({ preventScroll: true });
    setNumbers(JSON.parse(button.dataset.ssRenew));
  }

  /** The answer bar brings a part of the answer in view. */
  #bring(button) {
    const part = button && this.#element.querySelector(`[data-brought="${button.dataset.ssBring}"]`);
    if (!part) return;
    this.#open();
    if (part.matches("details")) part.open = true;
    part.scrollIntoView();
    (part.querySelector("summary") ?? part).focus({ preventScroll: true });
  }

  // ---- results taken along ----------------------------------------------------------------------------------------

  #pressed(target) {
    const { ssUse: key, ssCsv: name } = target.closest("button")?.dataset ?? {};
    if (key) this.#want("use", { key }, (reply) => this.#showUsed(reply));
    if (name) this.#want("csv", { table: name }, (reply) => reply.text && saveText(reply.name, reply.text));
  }

  /** Ask Python something else about the numbers in the boxes. */
  #want(ask, more, take, rank = () => 0) {
    this.panel.want({ name: `${ask} of ${this.worksheet}`, rank, request: () => this.#request(ask, more), take });
  }

  /** A result was put into the plan, or Python says what stands in its way. */
  #showUsed({ key, taken, choices, said }) {
    const slot = this.panel.slot("used");
    const before = snapshot([key]);
    fill(slot, said);
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

  /** Something from the dealer's stock is chosen: Python says what it puts into the plan. */
  #picked({ value, dataset }) {
    this.#edited();
    const { stock } = this.panel.slot("stock").dataset;
    this.#want("pick", { stock, shelf: dataset.ssShelf, item: value }, ({ entries }) => setNumbers(entries));
  }

  #clear() {
    this.panel.slot("link").hidden = true;
    this.#flow.cleared();
    const worked = Object.entries(entries()).filter(([, { by }]) => by === this.worksheet);
    const keys = [...this.#boxes.keys, ...worked.map(([key]) => key)];
    this.#offerBack(snapshot(keys));
    setNumbers(Object.fromEntries(keys.map((key) => [key, undefined])));
  }

  #putBack() {
    const previous = this.#previous;
    this.#offerBack(null);
    setNumbers(previous);
  }

  /** Offer to put these numbers back in place of clearing; null: offer to clear. */
  #offerBack(previous) {
    const [clear, back] = [this.panel.button("clear"), this.panel.button("back")];
    const shown = previous ? back : clear;
    const hidden = previous ? clear : back;
    this.#previous = previous;
    shown.hidden = false;
    if (document.activeElement === hidden) shown.focus();
    hidden.hidden = true;
  }

  #copy() {
    const copy = () => {
      const said = this.panel.slot("said");
      if (this.#reply?.link) copyLink(this.#reply.link, said, this.#element.dataset);
      else said.textContent = this.panel.words("none");
    };
    if (this.panel.ready && (this.#unanswered || !this.#reply)) {
      this.#afterwards.push(copy);
      this.ask();
    } else {
      copy();
    }
  }

  // ---- asking and showing -----------------------------------------------------------------------------------------

  /** Whether the plan holds a number that this worksheet asks. */
  #isGiven() {
    return this.#boxes.keys.some((key) => number(key));
  }

  /** Whether anything that this worksheet shows as built depends on the reader's plan. */
  #inPlan() {
    return this.#isGiven() || Object.keys(entries()).some((key) => this.#offers(key));
  }

  #offers(key) {
    return this.#element.querySelector(`[data-ss-use="${CSS.escape(key)}"]`) !== null;
  }

  #request(ask, more = {}) {
    return { ask, worksheet: this.worksheet, plan: entries(), ...more };
  }

  /** The answer to what is being typed, while the rest of it is still on its way. */
  #takeFirst(plate) {
    if (this.#element.dataset.state === "ready") holdingFocus(() => fill(this.panel.slot("plate"), plate));
  }

  #take(reply) {
    this.#sweep?.keepOnlyFor(`${reply.units} ${reply.link}`);
    this.#reply = reply;
    this.#unanswered = false;
    this.#openForOwn();
    if (reply.renamed.said) fill(this.panel.slot("used"), reply.renamed.said);
    rename(reply.renamed.entries);
    const wrong = reply.state === "wrong";
    holdingFocus(() => {
      this.#showState(wrong ? "wrong" : "ready", reply.slots.errors === "");
      for (const [name, html] of Object.entries(reply.slots)) fill(this.panel.slot(name), html);
      this.panel.slot("errors").hidden = reply.slots.errors === "";
      this.#boxes.show(reply);
      this.#enable();
      this.#file?.show();
    });
    this.#flow.take(reply);
    for (const does of this.#afterwards.splice(0)) does();
    this.#askStock();
    if (!wrong) this.#wantHow("working" in reply.slots);
    if (!wrong && this.panel.has("lines")) this.#wantLines();
    if (wrong || !this.panel.has("chart")) return;
    const numbers = `${reply.units} ${reply.link}`;
    this.panel.slot("chart").classList.toggle("ss-stale", numbers !== this.#charted);
    if (numbers === this.#charted) return;
    const take = ({ chart }) => this.#takeChart(chart, numbers);
    this.#chartTimer = setTimeout(() => this.#want("chart", {}, take, () => 2), PAUSE);
  }

  /** What the stock has for these numbers, when the reader has stopped typing. */
  #askStock() {
    const slot = this.panel.slot("stock");
    if (!slot) return;
    const take = ({ html }) => holdingFocus(() => fill(slot, html));
    this.#stockTimer = setTimeout(() => this.#want("stock", { stock: slot.dataset.stock }, take, () => 2), PAUSE);
  }

  /** Working, sources and files, which a reply leaves out while somebody types. */
  #wantHow(there) {
    const fold = this.panel.slot("working").closest("details");
    fold.classList.toggle("ss-stale", !there);
    if (there) return;
    const take = ({ slots }) => {
      for (const [name, html] of Object.entries(slots)) fill(this.panel.slot(name), html);
      fold.classList.remove("ss-stale");
    };
    this.#howTimer = setTimeout(() => this.#want("how", {}, take, () => 2), PAUSE);
  }

  /** What other worksheets say below the verdict; one of them may run a year, so it is asked for last. */
  #wantLines() {
    const slot = this.panel.slot("lines");
    slot.classList.add("ss-stale");
    clearTimeout(this.#linesTimer);
    const take = ({ html }) => {
      fill(slot, html);
      slot.classList.remove("ss-stale");
    };
    this.#linesTimer = setTimeout(() => this.#want("lines", {}, take, () => 2), PAUSE);
  }

  /** Python could not answer at all. */
  #refuse() {
    this.#afterwards = [];
    this.#enable();
    this.#showNothing();
  }

  /** No result stays in sight when it does not belong to what is in the boxes. */
  #showNothing() {
    this.#showState("nothing", true);
    this.panel.slot("plate").innerHTML = this.#element.querySelector("[data-plate]").innerHTML;
  }

  /** Until Python has read the reader's own numbers, nothing of the worked example stands in their place. */
  #showWaiting() {
    this.#showState("waiting", true);
    this.panel.slot("whose").textContent = this.panel.words("mine");
    this.panel.slot("plate").innerHTML = this.#element.querySelector("[data-plate-waiting]").innerHTML;
  }

  /** The same with the reader's own texts in the boxes, as far as they have the labels' units. */
  #showGiven() {
    this.#showWaiting();
    this.#boxes.showTyped();
  }

  get #waiting() {
    return this.#element.dataset.state === "waiting";
  }

  /** "ready", "wrong", "waiting" or "nothing"; quietly while the reader may still be typing. */
  #showState(state, quiet = false) {
    const plate = this.panel.slot("plate");
    // "No result yet" takes the height of the result in whose place it stands.
    if (state === "ready") plate.style.minHeight = "";
    else if (!plate.style.minHeight) plate.style.minHeight = `${plate.offsetHeight}px`;
    this.panel.light(state);
    this.#element.toggleAttribute("data-quiet", quiet);
    if (state === "ready") this.panel.say("ready");
    if (state === "wrong" && !quiet) this.panel.say("wrong");
  }

  async #takeChart(chart, numbers) {
    if (!chart || this.#unanswered) return;
    const figure = this.panel.slot("chart");
    try {
      await drawInto(figure, chart);
    } catch (error) {
      console.error(error); // the words and the table below it say the same
    }
    fill(this.panel.slot("chart-words"), chart.words);
    figure.classList.remove("ss-stale");
    this.#charted = numbers;
  }
}
