// The page over the drawing in which share code, reading, rig sheet, second check and log are shown: heading, body, keys.

import { element } from './element.js';
import { wordsOf } from './words.js';

export function key(id, label, act, look = 'quiet') {
  const button = element('button', { type: 'button', className: look, textContent: label, dataset: { id } });
  button.addEventListener('click', act);
  return button;
}

/** "FE2H5D" as it is read out: large, the signs apart, spelled to a screen reader. */
export function largeCheckCode(label, code) {
  const signs = element('strong', { className: 'signs', textContent: code });
  signs.setAttribute('aria-label', code.split('').join(' '));
  return element('p', { className: 'check-code' }, element('span', { textContent: label }), signs);
}

/** While a page is open neither finger, Tab key nor screen reader gets to what lies under it. */
export const setCovered = (covered) => document.querySelectorAll('#canvas, #text, #to-text').forEach((each) => { each.inert = covered; });

export class Page {
  #root = document.getElementById('page');
  #onClose;
  #leave; // what the page shown has to put away

  constructor(onClose) {
    this.#onClose = onClose;
    this.#root.addEventListener('keydown', (event) => event.key === 'Escape' && this.close());
  }

  get body() {
    return this.#root.querySelector('.body');
  }

  /** `kind` names the page for its style; `leave` is called once when it closes. Returns its words. */
  open({ kind, language, title, leave = () => {} }) {
    this.#leave?.();
    this.#leave = leave;
    this.#root.dataset.kind = kind;
    this.#root.lang = language;
    this.#root.querySelector('h1').textContent = wordsOf(language)[title];
    this.body.replaceChildren();
    this.#root.hidden = false;
    setCovered(true);
    this.#root.scrollTop = 0;
    this.#root.querySelector('h1').focus();
    return wordsOf(language);
  }

  /** Keys below the body; the way back is always the last. */
  setKeys(language, keys) {
    this.#root.querySelector('.choices').replaceChildren(...keys.filter(Boolean), key('close page', wordsOf(language).backToPlan, () => this.close()));
  }

  /** Another step in the same page: from its top, and read out from its heading. */
  step(heading, ...nodes) {
    const title = element('h2', { textContent: heading, tabIndex: -1 });
    this.body.replaceChildren(title, ...nodes);
    this.#root.scrollTop = 0;
    title.focus({ preventScroll: true });
  }

  get isOpen() {
    return !this.#root.hidden;
  }

  close() {
    if (!this.isOpen) return;
    this.#root.hidden = true;
    setCovered(false);
    this.#leave?.();
    this.#leave = undefined;
    this.body.replaceChildren();
    this.#onClose();
  }
}
