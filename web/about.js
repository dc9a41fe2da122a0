// About the app: what it is and is not, how it was checked, what it is made of. All of it is in the offline copy.

import * as offline from './offline.js';

const TITLE = 'About Guywright';
const BACK = 'Back to the plan';
const PURPOSE = 'Guywright tells whether a guyed leg at an edge will stand: GO, NO-GO or NOT CHECKED, and why. Nothing leaves this device by itself.';
const VERSION = 'Version';
const NOT = 'What it is, and what it is not';
const CHECKED = 'How it was checked';
const PARTS = 'What it is made of';
const UNREADABLE = 'The list of parts could not be read from the copy of the app.';
const HOW_CHECKED = [
  'Forces and stability are compared with a second computation, written apart from the first and solved by another method, on more than a thousand random rigs in seven load cases each.',
  'Textbook cases of statics, and published figures for ropes and strengths, are kept as tests, each with its source.',
  'Every rule is tested at, just below and just above its limit, and each alone must turn a sound rig into NO-GO.',
  'The native and the browser program run the same tests and must give the same answers.',
  'Random damage to plan files and random input to the computation must never crash it or give a GO that it has not computed.',
  'It was not checked by tests of real rigs to failure, and no authority has approved it.',
];

function element(name, properties = {}, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

const list = (lines) => element('ul', {}, ...lines.map((line) => element('li', { textContent: line })));

function part({ name, version, what, licence }) {
  return element('details', {}, element('summary', { textContent: `${name} ${version}: ${what}` }), element('pre', { textContent: licence, tabIndex: 0 }));
}

async function copyLine() {
  const copy = await offline.check().catch(() => null);
  return copy ? `Offline copy ${copy.release}: ${copy.whole} of ${copy.files} files whole` : 'No offline copy in this browser yet';
}

export class About {
  #page = document.getElementById('about');
  #onClose;

  constructor(onClose) {
    this.#onClose = onClose;
    this.#page.querySelector('h1').textContent = TITLE;
    const back = this.#page.querySelector('.back');
    back.textContent = BACK;
    back.addEventListener('click', () => this.close());
    this.#page.addEventListener('keydown', (event) => event.key === 'Escape' && this.close());
  }

  close() {
    this.#page.hidden = true;
    this.#onClose();
  }

  /** `notes`: what a verdict is not, in the words of the card. */
  async open(notes) {
    const body = this.#page.querySelector('.body');
    body.replaceChildren(element('p', { textContent: PURPOSE }), element('h2', { textContent: NOT }), list(notes), element('h2', { textContent: CHECKED }), list(HOW_CHECKED));
    this.#page.hidden = false;
    this.#page.scrollTop = 0;
    this.#page.querySelector('h1').focus();
    try {
      const { app, engine, plan, parts } = await (await fetch('about.json')).json();
      const versions = list([`App ${app.version}, build ${app.build}`, `Engine ${engine.version}, build ${engine.build}`, `Plan files of version ${plan}`, await copyLine()]);
      body.append(element('h2', { textContent: VERSION }), versions, element('h2', { textContent: PARTS }), ...parts.map(part));
    } catch (error) {
      body.append(element('p', { textContent: `${UNREADABLE} (${error.message})` }));
    }
  }
}
