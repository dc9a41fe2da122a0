// Service worker: a whole, checked copy of one release, and nothing else.
//
// web/release.mjs puts a line `const RELEASE = {...}` before this text, and both into one block:
//   name     cache of this release, 'app-' and the first signs of the hash of all that follows
//   version  of the app, three numbers
//   files    [{ path, type, bytes, sha256 }], sha256 in base64
//   headers  what every page is sent with, the Content-Security-Policy among it
// A release is copied in whole or not at all, never changed afterwards, and never mixed with another: a window stays with the
// release that it was opened with, whatever another window has agreed to meanwhile.
/* global RELEASE */

const PREFIX = 'app-';
const SHORTEST_NAME = PREFIX.length + 12;
const COMPLETE = 'complete'; // an entry with the list of files, written last: without it the copy does not count
const USE_PREVIOUS = 'use-previous'; // an entry: the user went back to the release before this one
const WINDOWS = 'windows'; // a cache: which release each open window runs

const urlOf = (path) => new URL(path, self.registration.scope).href;
const START = urlOf('index.html');

async function sha256(body) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return btoa(String.fromCharCode(...digest));
}

// --- making and checking the copy ---

/** Why a release was not taken: `reason` is 'file' (with its path), 'full', 'older' or 'list'. */
class Refused extends Error {
  constructor(reason, path = '') {
    super(`${reason} ${path}`);
    Object.assign(this, { reason, path });
  }
}

/** `cache` 'no-cache': what the page has loaded a moment ago is not sent again. */
async function fetchWhole(file, signal, cache) {
  const request = new Request(urlOf(file.path), {
    integrity: `sha256-${file.sha256}`, // a half-finished upload, a page of a gateway or a bad line must not become the app
    cache,
    credentials: 'same-origin',
    signal,
  });
  const response = await fetch(request);
  if (!response.ok) throw new Error(`answer ${response.status}`);
  return response.arrayBuffer();
}

/** All bodies, each checked, before the first is written: what does not arrive whole leaves nothing behind. */
async function fetchAll(files) {
  const others = new AbortController();
  return Promise.all(files.map(async (file) => {
    try {
      // The second time past what the browser has kept: a host may have said that it is good for a year.
      return await fetchWhole(file, others.signal, 'no-cache').catch(() => fetchWhole(file, others.signal, 'reload'));
    } catch {
      others.abort();
      throw new Refused('file', file.path);
    }
  }));
}

/** A new response: the copy must not depend on how a server names types or packs bodies. */
function asKept(file, body) {
  const headers = { 'Content-Type': file.type, 'X-Content-Type-Options': 'nosniff' };
  if (file.type.startsWith('text/html')) Object.assign(headers, RELEASE.headers);
  return new Response(body, { headers });
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
  const bodies = await fetchAll(RELEASE.files);
  try {
    await Promise.all(RELEASE.files.map((file, i) => cache.put(urlOf(file.path), asKept(file, bodies[i]))));
    const whole = await countWhole(cache, RELEASE.files);
    if (whole !== RELEASE.files.length) throw new Error(`only ${whole} of ${RELEASE.files.length} files were stored whole`);
    await cache.put(urlOf(COMPLETE), new Response(JSON.stringify(RELEASE.files)));
  } catch {
    throw new Refused('full');
  }
}

/** What a copy says of itself: the text of one of its entries, '' where there is none. */
async function readIn(name, path) {
  const hit = await caches.match(urlOf(path), { cacheName: name });
  return hit ? hit.text() : '';
}

async function versionOf(name) {
  try {
    return JSON.parse(await readIn(name, 'about.json')).app.version;
  } catch {
    return ''; // damaged, or from before versions were told
  }
}

/** Whether version `a` comes before `b`; one that is no version at all comes before none. */
function isOlder(a, b) {
  const [left, right] = [a, b].map((version) => version.split('.').map(Number));
  const at = left.findIndex((number, i) => number !== right[i]);
  return at >= 0 && left[at] < right[at];
}

/** A server, or something between, that hands out a release from before: whole, and yet a step back. */
async function refuseOlder() {
  const versions = await Promise.all((await completeReleases()).map(versionOf));
  if (versions.some((version) => isOlder(RELEASE.version, version))) throw new Refused('older');
}

/** A list that was cut off or written into would tear the copy of whatever has its name. */
async function refuseBrokenList() {
  const { name, ...rest } = RELEASE;
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(JSON.stringify(rest)));
  const hash = Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
  if (name.length < SHORTEST_NAME || !(PREFIX + hash).startsWith(name)) throw new Refused('list');
}

