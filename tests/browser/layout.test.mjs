// Every page on every screen: nothing leaves it, nothing to be touched is too low or under another, no text is cut.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { openApp } from './harness.mjs';
import { EXAMPLES, SIZES, assertUsable, checked, choose, coarse, has, throughPractice, walkThrough } from './steps.mjs';

const LIST = 'parts guys[0].strength_kN';
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

  test(`every screen of practice can be read and touched on a ${name} screen`, async (t) => {
    const screen = coarse(size);
    const app = await openApp(t, screen);
    await throughPractice(app, async (what) => assertUsable(await app.state(), screen, what));
  });

  test(`a new plan, what few need and the keypad fit on a ${name} screen`, async (t) => {
    const screen = coarse(size);
    const app = await openApp(t, screen);
    await choose(app, 'new');
    await app.tap('value edge.face_deg');
    assertUsable(await app.state(), screen, 'keypad');
    await app.tap('key cancel');
    const opened = new Set();
    await walkThrough(app, async (state) => {
      assertUsable(state, screen, `new plan, ${state.screen}`);
      if (has(state, LIST) && !opened.has(LIST)) {
        opened.add(LIST);
        await app.tap(LIST); // its parts are on the pages that follow
        return assertUsable(await app.state(), screen, 'parts by a standard');
      }
      if (!has(state, 'more')) return;
      await app.tap('more');
      assertUsable(await app.state(), screen, `more of ${state.screen}`);
    });
    assert.ok(opened.has(LIST));
  });
}
