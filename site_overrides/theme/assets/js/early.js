// Asked for in the head of a page that calculates: Python begins to start while the page itself is still being read.
// What the worker says before the page listens is only how far it has come.

let waiting = navigator.connection?.saveData ? null : begin();

function begin() {
  return new Worker(new URL("worker.js", import.meta.url), { type: "module" });
}

/** The worker that was started early, once; after that a new one each time. */
export function takeWorker() {
  const worker = waiting ?? begin();
  waiting = null;
  return worker;
}
