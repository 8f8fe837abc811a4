// The worker in which Python runs, for one page or for all that are open (see early.js), under the name "ordinary" if only
// the ordinary way of starting is left. From a page: {check: request} once, then {id, request, packages, weather}; a
// request is JSON text, `packages` are those that only it needs: they are fetched when they are first asked for, and
// `weather` is the year of the reader's own file, if one is kept.
// To a page: {progress} while parts arrive, {ready: reply to the check}, {id, plate}, {id, reply}, {id, failed}, {dead}.
import { startPython } from "../python/start.js";

const BEAT = 1000; // milliseconds between two signs of life while parts arrive
let lastBeat = 0;
const pages = []; // that listen, each itself or by its port; one that was left hears nothing
let weather = ""; // the year of the reader's own file, as Python has it

// A slow line is no reason to give up as long as something arrives, so what comes in is watched. (Not so the interpreter,
// which start_python.js brings.)
const plainFetch = self.fetch;
self.fetch = async (...asked) => {
  const response = await plainFetch(...asked);
  if (!response.body || response.headers.get("Content-Type") === "application/wasm") return response;
  const watch = new TransformStream({
    transform(chunk, controller) {
      beat();
      controller.enqueue(chunk);
    },
  });
  return new Response(response.body.pipeThrough(watch), response);
};

self.onunhandledrejection = (event) => die(event.reason);

const python = startPython({
  onProgress: (what) => tellAll({ progress: what }),
  shortly: self.name !== "ordinary",
});

if ("onconnect" in self) {
  self.onconnect = ({ ports: [page] }) => serve(page);
  self.onerror = (message) => die(message); // which else no page would hear
} else {
  serve(self);
}

function serve(page) {
  pages.push(page);
  page.onmessage = ({ data }) => hear(data, page);
}

async function hear(data, page) {
  try {
    const pyodide = await python;
    const render = pyodide.pyimport("render");
    if ((data.weather ?? "") !== weather) {
      weather = data.weather ?? "";
      render.bring("weather/file.txt", weather);
    }
    if (data.check) {
      page.postMessage({ ready: await reply(render, data.check) });
      return;
    }
    try {
      await fetchPackages(pyodide, data.packages);
      const first = (plate) => page.postMessage({ id: data.id, plate });
      page.postMessage({ id: data.id, reply: await reply(render, data.request, first) });
    } catch (error) {
      // An exception in Python, or a file that does not come, spoils one reply; else Python itself is gone.
      if (!(error instanceof pyodide.ffi.PythonError || error instanceof Missing)) throw error;
      page.postMessage({ id: data.id, failed: error.message });
    }
  } catch (error) {
    die(error);
  }
}

class Missing extends Error {}

/** Python's reply. A file of the site that it lacks, such as the weather of a place, is fetched and it is asked again. */
async function reply(render, request, first) {
  for (let turns = 0; ; turns += 1) {
    const answer = render.respond(request, first);
    if (!answer.startsWith('{"lacks"') || turns > 3) return answer;
    const { lacks } = JSON.parse(answer);
    render.bring(lacks, await fetchText(lacks));
  }
}

async function fetchText(address) {
  try {
    const response = await fetch(new URL(`../${address}`, import.meta.url));
    if (response.ok) return await response.text();
  } catch (error) {
    console.error(error);
  }
  throw new Missing(`${address} did not arrive`);
}

/** Without one of them Python still answers: it leaves out what the package would have made. */
async function fetchPackages(pyodide, packages = []) {
  const missing = packages.filter((name) => !(name in pyodide.loadedPackages));
  if (missing.length === 0) return;
  try {
    await pyodide.loadPackage(missing, { messageCallback: beat, errorCallback: console.error });
  } catch (error) {
    console.error(error);
  }
}

function beat() {
  const now = Date.now();
  if (now - lastBeat < BEAT) return;
  lastBeat = now;
  tellAll({ progress: "bytes" });
}

/** What pages share must not outlive its Python: the next page would find it dead. */
function die(error) {
  tellAll({ dead: String(error?.message ?? error) });
  self.close();
}

function tellAll(message) {
  for (const page of pages) page.postMessage(message);
}