async function install() {
  const kept = await readIn(RELEASE.name, COMPLETE); // a copy of this very release, in use or damaged
  try {
    await refuseBrokenList();
    await refuseOlder();
    if (!kept) await caches.delete(RELEASE.name); // what an earlier, interrupted try left
    await fillCopy(await caches.open(RELEASE.name));
  } catch (error) {
    if (!kept) await caches.delete(RELEASE.name);
    await tellWindows({ type: 'refused', version: RELEASE.version, reason: error.reason ?? 'list', path: error.path ?? '' });
    throw error;
  }
}

async function tellWindows(what) {
  for (const window of await openWindows()) window.postMessage(what);
}

const openWindows = () => self.clients.matchAll({ type: 'window', includeUncontrolled: true });

/** Names of complete releases, oldest first. */
async function completeReleases() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX));
  const complete = await Promise.all(names.map((name) => readIn(name, COMPLETE)));
  return names.filter((_, index) => complete[index]);
}

async function previousRelease() {
  return (await completeReleases()).filter((name) => name !== RELEASE.name).at(-1);
}

/** Keeps this release, the one before it and what open windows run; user data is elsewhere and is never touched. */
async function dropOldReleases() {
  const keep = [RELEASE.name, await previousRelease(), ...(await releasesOfWindows())];
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && !keep.includes(name));
  await Promise.all(names.map((name) => caches.delete(name)));
}

// --- which window runs which release ---

const MOST_NOTES = 64; // more than anybody has windows open: time to clear up
const known = new Map(); // the notes that this worker has seen
const noteOf = (id) => `window/${id}`;

async function noteWindow(id, name) {
  known.set(id, name);
  const notes = await caches.open(WINDOWS);
  await notes.put(urlOf(noteOf(id)), new Response(name)).catch(() => {}); // full: good for as long as this worker lives
}

/** Release of a window; '' where none is noted. */
async function releaseOfWindow(id) {
  if (id && !known.has(id)) known.set(id, await readIn(WINDOWS, noteOf(id)));
  return known.get(id) || '';
}

async function releasesOfWindows() {
  return Promise.all((await openWindows()).map(({ id }) => releaseOfWindow(id)));
}

/** Of windows that are gone nothing is kept. */
async function forgetGoneWindows() {
  const notes = await caches.open(WINDOWS);
  const open = (await openWindows()).map(({ id }) => urlOf(noteOf(id)));
  await Promise.all((await notes.keys()).filter(({ url }) => !open.includes(url)).map((request) => notes.delete(request)));
}

/** Windows that no copy has answered yet have loaded this release from the server. */
async function noteNewWindows() {
  for (const { id } of await openWindows()) if (!(await releaseOfWindow(id))) await noteWindow(id, RELEASE.name);
}

/** Only once there are many: a window that is about to open does not count as open yet. */
async function clearUp() {
  const notes = await caches.open(WINDOWS);
  if ((await notes.keys()).length > MOST_NOTES) await forgetGoneWindows();
}

// --- answering from the copy ---

/** Name of the release that is in use. */
async function releaseInUse() {
  if (!(await readIn(RELEASE.name, USE_PREVIOUS))) return RELEASE.name;
  return (await previousRelease()) ?? RELEASE.name;
}

async function hasEveryFile(name) {
  const list = await readIn(name, COMPLETE);
  if (!list) return false;
  const stored = new Set((await (await caches.open(name)).keys()).map((request) => request.url));
  return JSON.parse(list).every((file) => stored.has(urlOf(file.path)));
}

const OWN_STYLE = `body{font:20px/1.5 sans-serif;margin:24px;color:#000;background:#fff}
a{display:block;padding:24px;margin:16px 0;border:4px solid #000;color:#000;font-weight:bold;max-width:560px}`;

