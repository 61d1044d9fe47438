// Keeps what a line pilot has read on this device. Network first: the saved page is shown only when the server can't be
// reached, and the page itself then says that its copy may be out of date. Signing out clears everything.
const KEPT = 'reader-1';

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('message', (event) => {
  if (event.data?.type === 'CLEAR') event.waitUntil(caches.delete(KEPT));
});

const offline = () =>
  new Response(
    '<!doctype html><meta name="viewport" content="width=device-width"><title>Offline</title><body style="font:18px system-ui;padding:2rem"><h1>No network, and this page was not saved</h1><p>Pages that you opened before are kept on this device. Go back, or try again with a network.</p>',
    { status: 503, headers: { 'content-type': 'text/html; charset=utf-8' } },
  );

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin) return;
  if (url.pathname.startsWith('/_next/static/') || url.pathname === '/mark.svg') {
    event.respondWith(
      caches.match(request).then(
        (kept) =>
          kept ??
          fetch(request).then(async (answer) => {
            if (answer.ok) (await caches.open(KEPT)).put(request, answer.clone());
            return answer;
          }),
      ),
    );
    return;
  }
  if (url.pathname !== '/read' && !url.pathname.startsWith('/read/')) return;
  event.respondWith(
    fetch(request).then(
      async (answer) => {
        // A redirect to the sign-in page must not be taken for the page itself.
        if (answer.ok && !answer.redirected) (await caches.open(KEPT)).put(request, answer.clone());
        return answer;
      },
      async () => (await caches.match(request)) ?? (request.mode === 'navigate' ? offline() : Response.error()),
    ),
  );
});
