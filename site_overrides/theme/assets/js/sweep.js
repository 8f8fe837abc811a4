// A worksheet's sweep: Python is asked for one more point at a time, so that what the reader types meanwhile comes first.
import { fill } from "./fill.js";

export class Sweep {
  #panel;
  #request;
  #bar;
  #numbers = "";
  #asked = 0; // points asked for; 0 while nothing is going on

  /** `request(points)` is what to ask Python for so many points. */
  constructor(panel, request) {
    this.#panel = panel;
    this.#request = request;
    this.#bar = panel.slot("sweep").parentElement.querySelector("progress");
    panel.on("sweep", () => this.#next(1));
    panel.on("halt", () => this.#halt());
  }

  /** `numbers` are those of the worksheet now: where they are other ones, what stands here belonged to the old ones. */
  keepOnlyFor(numbers) {
    if (numbers === this.#numbers) return;
    this.#numbers = numbers;
    this.#halt();
    this.#panel.slot("sweep").replaceChildren();
  }

  #next(points) {
    this.#asked = points;
    this.#show(true);
    this.#panel.want({
      name: `sweep of ${this.#panel.element.dataset.worksheet}`,
      rank: () => 3,
      request: () => this.#request(points),
      take: (reply) => this.#take(points, reply),
      refuse: () => this.#halt(),
    });
  }

  #take(points, { html, count }) {
    if (this.#asked !== points) return; // halted meanwhile
    fill(this.#panel.slot("sweep"), html);
    this.#bar.value = count ? points / count : 0;
    if (points < count) this.#next(points + 1);
    else this.#halt();
  }

  #halt() {
    const stop = this.#panel.button("halt");
    const focused = document.activeElement === stop;
    this.#asked = 0;
    this.#show(false);
    if (focused) this.#panel.button("sweep").focus();
  }

  #show(going) {
    this.#bar.hidden = !going;
    this.#panel.button("halt").hidden = !going;
    if (!going) this.#bar.value = 0;
  }
}
