// Messages of the page itself, over the canvas: short, in plain words, with large buttons.

import { say } from './words.js';

const notice = document.getElementById('notice');

/**
 * Shows `text` with one button per choice until one is pressed.
 * @param {string} text
 * @param {Record<string, () => void>} choices label -> what to do
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
}
