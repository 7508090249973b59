// Keeps the whole page on the device and answers from there, whatever the network does. The build fills in the two names
// below. A new version is fetched whole beside the old one and waits until the page asks for it; the old one is only
// thrown away once the page of the new one has said that it works.
const CACHE = 'faintwave-__VERSION__';
const FILES = __FILES__;
/** How often this version was opened without saying that it works. */
const NOTES = 'faintwave-notes';
const TRIES = 2;

const address = (file) => new URL(file, self.registration.scope).href;
const START = address('index.html');

self.addEventListener('install', (event) => {
  const requests = FILES.map((file) => new Request(address(file), { cache: 'reload' }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(requests)));
});

self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('message', (event) => {
  if (event.data === 'take over') self.skipWaiting();
  if (event.data === 'works') event.waitUntil(works(event.source?.id));
});

const versions = async () => (await caches.keys()).filter((name) => name.startsWith('faintwave-') && name !== NOTES);

/** Under which a client is noted that was given the page of the previous version. */
const givenOldPage = (client) => address(`old-page/${client}`);

/** @param client whose page works: one of the version before says nothing of this one */
async function works(client) {
  const notes = await caches.open(NOTES);
  if (await notes.match(givenOldPage(client))) return;
  await note('works');
  for (const { url } of await notes.keys()) if (url.startsWith(givenOldPage(''))) await notes.delete(url);
  const old = (await versions()).filter((name) => name !== CACHE);
  // One that waits to be used is newer, not older.
  if (!self.registration.waiting && !self.registration.installing)
    await Promise.all(old.map((name) => caches.delete(name)));
}

async function note(text) {
  const notes = await caches.open(NOTES);
  await notes.put(address(CACHE), new Response(text));
}

async function noted(name) {
  const notes = await caches.open(NOTES);
  return (await (await notes.match(address(name)))?.text()) ?? '0';
}

/** A version before this one that worked. */
async function before() {
  for (const name of await versions()) if (name !== CACHE && (await noted(name)) === 'works') return name;
  return undefined;
}

const fromCache = async (name, request) => (await caches.open(name)).match(request, { ignoreSearch: true });

/** The page of this version; of the one before, where this one was opened without saying that it works. @param client that gets it */
async function pageItself(client) {
  const state = await noted(CACHE);
  const last = state === 'works' ? undefined : await before();
  if (last !== undefined) {
    const old = Number(state) < TRIES ? undefined : await fromCache(last, START);
    if (old) {
      await (await caches.open(NOTES)).put(givenOldPage(client), new Response(''));
      return old;
    }
    await note(String(Number(state) + 1));
  }
  return (await fromCache(CACHE, START)) ?? fetch(START);
}

/** What is in no version here comes from the network; names of built files change with what is in them. */
async function file(request) {
  const own = await fromCache(CACHE, request);
  if (own) return own;
  for (const name of await versions()) {
    const old = await fromCache(name, request);
    if (old) return old;
  }
  return fetch(request);
}

/** What other programs share with the page, until it has opened it; not one of the versions by its name. */
const SHARED = 'shared-with-faintwave';
const SHARED_FOR_MS = 3_600_000;
/** Any web site can send a form: what is kept of it is bounded. */
const MOST_SHARED = { files: 20, bytes: 100e6, characters: 4e6 };

/** Leaves what was shared where the page finds it, and opens the page. */
async function takeShared(request) {
  let state = 'failed';
  try {
    state = (await keepShared(await request.formData())) ? 'kept' : 'too-much';
  } catch {
    // The page says so.
  }
  return Response.redirect(address(`./?shared=${state}`), 303);
}

/** @returns whether it is little enough to be kept */
async function keepShared(form) {
  const shared = await caches.open(SHARED);
  const now = Date.now();
  for (const left of await shared.keys()) {
    const at = Number(left.url.split('/').pop().split('-')[0]);
    if (!(now - at < SHARED_FOR_MS)) await shared.delete(left);
  }
  // Programs differ in whether a link is the text or has a field of its own.
  const text = [form.get('text'), form.get('url')].filter((part) => typeof part === 'string' && part !== '').join('\n');
  const files = form.getAll('files').filter((one) => typeof one !== 'string');
  const bytes = files.reduce((sum, { size }) => sum + size, 0);
  const { files: most, bytes: mostBytes, characters } = MOST_SHARED;
  if (files.length > most || bytes > mostBytes || text.length > characters) return false;
  if (text !== '') await shared.put(address(`shared/${now}-text`), new Response(text));
  for (const [k, one] of files.entries())
    await shared.put(
      address(`shared/${now}-${k}`),
      new Response(one, { headers: { 'x-file-name': encodeURIComponent(one.name) } }),
    );
  return true;
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = request.url.split(/[?#]/)[0];
  if (request.method === 'POST' && url === address('shared')) {
    event.respondWith(takeShared(request));
    return;
  }
  if (request.method !== 'GET' || !url.startsWith(self.registration.scope)) return;
  if (request.mode === 'navigate' && (url === self.registration.scope || url === START)) {
    event.respondWith(pageItself(event.resultingClientId));
  } else if (request.mode !== 'navigate') event.respondWith(file(request));
});
