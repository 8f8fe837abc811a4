// The site kept for a reader without a line: see service_worker.js, which keeps it. A page asks for that once its calculator
// is ready, since nothing is gained by slowing down a start. Where a later release waits, the page says so, and what is in
// sight stays of one release until the reader asks for the other.
import { entries, keeping } from "./numbers.js";

const SCRIPT = new URL("../../sw.js", import.meta.url);
const QUIET = 3000; // milliseconds after the calculator is ready
const here = "serviceWorker" in navigator && isSecureContext && location.protocol.startsWith("http") &&
  !document.body.classList.contains("ss-embed");
let asked = false;

/** Have the site kept. */
export function keepForOffline() {
  if (!here || asked || navigator.connection?.saveData) return;
  asked = true;
  setTimeout(() => {
    // A browser that refuses, or a host without the script, goes on without.
    navigator.serviceWorker.register(SCRIPT).then(watch, () => {});
  }, QUIET);
}

/** Tell the reader when another release of the site is ready. */
export async function watchForRelease() {
  if (!here) return;
  try {
    watch(await navigator.serviceWorker.getRegistration(new URL(".", SCRIPT)));
  } catch {
    // refused
  }
}

const watched = new Set();

function watch(registration) {
  if (!registration || watched.has(registration)) return;
  watched.add(registration);
  offer(registration);
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", () => offer(registration));
  });
}

/** A first release has nobody before it, and needs no word. */
function offer(registration) {
  const notice = document.querySelector("[data-ss-release]");
  if (!notice || !registration.waiting || !navigator.serviceWorker.controller) return;
  const words = notice.querySelector("span");
  const unsaved = () => keeping() !== "kept" && Object.keys(entries()).length > 0;
  let warned = false;
  words.textContent = notice.dataset.sayReady;
  notice.hidden = false;
  navigator.serviceWorker.onmessage = () => {
    words.textContent = notice.dataset.sayOthers;
  };
  navigator.serviceWorker.startMessages();
  notice.querySelector("button").onclick = () => {
    if (unsaved() && !warned) {
      warned = true;
      words.textContent = notice.dataset.sayUnsaved;
      return;
    }
    navigator.serviceWorker.oncontrollerchange = () => location.reload();
    if (registration.waiting) registration.waiting.postMessage("take over");
    else location.reload(); // it has taken over meanwhile
  };
}
