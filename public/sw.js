// Keeps one whole version of the app on the phone. The build writes VERSION and FILES (path: digest) above this line.
//
// - A version is installed whole or not at all: every file is checked against its digest.
// - Everything is answered from that version; the network is asked only for what is not part of it.
// - A new version waits until the page says that now is a safe moment.

// Other apps may share this origin, and other copies of this one: only our own caches are ours to delete.
const OURS = `panward ${self.registration.scope} `;
const CACHE = OURS + VERSION;

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => event.data === "take over" && self.skipWaiting());
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(self.registration.scope)) return;
  event.respondWith(answer(request));
});

async function install() {
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(Object.entries(FILES).map(([path, digest]) => store(cache, path, digest)));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function store(cache, path, digest) {
  const response = await fetch(path, { cache: "no-cache", integrity: digest });
  // A redirected answer cannot serve a navigation later.
  if (!response.ok || response.redirected) throw new Error(`${path}: ${response.status}`);
  await cache.put(path, response);
}

async function activate() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept =
    request.mode === "navigate" ? await cache.match("./") : await cache.match(request, { ignoreSearch: true });
  return kept ?? fetch(request);
}
