// Asked for in the head of a page that calculates: Python begins to start while the page itself is still being read.
// What the worker says before the page listens is kept: it may be that it could not start.

// A page without it in its head imports this module all the same, and starts Python only if it turns out to need it.
const early = [...document.scripts].some((script) => script.src === import.meta.url);
let waiting = early && !navigator.connection?.saveData ? begin() : null;

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