/** A page that needs no file of the copy. `head` and `body` are HTML. */
async function ownPage({ title, head = '', body }) {
  const page = `<!doctype html><html lang="en"><meta charset="utf-8"><title>${title}</title>
<meta name="viewport" content="width=device-width,initial-scale=1">${head}
<style>${OWN_STYLE}</style>
<main><h1>NOT CHECKED</h1>
${body}</main>`;
  const style = await sha256(new TextEncoder().encode(OWN_STYLE));
  const policy = `default-src 'none'; style-src 'sha256-${style}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;
  const headers = { ...RELEASE.headers, 'Content-Type': 'text/html; charset=utf-8', 'Content-Security-Policy': policy };
  return new Response(page, { status: 503, headers });
}

function damagedCopyPage(previous) {
  const back = previous ? '<p><a href="./?previous">Use the version before this one <span lang="fr">/ Utiliser la version précédente</span></a></p>' : '';
  return ownPage({ title: 'Copy damaged', body: `<p>The copy of the app in this browser is damaged: files are missing. Your plans are kept elsewhere and are not touched.</p>
<p lang="fr">La copie de l'appli dans ce navigateur est abîmée : des fichiers manquent. Vos plans sont gardés ailleurs et restent intacts.</p>
<p><a href="./?repair">Mend the copy. Needs the network once. <span lang="fr">/ Réparer la copie. Réseau nécessaire une fois.</span></a></p>${back}` });
}

/** A newer worker takes over only after this answer: the page asks again by itself, and that one answers. */
const newerComesPage = () => ownPage({ title: 'Starting', head: '<meta http-equiv="refresh" content="1;url=./">',
  body: '<p><a href="./">A newer version of the app is here. It starts. <span lang="fr">/ Une version plus récente de l\'appli est là. Elle démarre.</span></a></p>' });

const toStart = () => Response.redirect(self.registration.scope, 302);

/** The server has another release by now: who asks for mending agrees to that one. Resolves with whether there is one. */
async function takeWaiting() {
  await self.registration.update().catch(() => {});
  const coming = self.registration.installing;
  if (coming) await new Promise((done) => { coming.onstatechange = () => coming.state !== 'installing' && done(); });
  self.registration.waiting?.postMessage({ type: 'use-this-release' });
  return Boolean(self.registration.waiting);
}

async function repair() {
  const cache = await caches.open(RELEASE.name);
  try {
    await fillCopy(cache);
    await cache.delete(urlOf(USE_PREVIOUS));
    return toStart();
  } catch {
    return (await takeWaiting()) ? newerComesPage() : damagedCopyPage(await previousRelease());
  }
}

async function goBack() {
  if (await previousRelease()) await (await caches.open(RELEASE.name)).put(urlOf(USE_PREVIOUS), new Response('yes'));
  return toStart();
}

async function answerPage(url, windowId) {
  if (url.href.split(/[?#]/)[0] !== self.registration.scope && !url.href.startsWith(START)) return toStart();
  if (url.searchParams.has('repair')) return repair();
  if (url.searchParams.has('previous')) return goBack();
  const name = await releaseInUse();
  if (!(await hasEveryFile(name))) return damagedCopyPage(await previousRelease());
  if (windowId) await noteWindow(windowId, name);
  return caches.match(START, { cacheName: name });
}

async function answerFile(url, windowId) {
  const name = (await releaseOfWindow(windowId)) || (await releaseInUse());
  const hit = await caches.match(url.href.split(/[?#]/)[0], { cacheName: name });
  // Never from the network: a file of another release beside these would be worse than none.
  return hit ?? new Response('not in this copy of the app', { status: 404 });
}

/** What there is of the release that a window runs. */
async function answerCheck(windowId) {
  const name = (await releaseOfWindow(windowId)) || (await releaseInUse());
  const list = await readIn(name, COMPLETE);
  const files = list ? JSON.parse(list) : RELEASE.files;
  const before = (await completeReleases()).filter((each) => each !== name).length > 0;
  return { release: name, version: await versionOf(name), files: files.length, whole: await countWhole(await caches.open(name), files), before };
}

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => {
  // The page of the first visit is taken over, too: a release that nobody used would give way to a newer one unasked.
  event.waitUntil(forgetGoneWindows().then(noteNewWindows).then(dropOldReleases).then(() => self.clients.claim()));
});
self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (event.request.mode === 'navigate') {
    event.respondWith(answerPage(url, event.resultingClientId));
    event.waitUntil(clearUp());
  } else {
    event.respondWith(answerFile(url, event.clientId));
  }
});
self.addEventListener('message', (event) => {
  const { type } = event.data;
  if (type === 'use-this-release') self.skipWaiting(); // sent after the user agreed, never by itself
  if (type === 'version') event.ports[0].postMessage({ release: RELEASE.name, version: RELEASE.version });
  if (type === 'check') event.waitUntil(answerCheck(event.source?.id).then((answer) => event.ports[0].postMessage(answer)));
});
