// Which units the reader wants, on every page of the site, from visit to visit.
import { stored } from "./browser-storage.js";

const kept = stored("localStorage", "stoke-and-store.units");
const listeners = [];

/** The units in which the page was made, those of the site's own dealer: "us" or "si". */
export const builtUnits = document.querySelector('meta[name="stoke-and-store-units"]')?.content === "si" ? "si" : "us";

/** The units in force: those, until the reader has switched. */
export let units = unitsChosen() ? kept.read() : builtUnits;

/** Whether the reader chose them, here or at an earlier visit. */
export function unitsChosen() {
  return ["us", "si"].includes(kept.read());
}

/** Show the units in which a link was made, unless the reader chose some; nothing of it is kept. */
export function borrowUnits(made) {
  if (made && made !== units && !unitsChosen()) turn(made);
}

/** Call `listener` each time they change. */
export function whenUnitsChange(listener) {
  listeners.push(listener);
}

/** Bring the switch in the header to life. */
export function wireUnits() {
  show();
  document.addEventListener("click", (event) => {
    const button = event.target.closest("[data-ss-units]");
    if (!button) return;
    kept.write(button.dataset.ssUnits);
    if (button.dataset.ssUnits !== units) turn(button.dataset.ssUnits);
  });
}

function turn(wanted) {
  units = wanted;
  show();
  for (const listener of listeners) listener();
}

function show() {
  document.documentElement.dataset.units = units;
  for (const button of document.querySelectorAll("[data-ss-units]")) {
    button.setAttribute("aria-pressed", String(button.dataset.ssUnits === units));
  }
}
