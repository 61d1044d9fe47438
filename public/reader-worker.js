// Keeps what a line pilot may need on this device. Network first: a saved page is shown only when the server can't be
// reached, and the page itself then says that its copy may be out of date. Signing out clears everything.
const KEPT = 'reader-1';

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('message', (event) => {
  const { type, paths = [] } = event.data ?? {};
  if (type === 'CLEAR') event.waitUntil(caches.delete(KEPT));
  if (type === 'KEEP') event.waitUntil(keepPages(paths));
});

const isReader = (path) => path === '/read' || path.startsWith('/read/');
const isPart = (path) => path.startsWith('/_next/static/') || path === '/mark.svg';

async function keep(request, answer) {
  // A redirect to the sign-in page must not be taken for the page itself.
  if (answer.ok && !answer.redirected) await (await caches.open(KEPT)).put(request, answer.clone());
  return answer;
}

/** Pages that were reached by links inside the app never came as documents: fetch them as such, with their parts. */
async function keepPages(paths) {
  for (const path of paths.filter(isReader)) {
    const answer = await fetch(path, { credentials: 'same-origin' }).catch(() => null);
    if (!answer) return;
    const text = await (await keep(path, answer)).clone().text();
    const parts = new Set([...text.matchAll(/\/_next\/static\/[\w./~-]+/g)].map((match) => match[0]));
    for (const part of parts) if (!(await caches.match(part))) await fetch(part).then((got) => keep(part, got), () => undefined);
  }
}

const offline = () =>
  new Response(
    '<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><title>Offline</title><body style="font:18px system-ui;padding:2rem"><h1>No network, and this page was not saved</h1><p>Pages that you opened before are kept on this device. Go back, or try again with a network.</p>',
    { status: 503, headers: { 'content-type': 'text/html; charset=utf-8' } },
  );

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin) return;
  if (isPart(pathname)) {
    event.respondWith(caches.match(request).then((kept) => kept ?? fetch(request).then((answer) => keep(request, answer))));
  } else if (isReader(pathname) && request.mode === 'navigate') {
    event.respondWith(
      fetch(request).then(
        (answer) => keep(pathname, answer),
        async () => (await caches.match(pathname)) ?? offline(),
      ),
    );
  }
});
