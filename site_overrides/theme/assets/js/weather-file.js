// The reader's own weather: a file that Python makes a year of, kept in this browser and nowhere else.
import { stored } from "./browser-storage.js";
import { fill } from "./fill.js";

const kept = stored("localStorage", "stoke-and-store.weather");

/** The year of the file that was opened last, or null. */
export function keptWeather() {
  return kept.read() || null;
}

/** Where a field asks for a file: shown while its choice says so. */
export class WeatherFile {
  #element;
  #select;
  #panel;
  #reading;
  #taken;

  /** `reading()` hears that a file is being read, `taken()` that this is over: another one may be kept now. */
  constructor(element, panel, { reading, taken }) {
    this.#element = element;
    this.#select = document.getElementById(element.dataset.for);
    this.#panel = panel;
    this.#reading = reading;
    this.#taken = taken;
    // What is chosen here is no number of the worksheet's form.
    for (const kind of ["input", "change"]) element.addEventListener(kind, (event) => event.stopPropagation());
    element.addEventListener("change", () => this.#open());
    this.show();
  }

  /** The form stands as it is now. */
  show() {
    this.#element.hidden = this.#select.value !== this.#element.dataset.ssWeather;
  }

  async #open() {
    const { most, sayLarge, sayReading, sayFailed } = this.#element.dataset;
    const [file] = this.#element.querySelector("input").files;
    if (!file) return;
    if (file.size > most) {
      this.#say(sayLarge);
      return;
    }
    const fail = () => {
      this.#say(sayFailed);
      this.#taken();
    };
    this.#say(sayReading);
    this.#reading();
    try {
      const text = await file.text();
      const degrees = this.#element.querySelector("select").value;
      this.#panel.want({
        name: "weather file",
        request: () => ({ ask: "weather", text, degrees }),
        take: (reply) => this.#take(reply),
        refuse: fail,
      });
    } catch (error) {
      console.error(error);
      fail();
    }
  }

  #take({ year, said }) {
    fill(this.#panel.slot("weather"), said);
    kept.write(year);
    this.#taken();
  }

  #say(words) {
    this.#panel.slot("weather").textContent = words;
  }
}
