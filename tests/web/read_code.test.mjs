// Reading a plan file, without a browser: elements that only remember what was put into them.

import assert from 'node:assert/strict';
import { test } from 'node:test';

const made = [];
class Element extends EventTarget {
  dataset = {};
  children = [];
  setAttribute() {}
  scrollIntoView() {}
  append(...nodes) { this.children.push(...nodes); }
  replaceChildren(...nodes) { this.children = nodes; }
  querySelector() { return this; }
}
globalThis.document = { createElement: () => made[made.push(new Element()) - 1], getElementById: () => new Element() };

const { Reader } = await import('../../web/read_code.js');
const { wordsOf } = await import('../../web/words.js');

const WHOLE = { state: 'whole', title: 'Gate pier', check_code: 'MPFWGB', plan: '{}' };

/** The page as far as a reader sees it; the file chosen is read when `arrive()` is called. */
function shownReader() {
  made.length = 0;
  const page = { body: new Element(), isOpen: true, open: ({ leave }) => { page.leave = leave; return wordsOf('en'); }, setKeys: () => {} };
  const reader = new Reader(page, { readCodes: () => ({ state: 'foreign' }), lookAt: () => WHOLE });
  reader.show('en');
  const input = made.find(({ type }) => type === 'file');
  let arrive;
  const bytes = new Promise((resolve) => { arrive = () => resolve(new ArrayBuffer(2)); });
  input.files = [{ name: 'plan.json', type: 'application/json', size: 2, arrayBuffer: () => bytes }];
  input.dispatchEvent(new Event('change'));
  const arrived = async () => {
    arrive();
    await new Promise((done) => { setImmediate(done); });
  };
  const said = () => page.body.children.map(({ textContent }) => textContent);
  return { page, arrived, said };
}

test('a plan file is shown where it was chosen', async () => {
  const { arrived, said } = shownReader();
  await arrived();
  assert.ok(said().includes('Gate pier'));
});

test('what arrives after the page was left is not put on the page shown then', async () => {
  const { page, arrived, said } = shownReader();
  page.leave();
  page.body.replaceChildren(Object.assign(new Element(), { textContent: 'another page' }));
  await arrived();
  assert.deepEqual(said(), ['another page']);
});
