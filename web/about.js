// About the app: what it is and is not, how it was checked, what it is made of. All of it is in the offline copy.

import * as offline from './offline.js';
import { element } from './element.js';
import { setCovered } from './page.js';
import { say } from './words.js';

const HOW_CHECKED = ['howChecked1', 'howChecked2', 'howChecked3', 'howChecked4', 'howChecked5', 'howChecked6'];

const list = (lines) => element('ul', {}, ...lines.map((line) => element('li', { textContent: line })));

function part({ name, version, what, licence }) {
  return element('details', {}, element('summary', { textContent: say('named', { what: `${name} ${version}`, is: what }) }), element('pre', { textContent: licence, tabIndex: 0 }));
}

async function copyLine() {
  try {
    const copy = await offline.check();
    return copy ? say('copyWhole', copy) : say('noCopy');
  } catch {
    return say('copyUntold');
  }
}

export class About {
  #page = document.getElementById('about');
  #onClose;

  constructor(onClose) {
    this.#onClose = onClose;
    this.#page.querySelector('.back').addEventListener('click', () => this.close());
    this.#page.addEventListener('keydown', (event) => event.key === 'Escape' && this.close());
  }

  close() {
    this.#page.hidden = true;
    setCovered(false);
    this.#onClose();
  }

  /** `notes`: what a verdict is not, in the words of the card. */
  async open(notes) {
    const body = this.#page.querySelector('.body');
    const heading = (what) => element('h2', { textContent: say(what) });
    const first = element('p', { textContent: say('purpose') });
    body.replaceChildren(first, heading('not'), list(notes), heading('checked'), list(HOW_CHECKED.map((what) => say(what))));
    this.#page.hidden = false;
    setCovered(true);
    this.#page.scrollTop = 0;
    this.#page.querySelector('h1').focus();
    try {
      const { app, engine, plan, parts } = await (await fetch('about.json')).json();
      const versions = list([say('appVersion', app), say('engineVersion', engine), say('planVersion', { plan }), await copyLine(), offline.lastRefusal()].filter(Boolean));
      if (first.isConnected) // not opened anew meanwhile
        body.append(heading('version'), versions, heading('parts'), ...parts.map(part));
    } catch (error) {
      body.append(element('p', { textContent: say('partsUnreadable', { why: error.message }) }));
    }
  }
}
