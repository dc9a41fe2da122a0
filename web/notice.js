// Messages of the page itself, over the canvas: short, in plain words, with large buttons.

import { say } from './words.js';

const notice = document.getElementById('notice');
const waiting = []; // { text, choices }; the first is shown

function takeAway(message) {
  const at = waiting.indexOf(message);
  if (at >= 0) waiting.splice(at, 1);
  if (at === 0) showFirst();
}

function showFirst() {
  const [message] = waiting;
  notice.hidden = !message;
  if (!message) return;
  notice.querySelector('p').textContent = message.text;
  notice.querySelector('.choices').replaceChildren(...Object.entries(message.choices).map(([label, act]) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    button.addEventListener('click', () => {
      takeAway(message);
      act();
    });
    return button;
  }));
}

/**
 * Shows `text` with one button per choice until one is pressed; after those that nobody has answered yet.
 * @param {string} text
 * @param {Record<string, () => void>} choices label -> what to do
 * @returns {() => void} takes it away again, if it is still there
 */
export function show(text, choices = { [say('ok')]: () => {} }) {
  const message = { text, choices };
  const same = waiting.findIndex((each) => each.text === text); // said twice it is read once
  if (same >= 0) waiting[same] = message;
  else waiting.push(message);
  if (waiting[0] === message) showFirst();
  return () => takeAway(message);
}

/** The program cannot go on. `detail` is for whoever mends it. */
export function stop(what, detail = '') {
  const page = document.getElementById('stopped');
  if (!page.hidden) return; // the first reason is the right one
  page.querySelector('.what').textContent = what;
  page.querySelector('.detail').textContent = detail;
  page.hidden = false;
  document.getElementById('skeleton').hidden = true;
  document.getElementById('verdict').textContent = say('stoppedVerdict');
  offerPrevious(page).catch(() => {}); // no storage: nothing to go back to
}

/** A version that does not run on this device must not be the end of it. */
async function offerPrevious(page) {
  const copies = (await caches.keys()).filter((name) => name.startsWith('app-'));
  page.querySelector('a[href="./?previous"]').hidden = copies.length < 2;
}
