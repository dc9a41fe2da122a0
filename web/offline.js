// The copy of the app in this browser: making it, checking it, and offering a newer one.

import { show } from './notice.js';
import { say } from './words.js';

function ask(worker, question) {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) => resolve(event.data);
    worker.postMessage(question, [channel.port2]);
  });
}

/** Hashes every file of the copy. Resolves with { release, files, whole } - or null where there is no copy. */
export async function check() {
  const registration = await navigator.serviceWorker?.getRegistration();
  return registration?.active ? ask(registration.active, { type: 'check' }) : null;
}

function offerNewRelease(waiting) {
  show(say('newer'), {
    [say('useNow')]: () => {
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload());
      waiting.postMessage({ type: 'use-this-release' });
    },
    [say('keepThis')]: () => {},
  });
}

async function sayWhenReady() {
  await navigator.serviceWorker.ready;
  const copy = await check();
  const line = document.getElementById('offline');
  line.textContent = say(copy.whole === copy.files ? 'worksOffline' : 'notOffline', copy);
  line.hidden = false;
  setTimeout(() => (line.hidden = true), 4000);
}

/**
 * Makes the copy on the first visit. A newer release is offered at the start of the app only, before any work:
 * what is under way is finished by the version that it was begun with.
 */
export async function keepCopy() {
  if (!('serviceWorker' in navigator)) return;
  const firstVisit = !navigator.serviceWorker.controller;
  try {
    const registration = await navigator.serviceWorker.register('sw.js', { updateViaCache: 'none' });
    if (registration.waiting && registration.active) offerNewRelease(registration.waiting);
    if (firstVisit) await sayWhenReady();
  } catch (error) {
    // Offline, or a copy that failed its check: the copy in use, if any, stays in use.
    console.info(`no new copy of the app was made: ${error.message}`);
  }
}
