// Runs in the head of a page that calculates, before anything else of it: Python begins to start while the page is still
// being read. A plain script, since a module would wait its turn behind the styles, and Python with it. What the worker
// says before the page listens is kept: it may be that it could not start.
if (!navigator.connection?.saveData) {
  const worker = new Worker(new URL("worker.js", document.currentScript.src), { type: "module" });
  const heard = [];
  worker.onmessage = worker.onerror = (event) => heard.push(event);
  globalThis.earlyWorker = { worker, heard };
}
