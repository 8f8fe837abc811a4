// Keeps the site for readers without a line. Published as sw.js, below lines that name the release and the digest of every
// file of it (see scripts/offline.py, which writes them).
//
// A release is kept whole or not at all: while it is installed each file is held against its digest, and one that is of
// another release, or that the host has changed, ends the installation. What is kept is answered from there alone, so no
// page ever gets parts of two releases. A later release waits until no page of this one is open, or until the only one that
// is open asks for it.
/* global RELEASE, FILES */

const SCOPE = registration.scope;
const PREFIX = `stoke-and-store ${SCOPE} `; // other sites may stand beside this one at the same host
const KEPT = PREFIX + RELEASE;
const AT_ONCE = 6; // files asked for side by side

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(forgetOthers()));
self.addEventListener("fetch", (event) => {
  const name = nameOf(event.request);
  if (name !== null) event.respondWith(answer(event.request, name));
});
self.addEventListener("message", (event) => {
  if (event.data === "take over") event.waitUntil(takeOver(event));
});

// ---- keeping ------------------------------------------------------------------------------------------------------

async function keepAll() {
  const cache = await caches.open(KEPT);
  // The shortest names are pages: a host that writes into pages is noticed with the first of them.
  const names = Object.keys(FILES).sort((name, other) => name.length - other.length);
  try {
    await keep(cache, names.shift());
    await Promise.all(Array.from({ length: AT_ONCE }, async () => {
      while (names.length > 0) await keep(cache, names.shift());
    }));
  } catch (error) {
    names.length = 0;
    await caches.delete(KEPT);
    throw error;
  }
}

async function keep(cache, name) {
  const address = addressOf(name);
  let response = await fetch(address);
  let body = await response.arrayBuffer();
  if (await digest(body) !== FILES[name]) {
    response = await fetch(address, { cache: "reload" }); // the browser's own copy may be an old one
    body = await response.arrayBuffer();
    if (await digest(body) !== FILES[name]) throw new Error(`${name} is not of this release`);
  }
  const headers = new Headers(response.headers);
  headers.delete("Content-Encoding"); // the body is plain by now
  headers.delete("Content-Length");
  // Made anew, it has no address of its own, and takes that of the question: a script's query stays its query.
  await cache.put(addressOf(name), new Response(body, { headers }));
}

async function digest(body) {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return btoa(String.fromCharCode(...bytes.subarray(0, 12)));
}

async function forgetOthers() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== KEPT).map((name) => caches.delete(name)));
}

/** Only where one page is open, or none: it loads itself again, and no other is left with a release that is gone. */
async function takeOver(event) {
  const pages = await clients.matchAll({ type: "window", includeUncontrolled: true });
  const ours = pages.filter((page) => page.url.startsWith(SCOPE));
  if (ours.length > 1) event.source.postMessage({ release: RELEASE, others: ours.length - 1 });
  else await skipWaiting();
}

// ---- answering ----------------------------------------------------------------------------------------------------

/** The name of the file that a request asks for, or null if it is none of this release. */
function nameOf({ method, url }) {
  const address = new URL(url);
  const place = address.origin + address.pathname;
  if (method !== "GET" || !place.startsWith(SCOPE)) return null;
  const name = decoded(place.slice(SCOPE.length)).replace(/(^|\/)$/, "$1index.html");
  if (Object.hasOwn(FILES, name)) return name;
  return Object.hasOwn(FILES, `${name}/index.html`) ? `${name}/` : null;
}

function decoded(path) {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

async function answer(request, name) {
  if (name.endsWith("/")) return Response.redirect(SCOPE + name + new URL(request.url).search);
  // Names there carry a digest of their content. A browser keeps the compiled form of what it fetched itself, which halves
  // a later start.
  if (name.startsWith("assets/python/")) {
    try {
      const response = await fetch(request);
      if (response.ok) return response;
    } catch {
      // no line
    }
  }
  const response = await caches.match(addressOf(name), { cacheName: KEPT });
  if (response) return response;
  // What was kept is gone, and with it all reason to stand between the page and its host.
  await registration.unregister();
  return fetch(request);
}

/** Where a file is asked for: many hosts send on who asks for an index by its name. */
function addressOf(name) {
  return SCOPE + name.replace(/(^|\/)index\.html$/, "$1");
}
