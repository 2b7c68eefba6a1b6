// Keeps the page for use without a network: all of its files, fetched once after the first visit. A new
// version waits until the user asks for it, so nothing changes under the hand.
declare const self: ServiceWorkerGlobalScope;

/** Written in front of this file by the build: every file of the page, by its address from here. */
declare const BUILD: { readonly version: string; readonly files: readonly string[] };

const PREFIX = "half-order ";
const CACHE = PREFIX + BUILD.version;
const PAGE = new URL("./", self.location.href).href;
const FILES = new Set(BUILD.files.map((file) => new URL(file, PAGE).href));

self.addEventListener("install", (event) => {
  event.waitUntil(fetchAll());
});

self.addEventListener("activate", (event) => {
  event.waitUntil(removeOld().then(() => self.clients.claim()));
});

self.addEventListener("message", ({ data }) => {
  if (data === "take-over") void self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { method, mode, url } = event.request;
  const [address = ""] = url.split(/[?#]/);
  const isPage = mode === "navigate" && (address === PAGE || address === `${PAGE}index.html`);
  if (method !== "GET" || !(isPage || FILES.has(address))) return;
  event.respondWith(answer(isPage ? PAGE : address, event.request));
});

/** From the store, else from the network: a store that the browser emptied must not break the page. */
async function answer(address: string, request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(address, { ignoreVary: true })) ?? fetch(request);
}

/** All or nothing: a version of which a file is missing is not installed. */
async function fetchAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all(
    [...FILES].map(async (address) => {
      // Names of assets carry a hash of what is in them: one that an older version holds is the same.
      const isHashed = address.startsWith(`${PAGE}assets/`);
      const known = isHashed ? await caches.match(address, { ignoreVary: true }) : undefined;
      const response = known ?? (await fetch(address, { cache: isHashed ? "default" : "reload" }));
      if (!response.ok) throw new Error(`${address}: ${response.status}`);
      await cache.put(address, response);
    }),
  );
}

async function removeOld(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

export type {};
