// The page of the sizing record: what the reader ticks and types goes to Python, and the document comes back.
import { copyLink } from "./copy.js";
import { entries, setNumbers, whenNumbersChange } from "./numbers.js";
import { knownPlate, Panel, startCalculator } from "./panel.js";
import { borrowUnits, unitsChosen, whenUnitsChange } from "./units.js";
import { keptWeather } from "./weather-file.js";

const page = document.querySelector("[data-ss-record]");
const panel = new Panel(page, { ask, turned });
const slot = (name) => panel.slot(name);
const button = (name) => panel.button(name);
const keys = page.dataset.keys.split(" ");
const ticked = {}; // worksheet to what the reader wants of it
let link = linkInAddress();
let arriving = link !== ""; // whoever opens a link reads first; what the record shows is folded
let reply = null;
let asked = ""; // the link of which the reader was told that it takes the place of typed numbers

startCalculator([panel], { ...knownPlate(page), weather: keptWeather });
whenUnitsChange(ask);
whenNumbersChange(ask);
addEventListener("hashchange", () => {
  link = linkInAddress();
  ask();
});
button("print").addEventListener("click", () => print());
button("copy").addEventListener("click", () => copyLink(reply.link, slot("copied"), page.dataset));
button("take").addEventListener("click", () => {
  const taken = reply.entries;
  const typed = Object.values(entries()).filter((entry) => !entry.from).length;
  if (typed > 0 && asked !== link) {
    asked = link;
    slot("copied").textContent = page.dataset.sayLose.replace("{count}", typed);
    return;
  }
  for (const { dataset } of slot("worksheets").querySelectorAll(":checked")) ticked[dataset.ssSheet] = true;
  leaveLink();
  setNumbers({ ...Object.fromEntries(keys.map((key) => [key, undefined])), ...taken });
  slot("copied").textContent = page.dataset.sayTaken;
});
page.querySelector("form").addEventListener("submit", (event) => event.preventDefault());
page.querySelector("form").addEventListener("input", ({ target }) => {
  if (target.dataset.ssName) name();
  if (target.dataset.ssSheet) ticked[target.dataset.ssSheet] = target.checked;
  if (target.dataset.ssSheet || target.matches("[data-ss-piping], [data-ss-appendix]")) ask();
});
button("wanted").open = link === "";
name();

function linkInAddress() {
  return location.hash.includes(";") ? location.hash : "";
}

function leaveLink() {
  link = "";
  history.replaceState(null, "", location.pathname + location.search);
}

/** Until Python has made it, no other house's record stands in the place of the reader's own. */
function turned(state) {
  panel.light(state);
  slot("paper").hidden = state === "starting" && !reply && (link !== "" || Object.keys(entries()).length > 0);
  if (state === "ready") ask();
}

function ask() {
  panel.wantAll({
    name: "record",
    packages: ["segno"],
    request: () => ({
      ask: "record",
      ...(link ? { link, chosen: unitsChosen() } : { plan: entries() }),
      date: today(),
      version: page.dataset.version,
      stock: page.dataset.stock,
      address: location.href.split("#")[0],
      ticked,
      piping: button("piping").value,
      appendix: button("appendix").checked,
    }),
    take,
  });
}

/** The reader's own day, as 2026-11-25. */
function today() {
  const now = new Date();
  const two = (count) => String(count).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function take(found) {
  reply = found;
  borrowUnits(reply.made_in);
  const empty = reply.state === "empty";
  slot("said").innerHTML = reply.said;
  slot("said").hidden = reply.said === "";
  button("take").parentElement.hidden = reply.state !== "link";
  button("copy").disabled = empty;
  panel.say(reply.state);
  panel.light("ready");
  if (empty) return; // the invented house that the build put there stands
  page.dataset.mine = "";
  slot("paper").innerHTML = reply.paper;
  const focused = document.activeElement?.dataset.ssSheet;
  slot("worksheets").innerHTML = reply.worksheets;
  if (focused) slot("worksheets").querySelector(`[data-ss-sheet="${focused}"]`)?.focus();
  name();
  if (panel.has("quote")) askQuote();
  if (arriving && reply.state === "link" && scrollY === 0) page.scrollIntoView();
  arriving = false;
}

/** A dealer's edition with prices shows its quote for the numbers of the record. */
function askQuote() {
  const place = slot("quote");
  panel.want({
    name: "quote",
    rank: () => 2,
    request: () => ({ ask: "quote", stock: place.dataset.stock, plan: reply.entries, date: today() }),
    take: ({ html }) => {
      place.innerHTML = html;
      place.hidden = false;
    },
  });
}

/** The job's name and who prepared it: from their boxes straight into the paper, and nowhere else. */
function name() {
  for (const box of page.querySelectorAll("[data-ss-name]")) {
    const place = slot("paper").querySelector(`[data-ss-${box.dataset.ssName}]`);
    if (box.value.trim() || "mine" in page.dataset) place.textContent = box.value.trim();
  }
  const job = page.querySelector('[data-ss-name="job"]').value.trim();
  slot("paper").querySelector("[data-ss-job-head]").textContent = job ? `: ${job}` : "";
}
