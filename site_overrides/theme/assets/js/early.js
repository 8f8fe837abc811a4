// Asked for in the head of a page that calculates: Python begins to start while the page itself is still being read.
// What the worker says before the page listens is kept: it may be that it could not start.

let waiting = navigator.connection?.saveData ? null : begin();

function begin() {
  const worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
  const heard = [];
  worker.onmessage = (event) => heard.push(event);
  worker.onerror = (event) => heard.push(event);
  return { worker, heard };
}

/** The worker that was started early, once, and after that a new one each time; with the events that it has sent so far. */
export function takeWorker() {
  const taken = waiting ?? begin();
  waiting = null;
  return taken;
}
