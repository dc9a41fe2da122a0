// The copy of the app in this browser: making it, checking it, offering a newer one, and saying what became of that.

import { show } from './notice.js';
import { say } from './words.js';

const WORKER = 'sw.js';
const SHOWN_MS = 4000;
const SHOWN_LONG_MS = 15_000; // more to read, and nothing that was asked for
const LONGEST_ANSWER_MS = 10_000; // of a slow device
const SEEN = 'release'; // in localStorage: the release of the last start

const container = navigator.serviceWorker; // undefined where the browser has none, or the address is not secure
let offer; // while a newer release is offered: withdraws that
let isAtWork = false; // since it was opened: nothing is offered any more
let agreed = false; // in this window
let controlled = Boolean(container?.controller); // by the release that this window runs
let refused; // what became of the last try to take a newer release

/** The one address that this page hands to the browser as code. */
function workerAddress() {
  const policy = globalThis.trustedTypes?.createPolicy('guywright-worker', { createScriptURL: () => WORKER });
  return policy ? policy.createScriptURL(WORKER) : WORKER;
}

function ask(worker, question) {
  return new Promise((resolve, reject) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) => resolve(event.data);
    worker.postMessage(question, [channel.port2]);
    setTimeout(() => reject(new Error('no answer')), LONGEST_ANSWER_MS);
  });
}

/** As people compare them by radio: "0.1.0 (99fcb4)". */
export const nameOf = ({ version, release }) => `${version} (${release.slice('app-'.length, 'app-'.length + 6)})`.trim();

/** Hashes every file of the copy that this window runs. Resolves with { release, version, files, whole, before } - or null where there is no copy. Rejects where no answer comes. */
export async function check() {
  const registration = await container?.getRegistration();
  return registration?.active ? ask(registration.active, { type: 'check' }) : null;
}

/** Resolves once somebody looks at this window. */
async function seen() {
  while (document.hidden) await new Promise((resolve) => { document.addEventListener('visibilitychange', resolve, { once: true }); });
}

async function tell(words, shownMs) {
  await seen();
  const line = document.getElementById('offline');
  line.textContent = words;
  line.hidden = false;
  setTimeout(() => {
    if (line.textContent === words) line.hidden = true;
  }, shownMs);
}

/** Why no newer release was taken, for the page about the app; '' where there is nothing to tell. */
export const lastRefusal = () => (refused ? say(`refused_${refused.reason}`, refused) : '');

async function sayRefused() {
  const copy = await check().catch(() => undefined);
  if (copy === undefined) return; // the page about the app tells it all the same
  tell(copy ? say('goesOn', { why: lastRefusal(), version: nameOf(copy) }) : say('noCopyMade', { why: lastRefusal() }), SHOWN_LONG_MS);
}

/** Work has begun: it is finished with the version that it was begun with. */
export function workBegun() {
  isAtWork = true;
  offer?.();
  offer = undefined;
}

async function take(offered, saved) {
  agreed = true;
  await saved();
  const waiting = (await container.getRegistration())?.waiting ?? offered; // one that is newer still may have come
  const go = () => ['activating', 'activated'].includes(waiting.state) && location.reload();
  waiting.addEventListener('statechange', go);
  waiting.postMessage({ type: 'use-this-release' });
  go(); // another window was quicker
}

async function offerNewRelease(waiting, saved) {
  const [newer, copy] = await Promise.all([ask(waiting, { type: 'version' }).catch(() => ({ version: '', release: '' })), check()]);
  if (!isAtWork) offer = show(say('newer', { newer: nameOf(newer), version: nameOf(copy) }), { [say('useNow')]: () => take(waiting, saved), [say('keepThis')]: () => {} });
}

async function sayWhenReady() {
  await container.ready;
  const copy = await check();
  noteSeen(copy.release);
  tell(say(copy.whole === copy.files ? 'worksOffline' : 'notOffline', copy), SHOWN_MS);
}

function noteSeen(release) {
  try {
    const before = localStorage.getItem(SEEN);
    localStorage.setItem(SEEN, release);
    return before ?? release;
  } catch {
    return release; // nothing can be kept here: nothing is told either
  }
}

async function sayWhatIsNew() {
  const copy = await check();
  if (copy && noteSeen(copy.release) !== copy.release) tell(say('nowVersion', { version: nameOf(copy) }), SHOWN_LONG_MS);
}

/** Another window has agreed to a newer release: this one goes on with its own, and says so. */
async function sayOtherWindow() {
  if (agreed) return;
  if (!controlled) { // the first visit is taken over by its own copy
    controlled = true;
    return;
  }
  workBegun();
  const copy = await check().catch(() => null);
  if (copy) tell(say('otherWindow', { version: nameOf(copy) }), SHOWN_LONG_MS);
}

container?.addEventListener('message', ({ data }) => {
  if (data.type !== 'refused') return;
  refused = data;
  sayRefused();
});

/**
 * Makes the copy on the first visit. A newer release is offered at the start of the app only, before any work; `saved()`
 * resolves when everything is on the disk.
 */
export async function keepCopy(saved) {
  if (!container) return;
  const firstVisit = !container.controller;
  container.addEventListener('controllerchange', sayOtherWindow);
  try {
    const registration = await container.register(workerAddress(), { updateViaCache: 'none' });
    if (registration.waiting && registration.active) await offerNewRelease(registration.waiting, saved);
    await (firstVisit ? sayWhenReady() : sayWhatIsNew());
  } catch (error) {
    // Offline, or a copy that failed its check: the copy in use, if any, stays in use.
    console.info(`no new copy of the app was made: ${error.message}`);
  }
}
