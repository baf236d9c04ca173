// Keeps the field pages on the phone. What is written is sent by the pages themselves, not from here.
const CACHE = 'field-@edition@';
const FILES = ['/field', '@files@'];

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(FILES)).then(() => self.skipWaiting()));
});

self.addEventListener('activate', (event) => {
  event.waitUntil((async () => {
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name.startsWith('field-') && name !== CACHE).map((name) => caches.delete(name)));
    await self.clients.claim();
  })());
});

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin) {
    return;
  }
  if (event.request.mode === 'navigate' && url.pathname !== '/field') {
    event.respondWith(fetch(event.request).catch(() => (url.pathname === '/' ? Response.redirect('/field') : noLine())));
  } else if (url.pathname === '/field' || url.pathname.startsWith('/field/app/')) {
    event.respondWith(caches.match(event.request, { ignoreSearch: true }).then((kept) => kept || fetch(event.request)));
  }
});

/** What a desk page's address shows without a line: where to go on. */
function noLine() {
  const page = `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>No signal · Ramkeeper</title><meta name="viewport" content="width=device-width, initial-scale=1">
    <meta name="color-scheme" content="light dark"><link rel="stylesheet" href="/field/app/@edition@/field.css"></head><body><main><h1>No signal</h1>
    <p>This page needs the office’s server. Today’s visits, all sites and what you wrote are on this phone.</p><p><a class="button" href="/field">Open the phone’s pages</a></p></main></body></html>`;
  return new Response(page, { status: 503, headers: { 'Content-Type': 'text/html;charset=UTF-8' } });
}
