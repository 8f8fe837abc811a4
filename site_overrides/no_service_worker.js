// Published as sw.js by `scripts/build --no-offline`: takes the place of one that is installed, forgets all that it kept, and
// goes. The next page that is opened comes from the host.
const PREFIX = `stoke-and-store ${registration.scope} `;

self.addEventListener("install", () => skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(leave()));

async function leave() {
  for (const name of await caches.keys()) if (name.startsWith(PREFIX)) await caches.delete(name);
  await registration.unregister();
}
