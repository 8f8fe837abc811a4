// Python in a worker, as the page sees it: started, asked one thing at a time, given up when it breaks or falls silent.
import { units } from "./units.js";

// The name of a dealer's site, which its links carry; the project's own site has none.
const site = document.querySelector('meta[name="stoke-and-store-site"]')?.content;

// While the worker fetches the rest of the interpreter it stands still and says nothing, for two minutes at most
// (start_python.js): so many of the page's 20 seconds of silence.
const WITHOUT_A_WORD = 7;

/**
 * One calculator for all worksheets of a page.
 *
 * `jobs` is what waits to be asked: the worksheets, each wanting its numbers or its chart. A request is made only when
 * its turn comes, so it always holds the newest text, and what is asked twice meanwhile is asked once.
 */
export class Calculator {
  state = "asleep"; // then "starting", and "ready" or "failed"; a stopped one was ready before it failed
  #worker = null;
  #timer = 0;
  #silence;
  #check;
  #rightly;
  #onChange;
  #weather;
  #jobs = new Map();
  #asked = null;
  #id = 0;
  #patience = 1; // how many times as long as usual it may be silent
  #shortly = true; // until a start by the short way failed (see start_python.js)

  /**
   * `silence()`: milliseconds without any message after which the worker is given up. `check`: a request whose answer
   * is known, and `rightly`: whether a reply is that answer. `onChange` hears of every change of `state`. `weather()`: the year of the
   * reader's own file, if one is kept.
   */
  constructor({ silence, check, rightly, onChange, weather }) {
    this.#silence = silence;
    this.#check = check;
    this.#rightly = rightly;
    this.#onChange = onChange;
    this.#weather = weather;
  }

  /** Start the worker, or start another one after a failure. */
  start() {
    if (this.state === "starting" || this.state === "ready") return;
    this.#turn("starting");
    // The head of the page may have started one already (see early.js): the first time, that one is taken.
    const { worker, heard } = globalThis.earlyWorker ?? { worker: newWorker(this.#shortly), heard: [] };
    delete globalThis.earlyWorker;
    this.#worker = worker;
    worker.onmessage = ({ data }) => this.#hear(data);
    worker.onerror = (event) => {
      event.preventDefault();
      this.#fail(event.message || "the worker did not start");
    };
    worker.onmessageerror = () => this.#fail("a message could not be read");
    worker.postMessage({ check: JSON.stringify(this.#check) });
    this.#listen();
    for (const event of heard) worker[`on${event.type}`](event);
  }

  /**
   * Ask for what `job.request()` says when its turn comes; `job.take(reply)` or `job.refuse()` follows, and before it perhaps
   * `job.first(plate)`. `job.packages` names what Python needs for it beyond the ordinary.
   */
  want(job) {
    this.#jobs.set(job.name, job);
    this.#next();
  }

  #next() {
    if (this.state !== "ready" || this.#asked || this.#jobs.size === 0) return;
    const jobs = [...this.#jobs.values()];
    const job = jobs.reduce((first, other) => (other.rank() < first.rank() ? other : first));
    this.#jobs.delete(job.name);
    this.#asked = job;
    this.#id += 1;
    const { packages } = job;
    this.#worker.postMessage({ id: this.#id, request: JSON.stringify({ units, site, ...job.request() }), packages, weather: this.#weather() });
    this.#listen();
  }

  #hear(data) {
    this.#patience = data.progress === "rest" ? WITHOUT_A_WORD : 1;
    if (this.state === "starting" || this.#asked) this.#listen();
    if (data.dead !== undefined) this.#fail(data.dead);
    else if (data.ready !== undefined) this.#begin(JSON.parse(data.ready));
    else if (data.id === this.#id && this.#asked) this.#answer(data);
  }

  #begin(reply) {
    if (!this.#rightly(reply)) {
      this.#fail("the known answer came out differently");
      return;
    }
    this.#quiet();
    this.#turn("ready");
    this.#next();
  }

  /** The answer bar comes before the rest; an answer to old text is not shown. */
  #answer(data) {
    if (data.plate === undefined) this.#settle(data);
    else if (!this.#jobs.has(this.#asked.name)) this.#asked.first?.(data.plate);
  }

  #settle(data) {
    const job = this.#asked;
    this.#asked = null;
    this.#quiet();
    if (data.failed === undefined) {
      // What was changed while this was worked out is asked again; an answer to the old text is not shown.
      if (!this.#jobs.has(job.name)) job.take(JSON.parse(data.reply));
    } else {
      console.error(data.failed);
      job.refuse();
    }
    this.#next();
  }

  #fail(why) {
    this.#quiet();
    this.#patience = 1;
    this.#worker?.terminate();
    this.#worker = null;
    if (this.state === "starting" && this.#shortly) {
      console.info(`Python starts again, the longer way: ${why}`);
      this.#shortly = false;
      this.state = "asleep";
      this.start();
      return;
    }
    console.error(`The calculator stopped: ${why}`);
    if (this.#asked && !this.#jobs.has(this.#asked.name)) this.#jobs.set(this.#asked.name, this.#asked);
    this.#asked = null;
    this.#turn("failed");
  }

  #turn(state) {
    const before = this.state;
    this.state = state;
    this.#onChange(state, before);
  }

  #listen() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#fail("nothing was heard for too long"), this.#patience * this.#silence());
  }

  #quiet() {
    clearTimeout(this.#timer);
  }
}

function newWorker(shortly) {
  return new Worker(new URL("../js/worker.js", import.meta.url), { type: "module", name: shortly ? "" : "ordinary" });
}
