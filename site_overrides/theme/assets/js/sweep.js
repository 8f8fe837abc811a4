// A worksheet's sweeps: Python is asked for one more point at a time, so that what the reader types meanwhile comes first.
import { fill } from "./fill.js";

export class Sweep {
  #panel;
  #request;
  #bar;
  #numbers = "";
  #pressed = null; // the button of the sweep that is shown
  #asked = 0; // points asked for; 0 while nothing is going on
  #count = 0; // of all points
  #ranges = {}; // the reader's own, as typed

  /** `request(more)` is what to ask Python for so many points of one of the sweeps. */
  constructor(panel, request) {
    this.#panel = panel;
    this.#request = request;
    this.#bar = panel.slot("sweep").parentElement.querySelector("progress");
    panel.slot("sweeps").addEventListener("click", ({ target }) => this.#start(target.closest("[data-ss-sweep]")));
    panel.slot("sweep").addEventListener("change", ({ target }) => this.#ranged(target.closest("[data-ss-range]")));
    panel.on("halt", () => this.#halt());
  }

  /** `numbers` are those of the worksheet now: where they are other ones, what stands here belonged to the old ones. */
  keepOnlyFor(numbers) {
    if (numbers === this.#numbers) return;
    this.#numbers = numbers;
    this.#ranges = {};
    this.#halt();
    this.#panel.slot("sweep").replaceChildren();
  }

  #start(button) {
    if (!button) return;
    this.#pressed = button;
    this.#count = 0;
    this.#next(1);
  }

  /** The reader gave a range of their own: what stands is worked out again with it. */
  #ranged(row) {
    if (!row) return;
    this.#ranges[row.dataset.ssRange] = [...row.querySelectorAll("input")].map((box) => box.value);
    this.#next(Math.max(this.#asked, this.#count, 1));
  }

  #next(points) {
    this.#asked = points;
    this.#show(true);
    this.#panel.want({
      name: `sweep of ${this.#panel.element.dataset.worksheet}`,
      rank: () => 3,
      request: () => this.#request({ sweep: this.#pressed.dataset.ssSweep, points, ranges: this.#ranges }),
      take: (reply) => this.#take(points, reply),
      refuse: () => this.#halt(),
    });
  }

  #take(points, { html, count }) {
    if (this.#asked !== points) return; // halted meanwhile
    fill(this.#panel.slot("sweep"), html);
    this.#bar.value = count ? points / count : 0;
    if (points < count) {
      this.#next(points + 1);
    } else {
      this.#count = count;
      this.#halt();
    }
  }

  #halt() {
    const stop = this.#panel.button("halt");
    const focused = document.activeElement === stop;
    this.#asked = 0;
    this.#show(false);
    if (focused) document.getElementById(this.#pressed.id)?.focus();
  }

  #show(going) {
    this.#bar.hidden = !going;
    this.#panel.button("halt").hidden = !going;
    if (!going) this.#bar.value = 0;
  }
}
