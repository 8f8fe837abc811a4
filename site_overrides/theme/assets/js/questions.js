// The big buttons of a worksheet that begins with questions. Each carries what it puts into the plan, made by Python; what
// was pressed or typed before this script came is taken up here.
import { entries, setNumbers, whenNumbersChange } from "./numbers.js";

const plain = (text) => text.replaceAll(" ", "");
const same = (one, other) =>
  plain(one.text) === plain(other.text) && (one.from === "typical") === (other.from === "typical");

/** Bring the questions in a form to life; `edited()` hears of each answer before it is kept. */
export function wireQuestions(form, edited) {
  const buttons = [...form.querySelectorAll("[data-ss-set]")];
  if (buttons.length === 0) return;
  const press = (button) => {
    edited();
    setNumbers(JSON.parse(button.dataset.ssSet));
  };
  // The box that a choice asks for is next; of the others Python's answer says whether they stay.
  const goOn = ({ dataset }) => {
    const field = dataset.ssAsks && form.querySelector(`[data-key="${dataset.ssAsks}"]`);
    const box = field?.querySelector("input:not([type=checkbox]), select");
    if (!box || box.value !== "") return;
    field.hidden = false;
    box.focus();
  };
  // A link tells the fuel alone, and a choice also what follows from it: nothing that is known may speak against it.
  const show = () => {
    const kept = entries();
    for (const button of buttons) {
      const puts = Object.entries(JSON.parse(button.dataset.ssSet)).filter(([key]) => kept[key]);
      const pressed = puts.length > 0 && puts.every(([key, put]) => same(kept[key], put));
      button.setAttribute("aria-pressed", String(pressed));
    }
  };
  form.addEventListener("click", ({ target }) => {
    const button = target.closest("[data-ss-set]");
    if (!button) return;
    press(button);
    goOn(button);
  });
  const point = form.querySelector("[data-ss-point]");
  point.addEventListener("input", (event) => event.stopPropagation());
  point.addEventListener("change", (event) => {
    event.stopPropagation();
    if (point.value.trim() === "") return;
    edited();
    setNumbers({ place: { text: point.value, units: "us" } });
  });
  whenNumbersChange(show);
  for (const button of globalThis.earlyPressed?.splice(0) ?? []) press(button);
  // The home page asks the first question, and its answer comes along in the address.
  const asked = location.hash.startsWith("#start-") && document.getElementById(location.hash.slice(1));
  if (asked && buttons.includes(asked)) {
    history.replaceState(history.state, "", location.pathname);
    press(asked);
    goOn(asked);
  }
  // What was typed while the scripts were on their way.
  for (const box of form.querySelectorAll("[data-blank] input:not([type=checkbox])")) {
    if (box.value !== "") box.dispatchEvent(new Event("input", { bubbles: true }));
  }
  show();
}
