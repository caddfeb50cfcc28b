// Keeps the page on the device once it was opened, and the last answers to what it asked, so that it opens without the program and without a network.
const SHELF = 'scuff-page-1';
const ANSWERS = 'scuff-answers-1';

self.addEventListener('install', (event) => {
  // questions go straight to the program: the way round through here costs each letter some milliseconds
  event.addRoutes?.([
    { condition: { requestMethod: 'POST' }, source: 'network' },
    { condition: { requestMethod: 'PUT' }, source: 'network' },
  ]);
  event.waitUntil(
    (async () => {
      const shelf = await caches.open(SHELF);
      const names = await (await fetch('/offline.json', { cache: 'no-store' })).json();
      await shelf.addAll(['/', ...names]);
      await self.skipWaiting();
    })(),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) if (name !== SHELF && name !== ANSWERS) await caches.delete(name);
      await self.clients.claim();
    })(),
  );
});

async function firstFromProgram(request, shelfName, kept) {
  const shelf = await caches.open(shelfName);
  try {
    const answer = await fetch(request);
    if (answer.ok) await shelf.put(kept ?? request, answer.clone());
    return answer;
  } catch (trouble) {
    const old = await shelf.match(kept ?? request);
    if (old) return old;
    throw trouble;
  }
}

async function firstFromShelf(request) {
  const shelf = await caches.open(SHELF);
  const old = await shelf.match(request);
  if (old) return old;
  const answer = await fetch(request);
  if (answer.ok) await shelf.put(request, answer.clone());
  return answer;
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== 'GET' || address.origin !== self.location.origin) return;
  if (address.pathname.startsWith('/api/')) {
    // what is heard and what flows stays with the program
    if (/^\/api\/(club|dances|sheets|tracks)(\/[^/]+)?$/.test(address.pathname))
      event.respondWith(firstFromProgram(request, ANSWERS));
    return;
  }
  if (request.mode === 'navigate') event.respondWith(firstFromProgram(request, SHELF, '/'));
  else if (address.pathname.startsWith('/assets/')) event.respondWith(firstFromShelf(request));
  else event.respondWith(firstFromProgram(request, SHELF));
});
