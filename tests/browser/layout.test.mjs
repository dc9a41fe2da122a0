// Every page of the examples on every screen: nothing leaves it, nothing to be touched is too low or under another, no text is cut.
// A new plan: layout_new.test.mjs; practice: layout_practice.test.mjs.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { openApp } from './harness.mjs';
import { EXAMPLES, SIZES, assertUsable, checked, choose, coarse, walkThrough } from './steps.mjs';

const STEPS = ['Edge', 'Frame', 'Rope', 'Guys', 'Feet', 'Margins', 'Card'];

async function assertEveryPage(t, size, example) {
  const screen = coarse(size);
  const app = await openApp(t, screen);
  await choose(app, `example ${example}`);
  await checked(app);
  const seen = new Set();
  const pages = await walkThrough(app, (state) => {
    seen.add(state.screen);
    assertUsable(state, screen, `${state.screen}, ${state.widgets.find(({ id }) => id === 'title').label}`);
  });
  assert.deepEqual([...seen], STEPS);
  await app.tap('menu');
  assertUsable(await app.state(), screen, 'menu');
  return pages;
}

for (const example of EXAMPLES) {
  test(`every page of ${example} can be read and touched on a phone`, (t) => assertEveryPage(t, SIZES.phone, example));
}

for (const [name, size] of Object.entries(SIZES)) {
  if (name !== 'phone') test(`every page of an A-frame can be read and touched on a ${name} screen`, (t) => assertEveryPage(t, size, 'dam-crest'));
}
