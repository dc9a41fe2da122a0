// Messages of the page itself, over the canvas: short, in plain words, with large buttons.

import { say } from './words.js';

const notice = document.getElementById('notice');

/**
 * Shows `text` with one button per choice until one is pressed.
 * @param {string} text
 * @param {Record<string, () => void>} choices label -> what to do
 * @returns {() => void} takes it away again, if it is still the one that is shown
 */
export function show(text, choices = { [say('ok')]: () => {} }) {
  notice.querySelector('p').textContent = text;
  const buttons = Object.entries(choices).map(([label, act]) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    button.addEventListener('click', () => {
      notice.hidden = true;
      act();
    });
    return button;
  });
  notice.querySelector('.choices').replaceChildren(...buttons);
  notice.hidden = false;
  return () => {
    if (notice.contains(buttons[0])) notice.hidden = true;
  };
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
