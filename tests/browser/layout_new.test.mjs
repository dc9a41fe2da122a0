// Every page of a new plan on every screen, as in layout.test.mjs.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { openApp } from './harness.mjs';
import { SIZES, assertUsable, choose, coarse, has, walkThrough } from './steps.mjs';

const LIST = 'parts guys[0].strength_kN';

for (const [name, size] of Object.entries(SIZES)) {
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
