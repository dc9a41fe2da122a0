// Service worker: a whole, checked copy of one release, and nothing else.
//
// web/release.mjs puts a line `const RELEASE = {...}` before this text:
//   name    cache of this release, 'app-' and the hash of the list of files
//   files   [{ path, type, bytes, sha256 }], sha256 in base64
//   policy  Content-Security-Policy of pages
// A release is copied in whole or not at all, never changed afterwards, and never mixed with another.
'use strict';
/* global RELEASE */

const PREFIX = 'app-';
const COMPLETE = 'complete'; // an entry with the list of files, written last: without it the copy does not count
const USE_PREVIOUS = 'use-previous'; // an entry: the user went back to the release before this one

const urlOf = (path) => new URL(path, self.registration.scope).href;
const START = urlOf('index.html');

async function sha256(body) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return btoa(String.fromCharCode(...digest));
}

// --- making and checking the copy ---

async function fetchInto(cache, file) {
  const request = new Request(urlOf(file.path), {
    integrity: `sha256-${file.sha256}`, // a half-finished upload or a bad line must not become the app
    cache: 'reload',
    credentials: 'same-origin',
  });
  const response = await fetch(request);
  if (!response.ok) throw new Error(`${file.path}: answer ${response.status}`);
  // A new response: the copy must not depend on how a server names types or packs bodies.
  const headers = { 'Content-Type': file.type, 'X-Content-Type-Options': 'nosniff' };
  if (file.type.startsWith('text/html')) headers['Content-Security-Policy'] = RELEASE.policy;
  await cache.put(urlOf(file.path), new Response(await response.arrayBuffer(), { headers }));
}

async function isWhole(cache, file) {
  const hit = await cache.match(urlOf(file.path));
  if (!hit) return false;
  const body = await hit.arrayBuffer();
  return body.byteLength === file.bytes && (await sha256(body)) === file.sha256;
}

async function countWhole(cache, files) {
  const found = await Promise.all(files.map((file) => isWhole(cache, file)));
  return found.filter(Boolean).length;
}

async function fillCopy(cache) {
  await Promise.all(RELEASE.files.map((file) => fetchInto(cache, file)));
  const whole = await countWhole(cache, RELEASE.files);
  if (whole !== RELEASE.files.length) throw new Error(`only ${whole} of ${RELEASE.files.length} files were stored whole`);
  await cache.put(urlOf(COMPLETE), new Response(JSON.stringify(RELEASE.files)));
}

async function install() {
  await caches.delete(RELEASE.name); // what an earlier, interrupted try left
  try {
    await fillCopy(await caches.open(RELEASE.name));
  } catch (error) {
    await caches.delete(RELEASE.name);
    throw error;
  }
}

/** Names of complete releases, oldest first. */
async function completeReleases() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX));
  const complete = await Promise.all(names.map((name) => caches.match(urlOf(COMPLETE), { cacheName: name })));
  return names.filter((_, index) => complete[index]);
}

async function previousRelease() {
  return (await completeReleases()).filter((name) => name !== RELEASE.name).at(-1);
}

/** Keeps this release and the one before it; user data is elsewhere and is never touched. */
async function dropOldReleases() {
  const keep = [RELEASE.name, await previousRelease()];
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && !keep.includes(name));
  await Promise.all(names.map((name) => caches.delete(name)));
}

// --- answering from the copy ---

/** Name of the release that is in use. */
async function releaseInUse() {
  if (!(await caches.match(urlOf(USE_PREVIOUS), { cacheName: RELEASE.name }))) return RELEASE.name;
  return (await previousRelease()) ?? RELEASE.name;
}

async function hasEveryFile(name) {
  const marker = await caches.match(urlOf(COMPLETE), { cacheName: name });
  if (!marker) return false;
  const stored = new Set((await (await caches.open(name)).keys()).map((request) => request.url));
  return (await marker.json()).every((file) => stored.has(urlOf(file.path)));
}

function damagedCopyPage(previous) {
  const back = previous ? '<p><a href="./?previous">Use the version before this one <span lang="fr">/ Utiliser la version précédente</span></a></p>' : '';
  const page = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Copy damaged</title>
<meta name="viewport" content="width=device-width,initial-scale=1">
<style>body{font:20px/1.5 sans-serif;margin:24px;color:#000;background:#fff}
a{display:block;padding:24px;border:4px solid #000;color:#000;font-weight:bold;max-width:560px}</style>
<h1>NOT CHECKED</h1>
<p>The copy of the app in this browser is damaged: files are missing. Your plans are kept elsewhere and are not touched.</p>
<p lang="fr">La copie de l'appli dans ce navigateur est abîmée : des fichiers manquent. Vos plans sont gardés ailleurs et restent intacts.</p>
<p><a href="./?repair">Mend the copy. Needs the network once. <span lang="fr">/ Réparer la copie. Réseau nécessaire une fois.</span></a></p>${back}`;
  const headers = { 'Content-Type': 'text/html; charset=utf-8', 'Content-Security-Policy': "default-src 'none'; style-src 'unsafe-inline'" };
  return new Response(page, { status: 503, headers });
}

const toStart = () => Response.redirect(self.registration.scope, 302);

async function repair() {
  const cache = await caches.open(RELEASE.name);
  try {
    await fillCopy(cache);
    await cache.delete(urlOf(USE_PREVIOUS));
    return toStart();
  } catch {
    // No network, or the server has a newer release by now: that one is copied in as a whole.
    await self.registration.update().catch(() => {});
    return damagedCopyPage(await previousRelease());
  }
}

async function goBack() {
  if (await previousRelease()) await (await caches.open(RELEASE.name)).put(urlOf(USE_PREVIOUS), new Response(''));
  return toStart();
}

async function answerPage(url) {
  if (url.href.split(/[?#]/)[0] !== self.registration.scope && !url.href.startsWith(START)) return toStart();
  if (url.searchParams.has('repair')) return repair();
  if (url.searchParams.has('previous')) return goBack();
  const name = await releaseInUse();
  if (!(await hasEveryFile(name))) return damagedCopyPage(await previousRelease());
  return caches.match(START, { cacheName: name });
}

async function answerFile(url) {
  const hit = await caches.match(url.href.split(/[?#]/)[0], { cacheName: await releaseInUse() });
  // Never from the network: a file of another release beside these would be worse than none.
  return hit ?? new Response('not in this copy of the app', { status: 404 });
}

async function answerCheck() {
  const name = await releaseInUse();
  const marker = await caches.match(urlOf(COMPLETE), { cacheName: name });
  const files = marker ? await marker.json() : RELEASE.files;
  return { release: name, files: files.length, whole: await countWhole(await caches.open(name), files) };
}

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => {
  // The page of the first visit is taken over, too: a release that nobody used would give way to a newer one unasked.
  event.waitUntil(dropOldReleases().then(() => self.clients.claim()));
});
self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin) return;
  event.respondWith(event.request.mode === 'navigate' ? answerPage(url) : answerFile(url));
});
self.addEventListener('message', (event) => {
  if (event.data.type === 'use-this-release') self.skipWaiting(); // sent after the user agreed, never by itself
  if (event.data.type === 'check') event.waitUntil(answerCheck().then((answer) => event.ports[0].postMessage(answer)));
});
