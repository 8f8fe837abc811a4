// The page of the sizing record: what the reader ticks and types goes to Python, and the document comes back.
import { copyLink } from "./copy.js";
import { rereadNumbers, setNumbers, snapshot, whenNumbersChange } from "./numbers.js";
import { ownCalculator } from "./own-calculator.js";
import { whenUnitsChange } from "./units.js";

const page = document.querySelector("[data-ss-record]");
const slot = (name) => page.querySelector(`[data-slot="${name}"]`);
const button = (name) => page.querySelector(`[data-ss-${name}]`);
const keys = page.dataset.keys.split(" ");
const ticked = {}; // worksheet to what the reader wants of it
let link = linkInAddress();
let reply = null;

const calculator = ownCalculator(page, (state, before) => {
  if (state === "starting") say("starting");
  if (state === "failed") say(before === "ready" ? "stopped" : "failed");
  button("again").parentElement.hidden = state !== "failed";
  if (state === "ready") ask();
});

whenUnitsChange(ask);
whenNumbersChange(ask);
addEventListener("pageshow", (event) => event.persisted && rereadNumbers());
addEventListener("hashchange", () => {
  link = linkInAddress();
  ask();
});
button("again").addEventListener("click", () => calculator.start());
button("print").addEventListener("click", () => print());
button("copy").addEventListener("click", () => copyLink(reply.link, slot("copied"), page.dataset));
button("take").addEventListener("click", () => {
  const entries = reply.entries;
  leaveLink();
  setNumbers({ ...Object.fromEntries(keys.map((key) => [key, undefined])), ...entries });
  slot("copied").textContent = page.dataset.sayTaken;
});
page.querySelector("form").addEventListener("submit", (event) => event.preventDefault());
page.querySelector("form").addEventListener("input", ({ target }) => {
  if (target.dataset.ssName) name();
  if (target.dataset.ssSheet) ticked[target.dataset.ssSheet] = target.checked;
  if (target.dataset.ssSheet || target.matches("[data-ss-piping]")) ask();
});
name();

function linkInAddress() {
  return location.hash.includes(";") ? location.hash : "";
}

function leaveLink() {
  link = "";
  history.replaceState(null, "", location.pathname + location.search);
}

function ask() {
  page.dataset.busy = "";
  calculator.want({
    name: "record",
    packages: ["segno"],
    rank: () => 0,
    request: () => ({
      record: {
        ...(link ? { link } : { entries: numbers() }),
        date: today(),
        version: page.dataset.version,
        address: location.href.split("#")[0],
        ticked,
        piping: button("piping").value,
      },
    }),
    take,
    refuse: () => {
      delete page.dataset.busy;
      say("stopped");
    },
  });
}

/** What the plan holds, as typed. */
function numbers() {
  return Object.fromEntries(Object.entries(snapshot(keys)).filter(([, entry]) => entry));
}

/** The reader's own day, as 2026-11-25. */
function today() {
  const now = new Date();
  const two = (count) => String(count).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function take(found) {
  delete page.dataset.busy;
  reply = found;
  slot("said").innerHTML = reply.said;
  slot("said").hidden = reply.said === "";
  button("take").parentElement.hidden = !link || reply.empty;
  button("copy").disabled = reply.empty;
  say(reply.empty ? "empty" : link ? "link" : "ready");
  if (reply.empty) return; // the invented house that the build put there stands
  page.dataset.mine = "";
  slot("paper").innerHTML = reply.paper;
  const focused = document.activeElement?.dataset.ssSheet;
  slot("worksheets").innerHTML = reply.worksheets;
  if (focused) slot("worksheets").querySelector(`[data-ss-sheet="${focused}"]`)?.focus();
  name();
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

function say(what) {
  const words = page.dataset[`say${what[0].toUpperCase()}${what.slice(1)}`];
  if (slot("status").textContent !== words) slot("status").textContent = words;
  slot("status").parentElement.dataset.state = ["failed", "stopped", "starting"].includes(what) ? what : "ready"; // its lamp
}
