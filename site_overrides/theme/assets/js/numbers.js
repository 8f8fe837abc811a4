// The reader's plan: what was typed, on whichever page, kept in this browser. For each key the text as typed, the units
// then in force, and the unit that stood beside it, in which a bare number is meant for ever. One key means the same quantity everywhere, so a number typed in one worksheet holds in
// all, and in every open page of the site.
//
//   {text: "500", units: "us", unit: "gal"}     typed by the reader
//   {text: "30485 Btu/h", units: "us", from: "computed", by: "house-load"}     given by Python, to be kept as it is
//   {…, giver: "measured"}     where a number came from, if somebody told: one of Python's GIVERS
//   {text: "", units: "us", from: "typical", before: {…}}     the same, for "I do not know"; `before` is what stood there
//
// A link's numbers may be borrowed: they then stand in this page in place of the reader's own, and nothing is kept.
import { stored } from "./browser-storage.js";

const NAME = "stoke-and-store.plan";
const kept = stored("localStorage", NAME);
const listeners = [];
let numbers = read();
let borrowed = new Map(); // key -> entry, or null where the link has none

/** Call `listener` with the keys each time some of them change. */
export function whenNumbersChange(listener) {
  listeners.push(listener);
}

/** The entry of one key, or undefined. */
export function number(key) {
  return borrowed.has(key) ? (borrowed.get(key) ?? undefined) : numbers.get(key);
}

/** Every entry as this page shows it: {key: entry}. */
export function entries() {
  const shown = Object.fromEntries(numbers);
  for (const [key, entry] of borrowed) {
    if (entry) shown[key] = entry;
    else delete shown[key];
  }
  return shown;
}

/** The reader's own entries, whatever is borrowed. */
export function ownEntries() {
  return Object.fromEntries(numbers);
}

/** Set some entries ({key: entry}); undefined takes one away. What is borrowed stays so. */
export function setNumbers(changes) {
  if (kept.state() === "kept") numbers = read(); // another page may have changed others
  let own = false;
  for (const [key, entry] of Object.entries(changes)) {
    if (borrowed.has(key)) {
      borrowed.set(key, entry ?? null);
      continue;
    }
    own = true;
    if (isEntry(entry)) numbers.set(key, entry);
    else numbers.delete(key);
  }
  if (own) kept.write(JSON.stringify(Object.fromEntries(numbers)));
  tell(Object.keys(changes));
}

/** The entries of these keys as they are now, for `setNumbers` to put back. */
export function snapshot(keys) {
  return Object.fromEntries(keys.map((key) => [key, number(key)]));
}

/** Show these entries ({key: entry or null}) in place of the reader's own, in this page and without keeping them. */
export function borrow(entries) {
  const keys = [...borrowed.keys(), ...Object.keys(entries)];
  borrowed = new Map(Object.entries(entries));
  document.documentElement.toggleAttribute("data-borrowed", borrowed.size > 0);
  tell(keys);
}

/** Whether this page shows a link's numbers in place of the reader's own. */
export function isBorrowed() {
  return borrowed.size > 0;
}

/** Show the reader's own entries again. */
export function giveBack() {
  borrow({});
}

/** "kept", or why the browser does not keep the plan: "refused" or "full". */
export function keeping() {
  return kept.state();
}

/** Keep what Python has renamed ({key: entry, or null for a key that is gone}); what is borrowed is not kept. */
export function rename(changes) {
  const there = Object.entries(changes);
  if (there.length > 0 && !isBorrowed()) setNumbers(Object.fromEntries(there.map(([key, entry]) => [key, entry ?? undefined])));
}

/** Read again what is kept: another page may have changed it. */
function reread() {
  const keys = new Set(numbers.keys());
  numbers = read();
  for (const key of numbers.keys()) keys.add(key);
  tell([...keys]);
}

addEventListener("storage", (event) => {
  if (event.key === NAME || event.key === null) reread();
});
addEventListener("pageshow", (event) => {
  if (event.persisted) reread(); // the page was set aside whole, and has heard of nothing since
});

function tell(keys) {
  for (const listener of listeners) listener(keys);
}

function read() {
  try {
    const found = Object.entries(JSON.parse(kept.read() ?? "{}"));
    return new Map(found.filter(([, entry]) => isEntry(entry)));
  } catch {
    return new Map();
  }
}

function isEntry(entry) {
  return typeof entry?.text === "string";
}
