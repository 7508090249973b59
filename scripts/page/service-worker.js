// Keeps the whole page on the device, so that it opens without a network. The build fills in the two names below; any
// change of a file makes a new version, which takes over once every tab of the old one is closed.
const CACHE = 'faintwave-__VERSION__';
const FILES = __FILES__;

const address = (file) => new URL(file, self.registration.scope).href;
const kept = new Set(FILES.map(address));

self.addEventListener('install', (event) => {
  const requests = FILES.map((file) => new Request(address(file), { cache: 'reload' }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(requests)));
});

self.addEventListener('activate', (event) => {
  const removeOld = async () => {
    const names = await caches.keys();
    const old = names.filter((name) => name.startsWith('faintwave-') && name !== CACHE);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  };
  event.waitUntil(removeOld());
});

// The page itself comes from the network while there is one, so that a new version is seen at the first load.
async function pageItself(request) {
  try {
    const fromNetwork = await fetch(request);
    if (fromNetwork.ok) return fromNetwork;
  } catch {
    // no network: the kept one below
  }
  const cache = await caches.open(CACHE);
  return (await cache.match(address('index.html'))) ?? Response.error();
}

async function file(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, { ignoreSearch: true })) ?? fetch(request);
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const url = request.url.split(/[?#]/)[0];
  if (request.mode === 'navigate' && (url === self.registration.scope || kept.has(url))) {
    event.respondWith(pageItself(request));
  } else if (kept.has(url)) {
    event.respondWith(file(request));
  }
});
