// The dealer's desk: what is typed here lives in this page alone and is gone with it. Nothing is stored.
import { ownCalculator } from "./own-calculator.js";

const desk = document.querySelector("[data-ss-desk]");
const slot = (name) => desk.querySelector(`[data-slot="${name}"]`);
const part = (name) => desk.querySelector(`[data-ss-${name}]`);
const numbers = new Map(); // key to {text, units}
const filled = new Map(); // shelf to the key and text pairs that it has put there
let shownForm = ""; // the worksheet whose boxes stand there
let typing = null;
let wantsCode = false;
let reply = null;

const calculator = ownCalculator(desk, (state, before) => {
  if (state === "starting") say("starting");
  if (state === "failed") say(before === "ready" ? "stopped" : "failed");
  part("again").parentElement.hidden = state !== "failed";
  if (state !== "ready") return;
  say("ready");
  for (const control of desk.querySelectorAll("select, input")) control.disabled = false;
  part("next").disabled = false;
  ask();
});

part("again").addEventListener("click", () => calculator.start());
part("worksheet").addEventListener("change", ask);
for (const radio of radios()) radio.addEventListener("change", ask);
for (const shelf of desk.querySelectorAll("[data-ss-shelf]")) shelf.addEventListener("change", () => pick(shelf));
slot("form").addEventListener("submit", (event) => event.preventDefault());
slot("form").addEventListener("input", ({ target }) => edited(target));
slot("form").addEventListener("focusout", () => {
  if (typing === null) return;
  typing = null;
  ask();
});
part("copy-message").addEventListener("click", () => copy(part("message"), "sayCopiedMessage"));
part("copy-link").addEventListener("click", () => copy(part("link"), "sayCopiedLink"));
part("code").addEventListener("click", () => {
  wantsCode = true;
  ask();
});
part("next").addEventListener("click", clear);

function radios() {
  return [...desk.querySelectorAll('[name="desk-units"]')];
}

function units() {
  return radios().find((radio) => radio.checked).value;
}

function edited(target) {
  const { key } = target.closest("[data-key]").dataset;
  typing = target.matches("select") ? null : key;
  put(key, target.value, units());
  ask();
}

function put(key, text, system) {
  if (text.trim() === "") numbers.delete(key);
  else numbers.set(key, { text, units: system });
}

/** Something from the stock fills its numbers in; what it filled before goes, unless it was changed by hand. */
function pick(shelf) {
  for (const [key, text] of filled.get(shelf.id) ?? []) {
    if (numbers.get(key)?.text === text) numbers.delete(key);
  }
  const fills = Object.entries(JSON.parse(shelf.selectedOptions[0].dataset.fills ?? "{}"));
  for (const [key, text] of fills) put(key, text, desk.dataset.units);
  filled.set(shelf.id, fills);
  ask();
}

function ask() {
  desk.dataset.busy = "";
  const chosen = part("worksheet").selectedOptions[0];
  calculator.want({
    name: "desk",
    packages: wantsCode ? ["segno"] : [],
    rank: () => 0,
    request: () => ({
      desk: {
        worksheet: chosen.value,
        units: units(),
        fields: Object.fromEntries(numbers),
        typing,
        address: new URL(chosen.dataset.address, location.href).href,
        name: desk.dataset.name,
        contact: desk.dataset.contact,
        form: shownForm !== chosen.value,
        code: wantsCode,
      },
    }),
    take: (found) => take(found, chosen.value),
    refuse: () => {
      delete desk.dataset.busy;
      say("stopped");
    },
  });
}

function take(found, worksheet) {
  delete desk.dataset.busy;
  reply = found;
  if (reply.form !== undefined) {
    slot("form").innerHTML = reply.form;
    shownForm = worksheet;
  }
  for (const box of slot("form").querySelectorAll("[data-key]")) showField(box, reply.fields[box.dataset.key]);
  slot("plate").innerHTML = reply.known || !reply.link ? reply.plate : "";
  slot("said").innerHTML = reply.said;
  part("message").value = reply.messages[units()] ?? desk.dataset.sayNone;
  part("link").value = reply.link;
  for (const name of ["copy-message", "copy-link", "code"]) part(name).disabled = !reply.link;
  slot("code").innerHTML = reply.code ?? "";
}

function showField(box, shown) {
  box.hidden = !shown;
  if (!shown) return;
  const control = box.querySelector("input, select");
  if (control.value !== shown.value && box.dataset.key !== typing) control.value = shown.value;
  const error = box.querySelector(".ss-error");
  if (error.textContent !== shown.error) error.textContent = shown.error;
  error.hidden = !shown.error;
  if (shown.error) control.setAttribute("aria-invalid", "true");
  else control.removeAttribute("aria-invalid");
  const unit = box.querySelector(".ss-unit");
  if (unit) unit.textContent = shown.unit;
  box.querySelector(".ss-note").innerHTML = shown.note;
}

async function copy(box, said) {
  try {
    await navigator.clipboard.writeText(box.value);
    slot("copied").textContent = desk.dataset[said];
  } catch {
    box.focus();
    box.select();
    slot("copied").textContent = desk.dataset.sayRefused;
  }
}

/** The desk as it was before anybody came. */
function clear() {
  numbers.clear();
  filled.clear();
  typing = null;
  wantsCode = false;
  for (const shelf of desk.querySelectorAll("[data-ss-shelf]")) shelf.value = "";
  slot("copied").textContent = "";
  ask();
}

function say(what) {
  const words = desk.dataset[`say${what[0].toUpperCase()}${what.slice(1)}`];
  if (slot("status").textContent !== words) slot("status").textContent = words;
  desk.dataset.state = what; // its lamp
}
