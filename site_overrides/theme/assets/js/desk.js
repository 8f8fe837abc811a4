// The dealer's desk: what is typed here lives in this page alone and is gone with it. Nothing is stored.
import { entryOf, knownPlate, Panel, showField, startCalculator } from "./panel.js";

const desk = document.querySelector("[data-ss-desk]");
const panel = new Panel(desk, { ask, turned });
const slot = (name) => panel.slot(name);
const part = (name) => panel.button(name);
const numbers = new Map(); // key to {text, units}
const filled = new Map(); // shelf to the key and text pairs that it has put there
let shownForm = ""; // the worksheet whose boxes stand there
let typing = null;
let wantsCode = false;

startCalculator([panel], knownPlate(desk));
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
part("copy-message").addEventListener("click", () => copy(part("message"), "copiedMessage"));
part("copy-link").addEventListener("click", () => copy(part("link"), "copiedLink"));
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

function turned(state) {
  panel.light(state);
  if (state !== "ready") return;
  for (const control of desk.querySelectorAll("select, input")) control.disabled = false;
  part("next").disabled = false;
  ask();
}

function edited(target) {
  const { key, entry } = entryOf(target);
  typing = target.matches("select") ? null : key;
  put(key, entry);
  ask();
}

function put(key, entry) {
  if (entry.text.trim() === "") numbers.delete(key);
  else numbers.set(key, entry);
}

/** Something from the stock fills its numbers in; what it filled before goes, unless it was changed by hand. */
function pick(shelf) {
  for (const [key, text] of filled.get(shelf.id) ?? []) {
    if (numbers.get(key)?.text === text) numbers.delete(key);
  }
  const picked = shelf.selectedOptions[0].dataset;
  const fills = Object.entries(JSON.parse(picked.fills ?? "{}"));
  const stock = picked.item && { giver: "stock", item: picked.item }; // a place is where the house stands, and no stock
  for (const [key, text] of fills) put(key, { text, units: desk.dataset.units, ...stock });
  filled.set(shelf.id, fills);
  ask();
}

function ask() {
  const chosen = part("worksheet").selectedOptions[0];
  panel.wantAll({
    name: "desk",
    packages: wantsCode ? ["segno"] : [],
    request: () => ({
      ask: "desk",
      worksheet: chosen.value,
      units: units(),
      plan: Object.fromEntries(numbers),
      typing,
      address: new URL(chosen.dataset.address, location.href).href,
      name: desk.dataset.name,
      contact: desk.dataset.contact,
      stock: desk.dataset.stock,
      form: shownForm !== chosen.value,
      code: wantsCode,
    }),
    take: (reply) => take(reply, chosen.value),
  });
}

function take(reply, worksheet) {
  panel.say("ready");
  panel.light("ready");
  if (reply.form !== undefined) {
    slot("form").innerHTML = reply.form;
    shownForm = worksheet;
  }
  for (const field of slot("form").querySelectorAll("[data-key]")) {
    const shown = reply.fields[field.dataset.key];
    showField(field, shown, reply.units, field.dataset.key === typing);
    if (shown) field.querySelector(".ss-note").innerHTML = shown.note;
    if (shown?.error && field.closest("details")) field.closest("details").open = true;
  }
  slot("plate").innerHTML = reply.plate;
  slot("said").innerHTML = reply.said;
  slot("stock").innerHTML = reply.stock;
  part("message").value = reply.message || `${panel.words("none")} ${reply.wrong}`;
  part("link").value = reply.link;
  for (const name of ["copy-message", "copy-link", "code"]) part(name).disabled = !reply.link;
  slot("code").innerHTML = reply.code ?? "";
}

async function copy(box, said) {
  try {
    await navigator.clipboard.writeText(box.value);
    slot("copied").textContent = panel.words(said);
  } catch {
    box.focus();
    box.select();
    slot("copied").textContent = panel.words("refused");
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
