// Runs in the head of a page that calculates, before anything else of it: Python begins to start while the page is still
// being read. A plain script, since a module would wait its turn behind the styles, and Python with it. What the worker
// says before the page listens is kept: it may be that it could not start.
/* global RELEASE */ // stands for the worker's bundle; written above by scripts/building.py
const ALONE = "stoke-and-store.alone"; // kept for the visit once a worker that pages share has failed one of them

if (!navigator.connection?.saveData) {
  try {
    const address = new URL("worker.js", document.currentScript.src);
    const worker = lastingWorker(address) ?? new Worker(address, { type: "module" });
    const heard = [];
    worker.onmessage = worker.onerror = (event) => heard.push(event);
    globalThis.earlyWorker = { worker, heard };
  } catch {
    // a page opened from a file, say: it may have no worker, nor the scripts below
  }
}

/**
 * A worker that the browser keeps for a while when its page is left, so that the next page finds Python as it runs: its port,
 * with what else a worker has. Null where browsers cannot, and after one has failed. Another release's is another worker.
 */
function lastingWorker(address) {
  let known = false;
  try {
    new SharedWorker("http://:", { get extendedLifetime() { known = true; } }); // no address, so nothing starts
  } catch {
    // as meant
  }
  if (!known || isAlone()) return null;
  const shared = new SharedWorker(address, { type: "module", name: RELEASE, extendedLifetime: true });
  const { port } = shared;
  shared.onerror = (event) => port.onerror(event);
  port.terminate = () => {
    port.close();
    try {
      sessionStorage.setItem(ALONE, "1");
    } catch {
      // the next page finds out by itself
    }
  };
  return port;
}

function isAlone() {
  try {
    return sessionStorage.getItem(ALONE) !== null;
  } catch {
    return false;
  }
}

// Where the reader has a plan or comes by a link, what the build wrote (a worked example, an empty plan) is not shown in its
// place until the page's own scripts have looked.
try {
  const kept = localStorage.getItem("stoke-and-store.plan");
  if ((kept && kept !== "{}") || location.hash.includes(";")) document.documentElement.dataset.waits = "";
} catch {
  // a browser that keeps nothing for this site
}

// A big button that is pressed before the page's scripts have come is pressed again when they have.
globalThis.earlyPressed = [];
addEventListener("click", ({ target }) => {
  const button = target.closest?.("[data-ss-set]");
  if (button && !button.closest("[data-live]")) globalThis.earlyPressed.push(button);
});

// The page's own scripts may be missing, damaged or refused. Then nobody else is there to say so: what has not come alive
// by then says that it could not start, and "Try again" loads the page again.
const LONGEST_WAIT = 20_000; // milliseconds

function giveUp() {
  delete document.documentElement.dataset.waits;
  for (const part of document.querySelectorAll("[data-silence]:not([data-live])")) {
    part.querySelector("[data-slot=status]").textContent = part.dataset.sayFailed;
    part.querySelector("[data-slot=status]").parentElement.dataset.state = "failed";
    part.querySelector("[data-ss-again]").onclick = beginAnew;
    part.querySelector(".ss-again").hidden = false;
  }
}

/** A script that came damaged is kept like any other, since its name stands for its content: it is fetched once more. */
async function beginAnew() {
  const scripts = performance.getEntriesByType("resource").map(({ name }) => name).filter((name) => name.endsWith(".js"));
  await Promise.allSettled(scripts.map((name) => fetch(name, { cache: "reload" })));
  location.reload();
}

setTimeout(giveUp, LONGEST_WAIT);
addEventListener("error", ({ target }) => target.matches?.("script[type=module]") && giveUp(), true);
