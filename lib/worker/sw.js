// The service worker: it keeps the app itself on the device, so that a page opens without a network. It never
// touches a write: entries wait in the outbox of the page. `build` stands above this text when it is served.

const cacheName = `fitwright-${build.id}`;
const shell = '/here';
/** After so long without an answer a page is opened from the device; the network may still be slow, not gone. */
const answerWithinMs = 4000;

self.addEventListener('install', (event) => {
  event.waitUntil(keepBuild());
});

self.addEventListener('activate', (event) => {
  event.waitUntil(dropOldBuilds());
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (request.mode === 'navigate') event.respondWith(page(request));
  else if (url.pathname.startsWith('/_next/static/')) event.respondWith(asset(request));
});

// A person has asked for the new version; a worker never takes over by itself.
self.addEventListener('message', (event) => {
  if (event.data === 'load it') self.skipWaiting();
});

/** All or nothing: a build that cannot be kept whole is not installed. */
async function keepBuild() {
  const cache = await caches.open(cacheName);
  await cache.addAll([new Request(shell, { cache: 'reload' }), ...build.assets]);
}

/** The build before this one stays, for pages that were open during the update. */
async function dropOldBuilds() {
  const names = (await caches.keys()).filter((name) => name.startsWith('fitwright-'));
  const others = names.filter((name) => name !== cacheName);
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
}

async function page(request) {
  try {
    return await inTime(fetch(request));
  } catch (error) {
    const kept = await (await caches.open(cacheName)).match(shell);
    if (kept === undefined) throw error;
    return kept;
  }
}

/** Names carry a hash of what is in them, so the first found is the right one. */
async function asset(request) {
  return (await caches.match(request)) ?? fetch(request);
}

function inTime(answer) {
  let timer;
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new Error('no answer in time')), answerWithinMs);
  });
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}
