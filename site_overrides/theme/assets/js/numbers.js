// What the reader has typed, on whichever page: for each key the text as typed, the units in force at that time, and who
// gave it. One key means the same quantity everywhere, so a number typed in one worksheet holds in all.
//
//   {text: "500", units: "us", from: "typed"}     typed by the reader
//   {text: "180F", units: "us", from: "link"}     came with a link; "typical": nobody gave it there either
//   {text: "", units: "us", from: "typical", before: {…}}     ticked as unknown; `before` is what stood there
import { keep } from "./keep.js";

const kept = keep("sessionStorage", "stoke-and-store.numbers");
const listeners = [];
let numbers = read();

/** Call `listener` with the keys each time some of them change. */
export function whenNumbersChange(listener) {
  listeners.push(listener);
}

/** The entry of one key, or undefined. */
export function number(key) {
  return numbers.get(key);
}

/** Set some entries ({key: entry}); undefined takes one away. */
export function setNumbers(entries) {
  for (const [key, entry] of Object.entries(entries)) {
    if (entry) numbers.set(key, entry);
    else numbers.delete(key);
  }
  kept.write(JSON.stringify(Object.fromEntries(numbers)));
  for (const listener of listeners) listener(Object.keys(entries));
}

/** The entries of these keys as they are now, for `setNumbers` to put back. */
export function snapshot(keys) {
  return Object.fromEntries(keys.map((key) => [key, numbers.get(key)]));
}

/** Read again what is kept: another page may have changed it. */
export function rereadNumbers() {
  const keys = new Set(numbers.keys());
  numbers = read();
  for (const key of numbers.keys()) keys.add(key);
  for (const listener of listeners) listener([...keys]);
}

function read() {
  try {
    const entries = Object.entries(JSON.parse(kept.read() ?? "{}"));
    return new Map(entries.filter(([, entry]) => typeof entry?.text === "string"));
  } catch {
    return new Map();
  }
}
